import { describe, expect, it } from "vitest";
import { currentWalk } from "../readers.ts";
import { Scene } from "../testing/scene.ts";
import { fold } from "./fold.ts";

const HOUR_MS = 3_600_000;
const AT = "2031-05-04T09:07:00.000+02:00";
const BOOK = "b0".repeat(32);

describe("walks", () => {
  it("begin, and end finished or abandoned", () => {
    const scene = new Scene();
    const phone = scene.phone("Ada");
    const [first, second] = [scene.id(), scene.id()];
    scene.say(phone, { type: "walk.started", body: { walk: first, kind: "first-of-day", bookSha256: BOOK } });
    const finished = scene.say(phone, { type: "walk.finished", body: { walk: first } });
    scene.say(phone, { type: "walk.started", body: { walk: second, kind: "turnaround", bookSha256: BOOK } });
    const open = fold(scene.events);
    expect(open.walks.get(first)?.finished?.event).toBe(finished.id);
    expect(currentWalk(open)?.id).toBe(second);
    scene.say(phone, { type: "walk.abandoned", body: { walk: second, why: "thunder" } });
    const ended = fold(scene.events);
    expect(ended.walks.get(second)?.abandoned?.why).toBe("thunder");
    expect(currentWalk(ended)).toBeUndefined();
  });

  it("begun by a phone whose clock is hours ahead still take in what a right clock says of them", () => {
    const scene = new Scene();
    const ahead = scene.phone("Ada", 3 * HOUR_MS);
    const right = scene.phone("Ben");
    const walk = scene.id();
    const started = scene.say(ahead, {
      type: "walk.started",
      body: { walk, kind: "turnaround", bookSha256: BOOK },
    });
    expect(right.see(scene.now_ms, started)).toBe(false);
    for (const check of ["a", "b", "c", "d"]) {
      scene.say(right, { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } });
    }
    const interrupted = scene.say(right, {
      type: "walk.interrupted",
      body: { walk, cause: "away", left: AT, back: AT },
    });
    scene.say(right, { type: "check.answered", body: { walk, check: "d", answer: "as-it-should-be" } });
    const finished = scene.say(right, { type: "walk.finished", body: { walk } });
    expect(finished.hlc < started.hlc).toBe(true);

    const state = fold(scene.events);
    expect(state.walks.get(walk)).toMatchObject({
      finished: { event: finished.id },
      interruptions: [{ event: interrupted.id, asksAgain: ["b", "c", "d"] }],
      askedAgain: ["b", "c"],
    });
    expect(state.answersByWalk.get(walk)?.map(({ check }) => check)).toEqual(["a", "b", "c", "d", "d"]);
    expect(state.unplaced.size).toBe(0);
  });

  it("walked on paper are dated by the paper, and so is everything seen in them", () => {
    const scene = new Scene();
    const phone = scene.phone("Ada");
    const walk = scene.id();
    const typed = scene.say(phone, {
      type: "walk.started",
      body: {
        walk,
        kind: "first-of-day",
        bookSha256: BOOK,
        onPaper: { begun: "2020-05-04T07:10:00.000+02:00", ended: "2020-05-04T07:40:00.000+02:00" },
      },
    });
    scene.say(phone, { type: "check.answered", body: { walk, check: "a", answer: "as-it-should-be" } });
    scene.say(phone, { type: "groundGear.removed", body: { item: "g", count: 1, stowedIn: "bay", walk } });
    const live = scene.say(phone, { type: "groundGear.fitted", body: { item: "h", count: 1 } });
    const state = fold(scene.events);
    const begun = "2020-05-04T07:10:00.000+02:00";
    expect(state.walks.get(walk)).toMatchObject({
      recordedAt: begun,
      onPaper: { begun, typedInAt: typed.recordedAt },
    });
    expect(state.checks.get("a")?.answers[0]?.recordedAt).toBe(begun);
    expect(state.groundGear.get("g")?.last.recordedAt).toBe(begun);
    expect(state.groundGear.get("h")?.last.recordedAt).toBe(live.recordedAt);
  });

  it("on a paper that says it was begun after it was typed in count from the typing", () => {
    const scene = new Scene();
    const phone = scene.phone("Ada");
    const walk = scene.id();
    const ahead = "2099-05-04T07:10:00.000+02:00";
    const typed = scene.say(phone, {
      type: "walk.started",
      body: { walk, kind: "first-of-day", bookSha256: BOOK, onPaper: { begun: ahead, ended: ahead } },
    });
    scene.say(phone, { type: "check.answered", body: { walk, check: "a", answer: "as-it-should-be" } });
    expect(fold(scene.events).checks.get("a")?.answers[0]?.recordedAt).toBe(typed.recordedAt);
  });

  it("that never began here keep what is said of them, unplaced", () => {
    const scene = new Scene();
    const phone = scene.phone("Ada");
    const walk = scene.id();
    const finished = scene.say(phone, { type: "walk.finished", body: { walk } });
    const state = fold(scene.events);
    expect(state.walks.size).toBe(0);
    expect(state.unplaced.get(walk)?.map(({ id }) => id)).toEqual([finished.id]);
  });

  it("begun twice are those of the first; the second start is kept unplaced", () => {
    const scene = new Scene();
    const phone = scene.phone("Ada");
    const walk = scene.id();
    scene.say(phone, { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: BOOK } });
    const again = scene.say(phone, {
      type: "walk.started",
      body: { walk, kind: "turnaround", bookSha256: BOOK },
    });
    const state = fold(scene.events);
    expect(state.walks.get(walk)?.kind).toBe("first-of-day");
    expect(state.unplaced.get(walk)?.map(({ id }) => id)).toEqual([again.id]);
  });
});
