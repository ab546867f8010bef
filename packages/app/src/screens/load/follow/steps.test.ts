import { describe, expect, it } from "vitest";
import type { LoadStep } from "./live-load.ts";
import { placesAround, stepsFrom } from "./steps.ts";

describe("the steps of a rule", () => {
  it("are each worked out once, the one that comes to nothing too", () => {
    const asked: number[] = [];
    const steps = stepsFrom((value) => {
      asked.push(value);
      return value === 0 ? null : ({ flight: { id: String(value) } } as LoadStep);
    });
    expect([steps.at(0), steps.at(5)?.flight.id, steps.at(5)?.flight.id, steps.at(0)]).toEqual([
      null,
      "5",
      "5",
      null,
    ]);
    expect(asked).toEqual([0, 5]);
  });

  it("are begun next to where it stands, and are all there is between nothing and the end", () => {
    expect(placesAround(10, 5, 32)).toEqual([10, 15, 5, 20, 0, 25, 30]);
    expect(placesAround(0, 1, 3)).toEqual([0, 1, 2, 3]);
    expect(placesAround(0.3, 0.1, 0.4)).toEqual([0.3, 0.4, 0.2, 0.1, 0]);
  });

  it("are no more than can be worked out in a while", () => {
    expect(placesAround(5_000, 1, 10_000)).toHaveLength(199);
  });
});
