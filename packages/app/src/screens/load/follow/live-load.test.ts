import { describe, expect, it } from "vitest";
import { type LoadStep, liveLoad, type Turn } from "./live-load.ts";

/** Only which step it is counts here: nothing of it is read. */
const step = (name: string) => ({ flight: { id: name } }) as LoadStep;

/** A live load with frames that come when they are called, and what was written of each step where. */
function scene() {
  const frames: (() => void)[] = [];
  const live = liveLoad((call) => frames.push(call));
  const written: string[] = [];
  const follow = (name: string, turn?: Turn, could = true) =>
    live.follow(({ flight }) => {
      written.push(`${name} ${flight.id}`);
      return could;
    }, turn);
  const taken = () => written.splice(0);
  const frame = () => {
    for (const call of frames.splice(0)) call();
  };
  return { live, follow, taken, frame };
}

describe("the load under a moving finger", () => {
  it("is written at once where it is figures, and in turn where the same stands a second time", () => {
    const { live, follow, taken } = scene();
    follow("table");
    follow("chart", "chart");
    follow("tank", "drawing");
    follow("title", "words");
    for (const name of ["1", "2", "3", "4"]) live.step(step(name));
    expect(taken()).toEqual([
      "table 1",
      "chart 1",
      "table 2",
      "tank 2",
      "table 3",
      "title 3",
      "table 4",
      "chart 4",
    ]);
  });

  it("is everywhere the same in the first frame without a movement, and written no more than once", () => {
    const { live, follow, taken, frame } = scene();
    follow("table");
    follow("chart", "chart");
    follow("tank", "drawing");
    live.step(step("1"));
    taken();
    frame(); // the one that the movement is in
    live.step(step("2"));
    taken();
    frame();
    expect(taken()).toEqual([]);
    frame();
    expect(taken()).toEqual(["chart 2"]);
    frame();
    expect(taken()).toEqual([]);
  });

  it("says so when something cannot follow, and lets all else follow still", () => {
    const { live, follow, taken } = scene();
    follow("rule", undefined, false);
    follow("table");
    expect(live.step(step("1"))).toBe(false);
    expect(taken()).toEqual(["rule 1", "table 1"]);
  });

  it("is put as the screen was made when it settles, so that nothing of a step taken back is left", () => {
    const { live, follow, taken, frame } = scene();
    follow("table");
    follow("tank", "drawing");
    live.step(step("1"));
    taken();
    live.settle(step("0"));
    expect(taken()).toEqual(["table 0", "tank 0"]);
    expect(live.ahead()).toBeNull();
    frame();
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
