/*
 * Assessing the turboprop of the demo with ten years of history, against JSON.stringify of the assessment that comes
 * out: what a screen pays beyond writing down its answer. Limit: 5 ms (median of the rounds). Run: node bench/assess.ts
 */
import { assess } from "@witnessmark/assess";
import type { AircraftState } from "@witnessmark/ledger";
import { tenYears, turboprop } from "./demo/turboprop.ts";

const LIMIT_MS = 5;
const WARM_UPS = 12;
const ROUNDS = 9;
const TIMES = 20;

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

const book = await turboprop();
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
