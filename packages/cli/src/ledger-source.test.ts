import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { canonical, generateHistory, readLedger } from "@witnessmark/ledger";
import { openSqlite } from "@witnessmark/store";
import { afterAll, beforeAll, expect, it } from "vitest";
import { EXIT } from "./exit-code.ts";
import { run } from "./run.ts";
import { memoryIo } from "./testing/memory-io.ts";

const folder = mkdtempSync(join(tmpdir(), "witnessmark-cli-"));
const NOW_MS = Date.UTC(2032, 0, 5);
let count = 0;

beforeAll(async () => {
  const history = await generateHistory({
    years: 1,
    flightsPerYear: 8,
    seed: 6,
    operator: "own",
    seal: "signed",
  });
  count = history.length;
  const store = await openSqlite({ file: join(folder, "witnessmark.sqlite") });
  const arrivals = history.map((event) => ({
    kind: "sound" as const,
    id: event.id,
    device: event.device,
    deviceSeq: event.deviceSeq,
    text: canonical(event),
  }));
  await store.forOperator("own").append("ZZ-SKR", arrivals, NOW_MS);
  await store.close();
});
afterAll(() => rmSync(folder, { recursive: true }));

async function command(words: string) {
  const machine = memoryIo({}, NOW_MS);
  const exit = await run([...words.split(" "), "--data", folder], machine.io);
  return { exit, ...machine };
}

it("writes a ledger out of the database as a file that holds", async () => {
  const { exit, written, err } = await command("ledger export ZZ-SKR --output all.jsonl");
  expect(exit).toBe(EXIT.done);
  expect(err()).toBe(`all.jsonl: ${count} events.`);
  const read = await readLedger(new TextDecoder().decode(written.get("all.jsonl")));
  expect(read.faults).toEqual([]);
  expect(read.events.length).toBe(count);
});

it("makes the record of a ledger in the database", async () => {
  const { exit, written, out } = await command(
    "record ZZ-SKR --json --from 2031-03-01 --to 2031-06-30 --out r.pdf",
  );
  expect(exit).toBe(EXIT.done);
  expect(JSON.parse(out())).toMatchObject({
    period: { from: "2031-03-01", to: "2031-06-30" },
    ledger: { events: count, isSound: true },
  });
  expect(Buffer.from(written.get("r.pdf")?.subarray(0, 5) ?? []).toString("latin1")).toBe("%PDF-");
});

it("says of a registration without a record which there are", async () => {
  const { exit, err } = await command("ledger export ZZ-NIX");
  expect(exit).not.toBe(EXIT.done);
  expect(err()).toContain("There is no ledger of ZZ-NIX in the database. There are: ZZ-SKR.");
});
