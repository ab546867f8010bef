import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planWalk } from "./plan-walk.ts";
import { nextStep, stepsLeft, stepsOf, stopOf } from "./steps.ts";
import { checkAt, gearAt, stanceAt, tinyBook } from "./testing/tiny-book.ts";

const plan = planWalk(
  tinyBook({
    stances: [stanceAt("nose", 0, 0), stanceAt("wing", 3, 4)],
    checks: ["oil", "spinner"]
      .map((id) => checkAt(id, "nose", ["first-of-day"]))
      .concat(checkAt("tank", "wing", ["first-of-day"])),
    gear: [gearAt("tank-cover", "wing-point")],
  }),
  "first-of-day",
);
const ids = (steps: readonly { id: string }[]): readonly string[] => steps.map((step) => step.id);
const next = (from: string | null, ...open: string[]): string | undefined =>
  nextStep(plan, from, (step) => open.includes(step.id))?.id;

describe("what is left", () => {
  it("is everything at the start, in the order of the walk", () => {
    expect(ids(stepsLeft(plan, new Set()))).toEqual(["oil", "spinner", "tank-cover", "tank"]);
  });

  it("leaves out what is done", () => {
    expect(ids(stepsLeft(plan, new Set(["spinner", "tank"])))).toEqual(["oil", "tank-cover"]);
  });

  it("takes from an assessment the steps whose verdict is open, and no others", () => {
    const verdicts = [
      { status: "open", subject: { kind: "check", id: "tank" } },
      { status: "caution", subject: { kind: "check", id: "oil" } },
      { status: "open", subject: { kind: "ground-gear", id: "tank-cover" } },
      { status: "open", subject: { kind: "walk", id: "spinner" } },
      { status: "open" },
    ] as const;
    expect(ids(stepsLeft(plan, { verdicts }))).toEqual(["tank-cover", "tank"]);
  });
});

describe("the next step", () => {
  it("is the next open one onward, not the first of the walk", () => {
    expect(next("spinner", "oil", "tank")).toBe("tank");
  });

  it("wraps round to the start", () => {
    expect(next("tank", "oil", "spinner")).toBe("oil");
  });

  it("is the step itself only when nothing else is open", () => {
    expect(next("oil", "oil", "tank")).toBe("tank");
    expect(next("oil", "oil")).toBe("oil");
  });

  it("starts at the first step when one stands nowhere, or at a step that the plan has not", () => {
    expect(next(null, "oil", "tank")).toBe("oil");
    expect(next("no-such-step", "oil", "tank")).toBe("oil");
  });

  it("is nothing when all is done", () => {
    expect(next("oil")).toBeUndefined();
  });

  it("reaches every open step exactly once when one goes from next to next", () => {
    fc.assert(
      fc.property(
        fc.subarray(ids(stepsOf(plan)) as string[]),
        fc.constantFrom(null, "tank"),
        (open, start) => {
          const left = new Set(open);
          const met: string[] = [];
          let from: string | null = start;
          for (;;) {
            const step = nextStep(plan, from, ({ id }) => left.has(id));
            if (step === undefined) break;
            met.push(step.id);
            left.delete(step.id);
            from = step.id;
          }
          expect(met.toSorted()).toEqual(open.toSorted());
        },
      ),
    );
  });
});

describe("where a step is done", () => {
  it("names its stop", () => {
    expect(stopOf(plan, "tank")?.number).toBe(2);
    expect(stopOf(plan, "oil")?.stance.id).toBe("nose");
    expect(stopOf(plan, "nothing")).toBeUndefined();
  });
});
