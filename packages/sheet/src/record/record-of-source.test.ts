import { inflateSync } from "node:zlib";
import { generateHistory, type LedgerEvent, sha256 } from "@witnessmark/ledger";
import { beforeAll, expect, it } from "vitest";
import { recordOfLedger } from "./record-of-ledger.ts";
import { recordOfSource } from "./record-of-source.ts";

let history: readonly LedgerEvent[];
beforeAll(async () => {
  history = await generateHistory({ years: 1, flightsPerYear: 12, seed: 8, seal: "signed" });
});

const inHandfuls = (events: readonly LedgerEvent[]) => ({
  count: events.length,
  async *events() {
    for (let from = 0; from < events.length; from += 100) yield events.slice(from, from + 100);
  },
});

it.each([
  ["the whole", {}],
  ["a part of it", { from: "2031-04-01", to: "2031-08-01" }],
  ["what came before its first day", { to: "2031-01-01" }],
])("says of %s the same as with everything at once", async (_name, period) => {
  const given = { ...period, now_ms: Date.UTC(2032, 0, 5) };
  const whole = await recordOfLedger(history, given);
  const made = await recordOfSource(inHandfuls(history), given);
  if (!whole.ok || !made.ok) throw new Error("expected a record both times");
  expect(made.record).toEqual(whole.record);
  if (typeof made.file === "string") throw new Error("expected a file that was never whole in memory");
  const text = inflateSync(made.file.deflated).toString("utf8");
  expect(text).toBe(whole.ledgerText);
  expect(made.file.size_B).toBe(Buffer.byteLength(text));
  expect(made.record.ledger.sha256).toBe(await sha256(text));
});

it("says of a ledger that does not hold what is wrong with it, as with everything at once", async () => {
  const changed = history.map((event, at): LedgerEvent => (at === 200 ? { ...event, hlc: "x" } : event));
  const given = { now_ms: Date.UTC(2032, 0, 5) };
  const whole = await recordOfLedger(changed, given);
  const made = await recordOfSource(inHandfuls(changed), given);
  if (!whole.ok || !made.ok) throw new Error("expected a record both times");
  expect(made.record).toEqual(whole.record);
  expect(made.record.ledger.isSound).toBe(false);
});

it("has nothing to tell of nothing, and refuses a period that cannot be", async () => {
  const now_ms = Date.UTC(2032, 0, 5);
  expect(await recordOfSource(inHandfuls([]), { now_ms })).toMatchObject({ ok: false, why: "no-events" });
  expect(await recordOfSource(inHandfuls(history), { now_ms, from: "2031-02-30" })).toMatchObject({
    ok: false,
    why: "bad-period",
    field: "from",
  });
});
