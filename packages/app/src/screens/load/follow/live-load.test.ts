import { describe, expect, it } from "vitest";
import { type LoadStep, liveLoad, type Turn } from "./live-load.ts";

/** Only which step it is counts here: nothing of it is read. */
const step = (name: string) => ({ flight: { id: name } }) as LoadStep;

/** A live load with rests that come when they are called, and what was written of each step where. */
function scene() {
  const waiting = new Set<() => void>();
  const live = liveLoad((call) => {
    waiting.add(call);
    return () => waiting.delete(call);
  });
  const written: string[] = [];
  const follow = (name: string, turn?: Turn, could = true) =>
    live.follow(
      {
        prepare: ({ flight }) => written.push(`${name} ready for ${flight.id}`),
        write({ flight }) {
          written.push(`${name} ${flight.id}`);
          return could;
        },
      },
      turn,
    );
  const taken = () => written.splice(0);
  const rest = () => {
    for (const call of [...waiting]) {
      waiting.delete(call);
      call();
    }
  };
  return { live, follow, taken, rest };
}

describe("the load under a moving finger", () => {
  it("is written at once where it is figures, and in turn where the same stands a second time", () => {
    const { live, follow, taken } = scene();
    follow("table");
    follow("margin", "margins");
    follow("tank", "drawing");
    follow("name", "names");
    follow("title", "words");
    for (const name of ["1", "2", "3", "4", "5"]) live.step(step(name));
    expect(taken()).toEqual([
      "table 1",
      "margin 1",
      "table 2",
      "tank 2",
      "table 3",
      "name 3",
      "table 4",
      "title 4",
      "table 5",
      "margin 5",
    ]);
  });

  it("is everywhere the same after a rest without a movement, and written no more than once", () => {
    const { live, follow, taken, rest } = scene();
    follow("table");
    follow("margin", "margins");
    follow("tank", "drawing");
    live.step(step("1"));
    live.step(step("2"));
    taken();
    rest();
    expect(taken()).toEqual(["margin 2"]);
    rest();
    expect(taken()).toEqual([]);
  });

  it("is worked out everywhere before a finger is there, and nothing is written by it", () => {
    const { live, follow, taken } = scene();
    follow("table");
    follow("tank", "drawing");
    live.prepare(step("1"));
    expect(taken()).toEqual(["table ready for 1", "tank ready for 1"]);
    expect(live.ahead()).toBeNull();
  });

  it("says so when something cannot follow, and lets all else follow still", () => {
    const { live, follow, taken } = scene();
    follow("rule", undefined, false);
    follow("table");
    expect(live.step(step("1"))).toBe(false);
    expect(taken()).toEqual(["rule 1", "table 1"]);
  });

  it("is put as the screen was made when it settles, so that nothing of a step taken back is left", () => {
    const { live, follow, taken, rest } = scene();
    follow("table");
    follow("tank", "drawing");
    live.step(step("1"));
    taken();
    live.settle(step("0"));
    expect(taken()).toEqual(["table 0", "tank 0"]);
    expect(live.ahead()).toBeNull();
    rest();
    live.settle(step("0"));
    expect(taken()).toEqual([]);
  });

  it("is no longer written where what followed has gone", () => {
    const { live, follow, taken } = scene();
    const leave = follow("table");
    leave();
    live.step(step("1"));
    expect(taken()).toEqual([]);
  });

  it("tells those who ask again, after it was written", () => {
    const { live, follow, taken } = scene();
    const heard: (string | undefined)[] = [];
    follow("table");
    const leave = live.subscribe(() => heard.push(`${taken().join()}, ahead ${live.ahead()?.flight.id}`));
    live.step(step("1"));
    live.settle(step("1"));
    leave();
    live.step(step("2"));
    expect(heard).toEqual(["table 1, ahead 1", "table 1, ahead undefined"]);
  });
});
