/*
 * What lies ahead of an answer, for the turboprop on its island flight: where it tips over, and how it turns in the next
 * 12 hours; each against its limit of 100 ms (median of the rounds). Run: node bench/ahead.ts
 */
import { readFile } from "node:fs/promises";
import { assess, timeline, tippingPoints } from "@witnessmark/assess";
import { DEMO_NOW_ms, demoFlight } from "@witnessmark/assess/testing/demo-flight";
import { readBook } from "@witnessmark/book";
import { emptyState } from "@witnessmark/ledger";

const LIMIT_ms = 100;
const ROUNDS = 7;
const BOOK = new URL("../books/zz-skr.yaml", import.meta.url);

const read = await readBook(await readFile(BOOK, "utf8"), "zz-skr.yaml");
if (!read.ok) throw new Error(`ahead bench: expected a book without faults, found ${read.faults.length}`);
const { book } = read;
const state = emptyState("ZZ-SKR");

/** Median of the rounds; each answers another moment, so that nothing remembered answers it. */
function median_ms(work: (now_ms: number) => unknown): number {
  const took: number[] = [];
  for (let round = -2; round < ROUNDS; round += 1) {
    const start_ms = performance.now();
    work(DEMO_NOW_ms + round * 1_000);
    if (round >= 0) took.push(performance.now() - start_ms);
  }
  return took.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN;
}

const found = {
  "one assessment": median_ms((now_ms) => assess(book, state, demoFlight, now_ms)),
  "tipping points": median_ms((now_ms) => tippingPoints(book, state, demoFlight, now_ms)),
  "the next 12 hours": median_ms((now_ms) => timeline(book, state, demoFlight, now_ms)),
};
for (const [name, took_ms] of Object.entries(found)) {
  console.log(
    `${name}: ${took_ms.toFixed(1)} ms; ${(took_ms / LIMIT_ms).toFixed(2)} of the limit of ${LIMIT_ms} ms`,
  );
}
process.exitCode = Object.values(found).every((took_ms) => took_ms <= LIMIT_ms) ? 0 : 1;
