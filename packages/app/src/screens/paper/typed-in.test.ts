import { assess, band } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { fromSI, toSI } from "@witnessmark/engine";
import { planWalk, stepsOf, type WalkPlan } from "@witnessmark/planner";
import { beforeAll, describe, expect, it } from "vitest";
import { demoBook, person, ToldLedger } from "../../testing/told-ledger.ts";
import { fieldTime, isoWithOffset } from "../../words/dates.ts";
import { type TypedStep, type TypedWalk, typedIn } from "./typed-in.ts";

const BEGUN_ms = Date.UTC(2026, 10, 12, 6, 0);
const TYPED_ms = BEGUN_ms + 2 * 3_600_000;
const MORNING = { value: 8, unit: "degC" } as const;
const AT = { now_ms: TYPED_ms, temperatureUnit: "degC" } as const;

let book: Book;
let plan: WalkPlan;

beforeAll(async () => {
  book = await demoBook("zz-skr");
  plan = planWalk(book, "first-of-day");
});

/** A paper on which everything is as it should be, each figure in the middle of its band. */
function allRight(): TypedWalk {
  const steps: Record<string, TypedStep> = {};
  for (const step of stepsOf(plan)) {
    if (step.kind === "ground-gear") {
      steps[step.id] = { answer: "as-it-should-be", stowedIn: step.item.stowedIn[0] ?? "" };
      continue;
    }
    const { reading } = step.check;
    const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
    const limits = band(step.check, book, MORNING);
    if (reading === undefined || gauge === undefined || limits === undefined) {
      steps[step.id] = { answer: "as-it-should-be" };
      continue;
    }
    const [from, to] = reading.scale;
    const middleSI = ((limits.low ?? from.valueSI) + (limits.high ?? to.valueSI)) / 2;
    steps[step.id] = { answer: "as-it-should-be", figure: fromSI(middleSI, gauge.unit).toFixed(2) };
  }
  return {
    kind: "first-of-day",
    begun: fieldTime(BEGUN_ms),
    ended: fieldTime(BEGUN_ms + 30 * 60_000),
    temperature: "8",
    steps,
  };
}

const faultsOf = (typed: TypedWalk) => {
  const result = typedIn(typed, book, plan, AT);
  return result.ok ? [] : result.faults.map(({ at, says }) => `${at}: ${says}`);
};

