/*
 * What it costs to get ten years out of the program: the whole ledger as JSON Lines, and the record of its last year as
 * a PDF with that ledger in it, both read out of the store page by page, each in a process of its own.
 * Limits: 400 MB at the most for the first, 600 MB for the second. Run: node bench/long-record.ts [years] [folder]
 *
 * A folder that is named keeps the database, so that it is made once.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readBook } from "@witnessmark/book";
import { generateHistory, type LedgerEvent, ledgerLines } from "@witnessmark/ledger";
import { recordOfSource, renderRecordPdf } from "@witnessmark/sheet/pdf";
import { openSqlite } from "@witnessmark/store";
import { keepHistory } from "./keep-history.ts";

const AIRCRAFT = "ZZ-SKR";
const FLIGHTS_A_YEAR = 340;
const PAGE = 500;
const MOST_B = 2 * 1024 * 1024;
const LIMITS_MB = { export: 400, record: 600 } as const;
const DAY_MS = 86_400_000;
const YEAR_MS = 365.25 * DAY_MS;

async function fill(file: string, years: number): Promise<void> {
  const text = await readFile(new URL("../books/zz-skr.yaml", import.meta.url), "utf8");
  const read = await readBook(text, "zz-skr.yaml");
  if (!read.ok)
    throw new Error(`long-record bench: expected a book without faults, found ${read.faults.length}`);
  const { sha256, revision, aircraft } = read.book;
  const history = await generateHistory({
    years,
    flightsPerYear: FLIGHTS_A_YEAR,
    seed: 1,
    seal: "signed",
    operator: "own",
    aircraft: AIRCRAFT,
    book: { sha256, revision, type: aircraft.type, text },
    start_ms: Date.now() - years * YEAR_MS,
  });
  const store = await openSqlite({ file });
  const own = store.forOperator("own");
  await keepHistory(own, AIRCRAFT, history);
  await store.close();
}

/** One of the two, in this process. */
async function work(what: keyof typeof LIMITS_MB, file: string): Promise<void> {
  const store = await openSqlite({ file });
  const own = store.forOperator("own");
  const { head } = await own.page(AIRCRAFT, { after: 0, limit: 1, most_B: 1 });
  async function* events(): AsyncGenerator<readonly LedgerEvent[]> {
    for (let after = 0; after < head; ) {
      const page = await own.page(AIRCRAFT, { after, limit: PAGE, most_B: MOST_B });
      // written by this bench, as events
      yield page.events.map(({ text }) => JSON.parse(text) as LedgerEvent);
      after = page.events.at(-1)?.ledgerSeq ?? head;
    }
  }
  let size_B = 0;
  if (what === "export") {
    const about = { aircraft: AIRCRAFT, operator: "own", exportedAt: new Date().toISOString() };
    const one = async function* () {
      for await (const some of events()) yield* some;
    };
    for await (const line of ledgerLines(about, head, one())) size_B += line.length + 1;
  } else {
    const now_ms = Date.now();
    const from = new Date(now_ms - YEAR_MS).toISOString().slice(0, 10);
    const made = await recordOfSource({ count: head, events }, { from, now_ms });
    if (!made.ok) throw new Error(made.says);
    if (!made.record.ledger.isSound) throw new Error(`long-record bench: ${made.record.ledger.says}`);
    size_B = (await renderRecordPdf({ record: made.record, ledgerText: made.file })).byteLength;
  }
  await store.close();
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  const peak_MB = maxRSS / 1024;
  const cpu_s = (userCPUTime + systemCPUTime) / 1e6;
  console.log(
    `${what}: ${head} events, ${(size_B / 1e6).toFixed(1)} MB out, ${cpu_s.toFixed(1)} s of processor, peak ${peak_MB.toFixed(0)} MB; ${(peak_MB / LIMITS_MB[what]).toFixed(2)} of the limit of ${LIMITS_MB[what]} MB`,
  );
  process.exitCode = peak_MB <= LIMITS_MB[what] ? 0 : 1;
}

const [first = "10", folder, database] = process.argv.slice(2);
if ((first === "export" || first === "record") && database !== undefined) await work(first, database);
else {
  const at = folder ?? mkdtempSync(join(tmpdir(), "witnessmark-long-record-"));
  mkdirSync(at, { recursive: true });
  const file = join(at, "ledger.sqlite");
  if (!existsSync(file)) await fill(file, Number(first));
  for (const what of ["export", "record"]) {
    const { status } = spawnSync(process.execPath, [import.meta.filename, what, at, file], {
      stdio: "inherit",
    });
    if (status !== 0) process.exitCode = 1;
  }
  if (folder === undefined) rmSync(at, { recursive: true });
}
