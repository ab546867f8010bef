/*
 * Assessing the turboprop of the demo with ten years of history, against JSON.stringify of the assessment that comes
 * out: what a screen pays beyond writing down its answer. Limit: 5 ms (median of the rounds). Run: node bench/assess.ts
 */
import { readFile } from "node:fs/promises";
import { assess } from "@witnessmark/assess";
import { type Book, type Check, readBook } from "@witnessmark/book";
import { fromSI } from "@witnessmark/engine";
import { type AircraftState, fold, generateHistory, type KnownEvent } from "@witnessmark/ledger";

const LIMIT_MS = 5;
const WARM_UPS = 12;
const ROUNDS = 9;
const TIMES = 20;
const BOOK = new URL("../books/zz-skr.yaml", import.meta.url);

async function theBook(): Promise<Book> {
  const result = await readBook(await readFile(BOOK, "utf8"), "zz-skr.yaml");
  if (!result.ok) {
    throw new Error(`assess bench: expected a book without faults, found ${result.faults.length}`);
  }
  return result.book;
}

/** A check as the generator of histories knows it; its gauge reads about the middle of the rule that is drawn. */
function checkLike(book: Book, { id, reading }: Check) {
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) return { id };
  const [low, high] = reading.scale;
  return {
    id,
    gauge: { id: gauge.id, unit: gauge.unit, usual: fromSI((low.valueSI + high.valueSI) / 2, gauge.unit) },
  };
}

/** Everything up to the last decision on a first walk of the day: a whole walk, just signed, nothing flown since. */
function untilSigned(events: readonly KnownEvent[]): readonly KnownEvent[] {
  const first = events.findLast(
    (event) => event.type === "walk.started" && event.body.kind === "first-of-day",
  );
  const walk = first?.type === "walk.started" ? first.body.walk : "";
  const signed = events.findIndex((event) => event.type === "decision.signed" && event.body.walk === walk);
  if (signed < 0) throw new Error("assess bench: expected a signed first walk in the history, found none");
  return events.slice(0, signed + 1);
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

const spread = (values: readonly number[], digits: number): string =>
  `${Math.min(...values).toFixed(digits)} to ${Math.max(...values).toFixed(digits)}`;

/** Milliseconds of one of `TIMES` runs; what they make is counted, so that none can be left out. */
function timed(work: (at: number) => number): { readonly took_ms: number; readonly made: number } {
  const start_ms = performance.now();
  let made = 0;
  for (let at = 0; at < TIMES; at += 1) made += work(at);
  return { took_ms: (performance.now() - start_ms) / TIMES, made };
}

/** Ten years of it, as a state alone: a phone does not hold the events beside it. */
async function tenYears(of: Book): Promise<{ readonly state: AircraftState; readonly now_ms: number }> {
  const history = await generateHistory({
    years: 10,
    flightsPerYear: 340,
    seed: 20_310_101,
    seal: "none",
    checks: of.checks.map((check) => checkLike(of, check)),
    groundGear: of.groundGear.map(({ id, count, stowedIn: [where = "cabin"] }) => ({
      item: id,
      count,
      stowedIn: where,
    })),
    book: { sha256: of.sha256, revision: of.revision, type: of.aircraft.type, text: "as read from its file" },
  });
  const events = untilSigned(history);
  return { state: fold(events), now_ms: Date.parse(events.at(-1)?.recordedAt ?? "") };
}

const book = await theBook();
const { state, now_ms } = await tenYears(book);
const assessment = assess(book, state, null, now_ms);

/** The state as a new fold would hand it out: nothing that was looked up in it before can be found again. */
const fresh = (): AircraftState => ({
  ...state,
  happenings: state.happenings.slice(),
  discrepancies: new Map(state.discrepancies),
  photos: state.photos.slice(),
});

const assessing = () => {
  const states = Array.from({ length: TIMES }, fresh);
  return timed((at) => assess(book, states[at] ?? state, null, now_ms + at).verdicts.length);
};
const again = () => timed((at) => assess(book, state, null, now_ms + at).verdicts.length);
const writing = () => timed(() => JSON.stringify(assessment).length);
function round(assessFirst: boolean) {
  const sides = assessFirst ? [assessing(), writing()] : [writing(), assessing()];
  const [assessed, written] = assessFirst ? sides : sides.toReversed();
  if (assessed === undefined || written === undefined || assessed.made < TIMES * book.checks.length) {
    throw new Error(
      `assess bench: expected a verdict for each of ${book.checks.length} checks, ${TIMES} times`,
    );
  }
  return {
    assess_ms: assessed.took_ms,
    again_ms: again().took_ms,
    write_ms: written.took_ms,
    ratio: assessed.took_ms / written.took_ms,
  };
}

for (let at = 0; at < WARM_UPS; at += 1) round(at % 2 === 0);
const rounds = Array.from({ length: ROUNDS }, (_, at) => round(at % 2 === 0));
const took_ms = median(rounds.map(({ assess_ms }) => assess_ms));
const size_B = JSON.stringify(assessment).length;
const { clear, caution, stop, open } = assessment.counts;
console.log(
  [
    `assess, ${assessment.aircraft}: ${book.checks.length} checks, ${state.eventCount} events in ten years`,
    `  ${assessment.verdicts.length} verdicts (${stop} stop, ${caution} caution, ${open} open, ${clear} clear), ${Math.round(size_B / 1000)} kB as JSON`,
    `  assess ${took_ms.toFixed(2)} ms (${spread(
      rounds.map(({ assess_ms }) => assess_ms),
      2,
    )}), limit ${LIMIT_MS} ms`,
    `  the same state once more (another minute, another screen) ${median(rounds.map(({ again_ms }) => again_ms)).toFixed(2)} ms`,
    `  JSON.stringify of it ${median(rounds.map(({ write_ms }) => write_ms)).toFixed(2)} ms`,
    `  ratio ${median(rounds.map(({ ratio }) => ratio)).toFixed(1)} (${spread(
      rounds.map(({ ratio }) => ratio),
      1,
    )}) in ${ROUNDS} rounds of ${TIMES}`,
  ].join("\n"),
);
if (!(took_ms <= LIMIT_MS)) {
  console.error(
    `assess bench: expected at most ${LIMIT_MS} ms, found ${took_ms.toFixed(2)}; look for a scan of the whole history`,
  );
  process.exit(1);
}
