import { askedByChance, assess } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { newId } from "@witnessmark/ledger";
import { planWalk, stepsOf, type WalkPlan } from "@witnessmark/planner";
import { beforeAll, describe, expect, it } from "vitest";
import { demoBook, person, ToldLedger } from "../testing/told-ledger.ts";
import { latestWalk } from "./open-walk.ts";
import { lastSaid, withdrawals } from "./undo.ts";
import { lastTouched, stepInHand, type WalkView, walkView } from "./walk-view.ts";

const FROM_ms = Date.UTC(2026, 10, 12, 7, 20);
const NONE: ReadonlySet<string> = new Set();

let book: Book;
let plan: WalkPlan;
/** Steps that are answered with a look alone, in the order of the walk. */
let looks: readonly string[];

beforeAll(async () => {
  book = await demoBook("zz-skr");
  plan = planWalk(book, "first-of-day");
  looks = stepsOf(plan).flatMap((step) =>
    step.kind === "check" && step.check.reading === undefined && step.check.evidence === "look"
      ? [step.id]
      : [],
  );
});

/** A walk under way, told by one person, and what its screens see. */
async function begun() {
  const walk = newId();
  const pilot = person("MK");
  const ledger = new ToldLedger("ZZ-SKR", FROM_ms);
  await ledger.tell(pilot, {
    type: "walk.started",
    body: { walk, kind: "first-of-day", bookSha256: book.sha256 },
  });
  const drawn = askedByChance(book, ledger.state, latestWalk(ledger.state) ?? null);
  const answer = (check: string, by = pilot, said: "as-it-should-be" | "not-right" = "as-it-should-be") =>
    ledger.tell(
      by,
      { type: "check.answered", body: { walk, check, answer: said } },
      ...(drawn.has(check)
        ? [{ type: "evidence.declined", body: { walk, check, why: "No hand free" } } as const]
        : []),
    );
  const view = (): WalkView => {
    const found = latestWalk(ledger.state);
    if (found === undefined) throw new Error("expected a walk");
    return walkView(found, plan, ledger.state, assess(book, ledger.state, null, ledger.now_ms));
  };
  const inHand = (putOff = NONE) => {
    const seen = view();
    return stepInHand(seen, lastTouched(seen, ledger.state, pilot.id)?.step.id ?? null, putOff)?.step.id;
  };
  return { walk, pilot, ledger, answer, view, inHand };
}

describe("a walk", () => {
  it("begins with nothing confirmed, at its first step", async () => {
    const { view, inHand } = await begun();
    expect(view().left).toBe(plan.stepCount);
    expect(view().steps.every((step) => step.status === "open")).toBe(true);
    expect(inHand()).toBe(stepsOf(plan)[0]?.id);
  });

  it("goes on from where this person answered last, not from the start", async () => {
    const { answer, inHand, view } = await begun();
    const [, , , fourth = ""] = looks;
    await answer(fourth);
    const order = stepsOf(plan).map((step) => step.id);
    expect(inHand()).toBe(order[order.indexOf(fourth) + 1]);
    expect(view().byId.get(fourth)?.status).toBe("clear");
  });

  it("does not move one phone on when another answers", async () => {
    const { answer, inHand } = await begun();
    const before = inHand();
    await answer(looks[20] ?? "", person("JL"));
    expect(inHand()).toBe(before);
  });

  it("puts a skipped step off to the end, and ends by naming what was put off", async () => {
    const { inHand } = await begun();
    const first = inHand() ?? "";
    expect(inHand(new Set([first]))).not.toBe(first);
    expect(inHand(new Set(stepsOf(plan).map((step) => step.id)))).toBeUndefined();
  });

  it("keeps what could not be checked open, and does not ask for it at once", async () => {
    const { walk, pilot, ledger, view, inHand } = await begun();
    const first = looks[0] ?? "";
    await ledger.tell(pilot, {
      type: "check.answered",
      body: { walk, check: first, answer: "could-not-check", reason: "too-dark" },
    });
    expect(view().byId.get(first)?.status).toBe("open");
    expect(inHand()).not.toBe(first);
  });

  it("does not ask again for what rests on a look that could not be made, until that look is made", async () => {
    const { walk, pilot, ledger, answer, view, inHand } = await begun();
    const pair = stepsOf(plan).flatMap((step) =>
      step.kind === "check" && looks.includes(step.id)
        ? step.check.after.filter((id) => looks.includes(id)).map((before) => ({ before, later: step.id }))
        : [],
    )[0];
    if (pair === undefined) throw new Error("expected a look that comes after another");
    await ledger.tell(pilot, {
      type: "check.answered",
      body: { walk, check: pair.before, answer: "could-not-check", reason: "out-of-reach" },
    });
    await answer(pair.later);
    expect(view().byId.get(pair.later)?.status).toBe("open");
    const others = new Set(
      stepsOf(plan)
        .map(({ id }) => id)
        .filter((id) => id !== pair.later),
    );
    expect(inHand(others)).toBeUndefined();
    await answer(pair.before);
    expect(inHand(others)).toBe(pair.later);
    await answer(pair.later);
    expect(view().byId.get(pair.later)?.status).toBe("clear");
  });

  it("asks the last three again after a break, before anything else", async () => {
    const { walk, pilot, ledger, answer, inHand, view } = await begun();
    for (const check of looks.slice(0, 5)) await answer(check);
    await ledger.tell(pilot, {
      type: "walk.interrupted",
      body: { walk, cause: "away", left: "2026-11-12T07:43:00Z", back: "2026-11-12T07:51:00Z" },
    });
    expect(view().walk.askedAgain).toEqual(looks.slice(2, 5));
    for (const check of looks.slice(2, 5)) {
      expect(inHand()).toBe(check);
      expect(view().byId.get(check)?.askedAgain).toBe(true);
      await answer(check);
    }
    expect(view().walk.askedAgain).toEqual([]);
  });
});

describe("undo", () => {
  it("takes back the last answer with its discrepancy, and then the one before", async () => {
    const { walk, pilot, ledger, answer, view } = await begun();
    const [one = "", two = ""] = looks;
    await answer(one);
    await ledger.tell(
      pilot,
      { type: "check.answered", body: { walk, check: two, answer: "not-right" } },
      { type: "discrepancy.raised", body: { discrepancy: newId(), words: "Cracked", walk, check: two } },
    );
    const last = () => {
      const said = lastSaid(ledger.state, view().walk, pilot.id);
      if (said === undefined) throw new Error("expected something to undo");
      return said;
    };
    expect(last()).toMatchObject({ id: two });
    expect(last().events).toHaveLength(2);
    await ledger.tell(pilot, ...withdrawals(last()));
    expect(ledger.state.discrepancies.size).toBe(0);
    expect(view().byId.get(two)?.status).toBe("open");
    expect(last()).toMatchObject({ id: one });
    await ledger.tell(pilot, ...withdrawals(last()));
    expect(lastSaid(ledger.state, view().walk, pilot.id)).toBeUndefined();
  });

  it("leaves alone what another person said", async () => {
    const { pilot, ledger, answer, view } = await begun();
    await answer(looks[0] ?? "", person("JL"));
    expect(lastSaid(ledger.state, view().walk, pilot.id)).toBeUndefined();
  });
});
