import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planWalk } from "./plan-walk.ts";
import { stepsOf } from "./steps.ts";
import { checkAt, gearAt, stanceAt, tinyBook } from "./testing/tiny-book.ts";

const nose = stanceAt("nose", 0, 0);
const wing = stanceAt("wing", 3, 4);
const tail = stanceAt("tail", 9, 4);

const book = tinyBook({
  stances: [nose, wing, tail],
  checks: [
    checkAt("oil", "nose", ["first-of-day", "after-flight"], 10),
    checkAt("spinner", "nose", ["first-of-day", "turnaround"]),
    checkAt("tank", "wing", ["first-of-day"], 5),
    checkAt("rudder", "tail", ["turnaround"]),
  ],
  gear: [gearAt("plug", "nose-point", 2), gearAt("pitot", "wing-point", 1, "tail")],
});

const shape = (kind: "first-of-day" | "turnaround" | "after-flight"): readonly string[] =>
  planWalk(book, kind).stops.map(
    (stop) => `${stop.number} ${stop.stance.id}: ${stop.steps.map((step) => step.id).join(" ")}`,
  );

describe("the plan of a walk", () => {
  it("keeps the book's order of stances, and ground gear comes off before anything is looked at", () => {
    expect(shape("first-of-day")).toEqual(["1 nose: plug oil spinner", "2 wing: tank", "3 tail: pitot"]);
  });

  it("leaves out a stance without a step of that kind, and numbers the stops as they are walked", () => {
    expect(shape("turnaround")).toEqual(["1 nose: plug spinner", "2 tail: pitot rudder"]);
  });

  it("takes in, at their stances, the checks that have to be looked at again besides", () => {
    const plan = planWalk(book, "turnaround", new Set(["tank", "spinner", "no-such-check"]));
    expect(plan.stops.map((stop) => stop.steps.map((step) => step.id).join(" "))).toEqual([
      "plug spinner",
      "tank",
      "pitot rudder",
    ]);
  });

  it("fits ground gear last at its stance after a flight", () => {
    expect(shape("after-flight")).toEqual(["1 nose: oil plug", "2 tail: pitot"]);
  });

  it("puts an item at its own stance, and otherwise at its point's", () => {
    const tailStop = planWalk(book, "after-flight").stops[1];
    expect(tailStop?.steps.map((step) => step.id)).toEqual(["pitot"]);
  });

  it("counts its steps", () => {
    expect(planWalk(book, "first-of-day").stepCount).toBe(5);
    expect(planWalk(book, "turnaround").stepCount).toBe(4);
  });

  it("measures the way in straight lines: 3-4-5 to the wing, then 6 m aft", () => {
    expect(planWalk(book, "first-of-day").distance_m).toBe(11);
  });

  it("does not measure the way to a stance that is left out", () => {
    expect(planWalk(book, "turnaround").distance_m).toBeCloseTo(Math.hypot(9, 4), 12);
  });

  it("estimates twice the least of every look, 12 s a piece, and the way at 0.8 m/s", () => {
    // (10 + 2 + 5) × 2 + 3 × 12 + 11 / 0.8 = 83.75
    expect(planWalk(book, "first-of-day").estimate_s).toBe(84);
  });

  it("is empty for a kind in which nothing is done", () => {
    const bare = tinyBook({ stances: [nose], checks: [checkAt("oil", "nose", ["first-of-day"])] });
    expect(planWalk(bare, "turnaround")).toEqual({
      kind: "turnaround",
      stops: [],
      stepCount: 0,
      distance_m: 0,
      estimate_s: 0,
    });
  });
});

describe("every plan, whatever the book", () => {
  const kinds = ["first-of-day", "turnaround", "after-flight"] as const;
  const stanceIds = ["a", "b", "c", "d"];
  const anyBook = fc
    .array(
      fc.record({ stance: fc.constantFrom(...stanceIds), walks: fc.subarray([...kinds], { minLength: 1 }) }),
      {
        maxLength: 20,
      },
    )
    .chain((rows) =>
      fc.array(fc.constantFrom(...stanceIds), { maxLength: 6 }).map((gear) =>
        tinyBook({
          stances: stanceIds.map((id, index) => stanceAt(id, index, 0)),
          checks: rows.map(({ stance, walks }, index) => checkAt(`check-${index}`, stance, walks)),
          gear: gear.map((stance, index) => gearAt(`gear-${index}`, `${stance}-point`)),
        }),
      ),
    );

  it("holds each check of its kind and each item of ground gear exactly once, and nothing else", () => {
    fc.assert(
      fc.property(anyBook, fc.constantFrom(...kinds), (any, kind) => {
        const wanted = [
          ...any.checks.filter((check) => check.walks.includes(kind)).map((check) => check.id),
          ...any.groundGear.map((item) => item.id),
        ].sort();
        const plan = planWalk(any, kind);
        expect(
          stepsOf(plan)
            .map((step) => step.id)
            .sort(),
        ).toEqual(wanted);
        expect(plan.stepCount).toBe(wanted.length);
      }),
    );
  });

  it("keeps the book's order of stances, and of checks at one stance", () => {
    fc.assert(
      fc.property(anyBook, fc.constantFrom(...kinds), (any, kind) => {
        const plan = planWalk(any, kind);
        const stances = plan.stops.map((stop) =>
          any.stances.findIndex((stance) => stance.id === stop.stance.id),
        );
        expect(stances).toEqual([...stances].sort((a, b) => a - b));
        for (const stop of plan.stops) {
          const order = stop.steps.flatMap((step) =>
            step.kind === "check" ? [any.checks.findIndex((check) => check.id === step.id)] : [],
          );
          expect(order).toEqual([...order].sort((a, b) => a - b));
        }
      }),
    );
  });
});