describe("a walk that was made on paper", () => {
  it("is kept whole, and its looks count from when the paper was begun", async () => {
    const result = typedIn(allRight(), book, plan, AT);
    if (!result.ok) throw new Error(result.faults.map(({ at, says }) => `${at}: ${says}`).join("; "));
    expect(result.answered).toBe(plan.stepCount);
    const ledger = new ToldLedger("ZZ-SKR", TYPED_ms);
    const pilot = person("MK");
    for (const draft of result.drafts) await ledger.tell(pilot, draft);
    const looks = [...ledger.state.checks.values()].flatMap(({ answers }) => answers);
    expect(looks.length).toBeGreaterThan(80);
    expect(new Set(looks.map(({ recordedAt }) => recordedAt))).toEqual(new Set([isoWithOffset(BEGUN_ms)]));
    expect([...ledger.state.walks.values()].at(-1)?.finished).toBeDefined();
  });

  it("is made untrue by what happened after the paper and before the typing", async () => {
    const result = typedIn(allRight(), book, plan, AT);
    if (!result.ok) throw new Error("expected a whole walk");
    const pilot = person("MK");
    const openWith = async (at_ms: number) => {
      const ledger = new ToldLedger("ZZ-SKR", TYPED_ms);
      await ledger.tell(pilot, {
        type: "happening.recorded",
        body: { happening: "fuelled", at: isoWithOffset(at_ms) },
      });
      for (const draft of result.drafts) await ledger.tell(pilot, draft);
      return assess(book, ledger.state, null, TYPED_ms).verdicts.filter(
        ({ status, subject, says }) =>
          status === "open" && subject?.kind === "check" && /: fuelled at/.test(says),
      ).length;
    };
    expect(await openWith(BEGUN_ms - 60 * 60_000)).toBe(0);
    expect(await openWith(BEGUN_ms + 60 * 60_000)).toBeGreaterThan(0);
  });

  it("asks for what is missing, at its place, and keeps nothing until it is there", () => {
    const typed = allRight();
    const reading = stepsOf(plan).find(
      (step) =>
        step.kind === "check" && step.check.reading !== undefined && step.check.reading.limit.by !== "fixed",
    );
    const look = stepsOf(plan).find((step) => step.kind === "check" && step.check.reading === undefined);
    const gear = stepsOf(plan).find((step) => step.kind === "ground-gear");
    if (reading === undefined || look === undefined || gear === undefined)
      throw new Error("expected all three");
    const withStep = (id: string, step: TypedStep): TypedWalk => ({
      ...typed,
      steps: { ...typed.steps, [id]: step },
    });
    expect(faultsOf(withStep(look.id, { answer: "not-right" }))).toEqual([
      `${look.id}: Say what is not right: choose it, or write it.`,
    ]);
    expect(faultsOf(withStep(look.id, { answer: "could-not-check" }))).toEqual([
      `${look.id}: Say why it could not be checked.`,
    ]);
    expect(faultsOf(withStep(gear.id, { answer: "as-it-should-be" }))).toEqual([
      `${gear.id}: Say where it was stowed.`,
    ]);
    expect(faultsOf(withStep(reading.id, { answer: "as-it-should-be" }))).toEqual([
      `${reading.id}: The figure is missing. Without one it could not be checked.`,
    ]);
    expect(faultsOf(withStep(reading.id, { answer: "as-it-should-be", figure: "lots" }))[0]).toMatch(
      /is not a number/,
    );
    expect(
      faultsOf({ ...typed, temperature: "" }).some((fault) => /give the temperature at the top/.test(fault)),
    ).toBe(true);
    expect(faultsOf({ ...typed, steps: {} })).toEqual([
      "steps: Nothing is answered yet: tap what the paper says.",
    ]);
  });

  it.each([
    [{ begun: "" }, "begun: Say when the walk was begun: its looks count from then."],
    [
      { begun: fieldTime(TYPED_ms + 60_000) },
      "begun: It was begun in the future: look at the day and the time.",
    ],
    [{ ended: fieldTime(BEGUN_ms - 60_000) }, "ended: It ended before it was begun."],
    [
      { begun: fieldTime(BEGUN_ms - 20 * 86_400_000) },
      "begun: That is more than a week ago: such a walk says nothing of how the aircraft stands now.",
    ],
  ])("has a day and times that can be: %j", (wrong, says) => {
    expect(faultsOf({ ...allRight(), ...wrong })).toContain(says);
  });

  it("keeps a figure in the unit in which it was written", () => {
    const typed = allRight();
    const tyre = stepsOf(plan).find(
      (step) => step.kind === "check" && /tyre pressure/.test(step.check.reading?.quantity ?? ""),
    );
    if (tyre === undefined) throw new Error("expected a tyre");
    const limits = tyre.kind === "check" ? band(tyre.check, book, MORNING) : undefined;
    const middle_psi = fromSI(((limits?.low ?? 0) + (limits?.high ?? 0)) / 2, "psi").toFixed(1);
    const steps = {
      ...typed.steps,
      [tyre.id]: { answer: "as-it-should-be" as const, figure: `${middle_psi} psi` },
    };
    const result = typedIn({ ...typed, steps }, book, plan, AT);
    const read = result.ok
      ? result.drafts.flatMap((draft) =>
          draft.type === "reading.recorded" && draft.body.check === tyre.id ? [draft.body.read] : [],
        )
      : [];
    expect(read).toHaveLength(1);
    expect(toSI(read[0]?.value ?? 0, read[0]?.unit ?? "psi")).toBeCloseTo(
      toSI(Number(middle_psi), "psi"),
      -2,
    );
  });
});
