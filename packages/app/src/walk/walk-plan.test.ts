import { assess } from "@witnessmark/assess";
import { newId } from "@witnessmark/ledger";
import { planWalk, stepsOf } from "@witnessmark/planner";
import { describe, expect, it } from "vitest";
import { demoBook, person, ToldLedger } from "../testing/told-ledger.ts";
import { planOf } from "./walk-plan.ts";

const FROM_ms = Date.UTC(2026, 10, 12, 7, 20);

/** A first walk in which every look was made, and then work was done on the aircraft. */
async function workedOn() {
  const book = await demoBook("zz-skr");
  const pilot = person("MK");
  const ledger = new ToldLedger("ZZ-SKR", FROM_ms);
  const walk = newId();
  await ledger.tell(pilot, {
    type: "walk.started",
    body: { walk, kind: "first-of-day", bookSha256: book.sha256 },
  });
  const first = stepsOf(planWalk(book, "first-of-day")).flatMap((step) =>
    step.kind === "check" && step.check.reading === undefined ? [step.check] : [],
  );
  for (const { id } of first) {
    await ledger.tell(pilot, {
      type: "check.answered",
      body: { walk, check: id, answer: "as-it-should-be" },
    });
  }
  await ledger.tell(pilot, { type: "walk.finished", body: { walk } });
  const at = new Date(ledger.now_ms).toISOString();
  await ledger.tell(pilot, { type: "happening.recorded", body: { happening: "maintenance", at } });
  const ended = first.filter(
    ({ holds, walks }) => holds.until.includes("maintenance") && !walks.includes("turnaround"),
  );
  return { book, pilot, ledger, ended };
}

describe("the plan of a turnaround", () => {
  it("takes in what has reopened of the first walk of the day, in the book's order", async () => {
    const { book, ledger, ended } = await workedOn();
    expect(ended.length).toBeGreaterThan(0);
    const assessment = assess(book, ledger.state, null, ledger.now_ms);
    const plan = planOf(book, "turnaround", undefined, ledger.state, assessment);
    const ids = stepsOf(plan).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(ended.map(({ id }) => id)));
    expect(planOf(book, "turnaround", undefined, ledger.state, assessment)).toBe(plan);
  });

  it("keeps what was looked at in it", async () => {
    const { book, pilot, ledger, ended } = await workedOn();
    const walk = newId();
    await ledger.tell(pilot, {
      type: "walk.started",
      body: { walk, kind: "turnaround", bookSha256: book.sha256 },
    });
    const [check] = ended;
    if (check === undefined) throw new Error("expected a look that work ends");
    const planNow = () =>
      stepsOf(
        planOf(book, "turnaround", walk, ledger.state, assess(book, ledger.state, null, ledger.now_ms)),
      );
    const before = planNow().map(({ id }) => id);
    await ledger.tell(pilot, {
      type: "check.answered",
      body: { walk, check: check.id, answer: "as-it-should-be" },
    });
    expect(planNow().map(({ id }) => id)).toEqual(before);
    expect(before).toContain(check.id);
  });

  it("of another kind is the book's alone", async () => {
    const { book, ledger } = await workedOn();
    const assessment = assess(book, ledger.state, null, ledger.now_ms);
    for (const kind of ["first-of-day", "after-flight"] as const) {
      expect(planOf(book, kind, undefined, ledger.state, assessment).stepCount).toBe(
        planWalk(book, kind).stepCount,
      );
    }
  });
});
