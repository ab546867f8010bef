import { askedByChance, assess } from "@witnessmark/assess";
import { newId } from "@witnessmark/ledger";
import { expect, it } from "vitest";
import { demoBook, person, ToldLedger } from "../testing/told-ledger.ts";
import { latestWalk } from "./open-walk.ts";
import { lastSaid, withdrawals } from "./undo.ts";

it("takes back, with an answer, why no photo was left: the look is asked to be shown again", async () => {
  const book = await demoBook("zz-skr");
  const pilot = person("MK");
  const ledger = new ToldLedger("ZZ-SKR", Date.UTC(2026, 10, 12, 7, 20));
  const walk = newId();
  await ledger.tell(pilot, {
    type: "walk.started",
    body: { walk, kind: "first-of-day", bookSha256: book.sha256 },
  });
  const [check] = askedByChance(book, ledger.state, latestWalk(ledger.state) ?? null);
  if (check === undefined) throw new Error("expected a look that is drawn");
  await ledger.tell(
    pilot,
    { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } },
    { type: "evidence.declined", body: { walk, check, why: "No hand free" } },
  );
  const open = latestWalk(ledger.state);
  const said = open && lastSaid(ledger.state, open, pilot.id);
  expect(said?.events).toHaveLength(2);
  await ledger.tell(pilot, ...(said === undefined ? [] : withdrawals(said)));
  expect(ledger.state.evidenceDeclined).toEqual([]);
  await ledger.tell(pilot, { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } });
  const verdict = assess(book, ledger.state, null, ledger.now_ms).verdicts.find(
    ({ id }) => id === `check:${check}`,
  );
  expect(verdict).toMatchObject({ status: "open" });
});
