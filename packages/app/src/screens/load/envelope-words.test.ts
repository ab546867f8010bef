import { loadFigures } from "@witnessmark/assess";
import { clinicPlan, litresEach, weighed } from "@witnessmark/assess/testing/clinic-load";
import type { LoadedItem } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { loadAnswer } from "./envelope-words.ts";
import { phaseRow, rowKeys } from "./phase-rows.ts";
import { DEMO_BOOK, IN_SI, pictured } from "./testing/demo-load.ts";

const plain = (text: string) => text.replaceAll("\u00A0", " ");
const answerOf = (items: readonly LoadedItem[], litres = 200) => {
  const load = { ...clinicPlan.load, items, fuel: litresEach(litres) };
  const { headline, more, status } = loadAnswer(loadFigures(DEMO_BOOK, { ...clinicPlan, load }), IN_SI);
  return { headline: plain(headline), more: more.map(plain), status };
};
const { items } = clinicPlan.load;
const others = (...stations: readonly string[]) => items.filter(({ station }) => !stations.includes(station));

describe("the answer over the envelope", () => {
  it("has the figures of the edge that is passed right under it: 4.3637 m by hand, 3.7 mm past 4.36", () => {
    expect(answerOf(items)).toMatchObject({
      headline: "Behind the aft limit by 4 mm in flight, gear up",
      more: ["4.364 m, at most 4.360 m, after 128 kg burnt"],
    });
  });

  it("names what is too close to be sure, the closest first, each with its chance", () => {
    const stated = (station: string, mass_kg: number): LoadedItem => ({
      ...weighed(station, mass_kg),
      known: "stated",
    });
    const { headline, more } = answerOf([
      ...others("aft-bay", "tail-locker", "seat-6"),
      weighed("seat-2", 76),
      stated("aft-bay", 84),
      stated("tail-locker", 38),
    ]);
    expect(headline).toBe("Inside, but too close to be sure");
    expect(more.map((line) => line.replace(/ \d+ %.*/, ""))).toEqual([
      "Aft bay and tail locker together, 122 of 130 kg: kept with",
      "Aft bay, 84 of 90 kg: kept with",
      "Tail locker, 38 of 45 kg: kept with",
    ]);
    const chances = more.map((line) => Number(/kept with (\d+) %/.exec(line)?.[1]));
    expect(chances).toEqual(chances.toSorted((a, b) => a - b));
    expect(chances.every((chance) => chance < 95)).toBe(true);
    expect(more[0]).toContain("by how the weights are known; 95 % are needed");
  });
});

describe("headline, table and chart", () => {
  it("say the same of the worst point, for every load of the tail locker and the tanks", () => {
    let past = 0;
    for (let bags_kg = 0; bags_kg <= 80; bags_kg += 5) {
      for (const litres of [120, 200, 300]) {
        const load = {
          ...clinicPlan.load,
          items: [...others("tail-locker"), weighed("tail-locker", bags_kg)],
          fuel: litresEach(litres),
        };
        const figures = loadFigures(DEMO_BOOK, { ...clinicPlan, load });
        const [, size] = /^Behind the aft limit by (\d+) mm/.exec(loadAnswer(figures, IN_SI).headline) ?? [];
        // the dry aircraft is not flown: where it is out is a caution of its own
        const flown = rowKeys(figures).filter((key) => key !== "zero-fuel");
        const rows = flown.flatMap((key) => phaseRow(key, figures, IN_SI) ?? []);
        const edge = rows.map(({ edgeLeft }) => edgeLeft);
        const { behind } = pictured(figures).margins;
        if (size === undefined) expect(edge.filter((words) => words.endsWith("behind"))).toEqual([]);
        else {
          past += 1;
          expect(edge).toContain(`${size} mm behind`);
          expect(behind.text).toBe(`${size} mm over`);
        }
      }
    }
    expect(past).toBeGreaterThan(10);
  });
});
