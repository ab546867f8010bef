import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { canonical, generateHistory, type LedgerEvent, LongPast } from "@witnessmark/ledger";
import { openSqlite } from "@witnessmark/store";
import { expect, it, onTestFinished } from "vitest";
import { neededEvents } from "./needed-events.ts";

const SKR = "ZZ-SKR";

async function ledgerOf(events: readonly LedgerEvent[]) {
  const folder = mkdtempSync(join(tmpdir(), "needed-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const store = await openSqlite({ file: join(folder, "ledger.db") });
  const own = store.forOperator("own");
  await own.append(
    SKR,
    events.map((event) => ({
      kind: "sound" as const,
      id: event.id,
      device: event.device,
      deviceSeq: event.deviceSeq,
      text: canonical(event),
    })),
    0,
  );
  return { store, own };
}

it("gives, page by page, all but the answers of walks long past, and nothing is left out of the newest", async () => {
  const history = await generateHistory({ years: 1, flightsPerYear: 30, seed: 3, seal: "none" });
  const { store, own } = await ledgerOf(history);
  const find = neededEvents(own, { wholeEvents: 300, makePast: () => new LongPast(2) });

  const first = await find(SKR, { after: 0, upTo: undefined });
  expect(first).toMatchObject({ head: history.length, upTo: history.length });
  expect(first.wholeFrom).toBe(history.length - 299);
  const given = [...first.events];
  for (let to = first.to; to < first.upTo; ) {
    const next = await find(SKR, { after: to, upTo: first.upTo });
    given.push(...next.events);
    to = next.to;
  }

  const past = new LongPast(2);
  for (const event of history) past.see(event);
  const expected = history.filter((event, at) => at + 1 >= first.wholeFrom || past.isNeeded(event));
  expect(expected.length).toBeLessThan(history.length / 2);
  expect(given.map(({ text }) => text)).toEqual(expected.map((event) => canonical(event)));
  await store.close();
});

it("answers for a place before what came in since as it did then", async () => {
  const history = await generateHistory({ years: 1, flightsPerYear: 12, seed: 4, seal: "none" });
  const half = Math.floor(history.length / 2);
  const { store, own } = await ledgerOf(history);
  const find = neededEvents(own, { wholeEvents: 10, makePast: () => new LongPast(1) });
  const early = await find(SKR, { after: 0, upTo: half });
  expect(early.wholeFrom).toBe(half - 9);
  expect(early.events.every(({ ledgerSeq }) => ledgerSeq <= half)).toBe(true);
  await store.close();
});

it("has nothing to give of an aircraft without a record", async () => {
  const { store, own } = await ledgerOf([]);
  const none = await neededEvents(own)("ZZ-NIX", { after: 0, upTo: undefined });
  expect(none).toMatchObject({ head: 0, upTo: 0, to: 0, events: [] });
  await store.close();
});
