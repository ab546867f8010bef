/*
 * What lies ahead of an answer, for the turboprop on its island flight: where it tips over, looked for by two workers as
 * the app does, and how it turns in the next 12 hours, by one; with nothing on record and after ten years; each against
 * its limit of 100 ms (median of the rounds, from the question to the last answer). Run: node bench/ahead.ts
 */
import { once } from "node:events";
import { Worker } from "node:worker_threads";
import { DEMO_NOW_ms } from "@witnessmark/assess/testing/demo-flight";
import type { Question } from "./ahead/looker.ts";

const LIMIT_ms = 100;
/** Answers before the count begins: a worker is kept while a flight is looked at, and is asked at every change. */
const WARM_UP = 20;
const ROUNDS = 15;
const LOOKERS = 2;

const lookers = Array.from(
  { length: LOOKERS },
  () => new Worker(new URL("./ahead/looker.ts", import.meta.url)),
);

/** What each looker is asked in a round; one that is asked nothing rests. */
type Ask = (part: number, now_ms: number) => Question | undefined;

async function round(ask: Ask, now_ms: number): Promise<number> {
  const start_ms = performance.now();
  await Promise.all(
    lookers.map((looker, part) => {
      const question = ask(part, now_ms);
      if (question === undefined) return undefined;
      looker.postMessage(question);
      return once(looker, "message");
    }),
  );
  return performance.now() - start_ms;
}

/** Median of the rounds; each answers another moment, so that nothing remembered answers it. */
async function median_ms(ask: Ask): Promise<number> {
  const took: number[] = [];
  for (let at = -WARM_UP; at < ROUNDS; at += 1) {
    const took_ms = await round(ask, DEMO_NOW_ms + at * 1_000);
    if (at >= 0) took.push(took_ms);
  }
  return took.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN;
}

const byOne =
  (what: "assessment" | "hours", of: Question["of"]): Ask =>
  (part, now_ms) =>
    part === 0 ? { what, now_ms, of } : undefined;

const byAll =
  (of: Question["of"]): Ask =>
  (part, now_ms) => ({ what: "tips", now_ms, of, share: { part, of: LOOKERS } });

const found: Record<string, number> = {};
for (const known of ["nothing", "ten years"] as const) {
  found[`${known} on record, one assessment`] = await median_ms(byOne("assessment", known));
  found[`${known} on record, tipping points`] = await median_ms(byAll(known));
  found[`${known} on record, the next 12 hours`] = await median_ms(byOne("hours", known));
}
for (const looker of lookers) await looker.terminate();
for (const [name, took_ms] of Object.entries(found)) {
  console.log(
    `${name}: ${took_ms.toFixed(1)} ms; ${(took_ms / LIMIT_ms).toFixed(2)} of the limit of ${LIMIT_ms} ms`,
  );
}
process.exitCode = Object.values(found).every((took_ms) => took_ms <= LIMIT_ms) ? 0 : 1;
