/*
 * Folding the whole ledger of one aircraft against JSON.parse of the same lines: what a cold start costs beyond reading.
 * Limit: 3.0 times (median of the rounds). Run: node --expose-gc bench/fold.ts
 */
import { fold, generateHistory, type LedgerEvent, Random } from "@witnessmark/ledger";

const EVENTS = 300_000;
const LIMIT = 3.0;
const WARM_UPS = 2;
const ROUNDS = 7;

/** Milliseconds that one side took; what it made is counted, so that nothing can be left out. */
function timed(work: () => number): { readonly took_ms: number; readonly made: number } {
  globalThis.gc?.();
  const start_ms = performance.now();
  const made = work();
  return { took_ms: performance.now() - start_ms, made };
}

/** The order in which a server hands out what two phones pushed in batches: nearly that of the ledger, not quite. */
function asPushed(events: readonly LedgerEvent[], random: Random): readonly LedgerEvent[] {
  return events
    .map((event, at) => ({ event, at: at + (random.chance(0.1) ? random.whole(0, 500) : 0) }))
    .sort((a, b) => a.at - b.at)
    .map(({ event }) => event);
}

function shuffled(events: readonly LedgerEvent[], random: Random): readonly LedgerEvent[] {
  return events
    .map((event) => ({ event, at: random.next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ event }) => event);
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

const spread = (values: readonly number[]): string =>
  `${Math.min(...values).toFixed(2)} to ${Math.max(...values).toFixed(2)}`;

function round(lines: readonly string[], events: readonly LedgerEvent[], foldFirst: boolean) {
  const parse = () => timed(() => lines.reduce((sum, line) => sum + Object.keys(JSON.parse(line)).length, 0));
  const folding = () => timed(() => fold(events).eventCount);
  const sides = foldFirst ? [folding(), parse()] : [parse(), folding()];
  const [folded, parsed] = foldFirst ? sides : sides.toReversed();
  if (folded?.made !== EVENTS || parsed === undefined || parsed.made < EVENTS) {
    throw new Error(
      `fold bench: expected ${EVENTS} events folded and parsed, found ${folded?.made} and ${parsed?.made}`,
    );
  }
  const again = parse();
  return {
    ratio: folded.took_ms / parsed.took_ms,
    same: again.took_ms / parsed.took_ms,
    ...{ folded, parsed },
  };
}

function measure(name: string, made: readonly LedgerEvent[]): number {
  const lines = made.map((event) => JSON.stringify(event));
  // Read as a store or a file hands them out; this history's own, so that they are events.
  const events = lines.map((line): LedgerEvent => JSON.parse(line));
  const size_B = lines.reduce((sum, line) => sum + line.length, 0);
  for (let at = 0; at < WARM_UPS; at += 1) round(lines, events, at % 2 === 0);
  const rounds = Array.from({ length: ROUNDS }, (_, at) => round(lines, events, at % 2 === 0));
  const ratios = rounds.map(({ ratio }) => ratio);
  console.log(
    [
      `fold, ${name}: ${EVENTS} events, ${Math.round(size_B / EVENTS)} B a line`,
      `  fold ${median(rounds.map(({ folded }) => folded.took_ms)).toFixed(0)} ms, JSON.parse ${median(rounds.map(({ parsed }) => parsed.took_ms)).toFixed(0)} ms`,
      `  ratio ${median(ratios).toFixed(2)} (${spread(ratios)}) in ${ROUNDS} rounds; limit ${LIMIT.toFixed(1)}`,
      `  noise, JSON.parse against itself: ${spread(rounds.map(({ same }) => same))}`,
    ].join("\n"),
  );
  return median(ratios);
}

const history = await generateHistory({ years: 10, flightsPerYear: 340, seed: 20_310_101, seal: "none" });
if (history.length < EVENTS)
  throw new Error(`fold bench: the history has ${history.length} events, expected ${EVENTS}`);
const inOrder = history.slice(0, EVENTS);
const ratios = [
  measure("as pushed", asPushed(inOrder, new Random(1))),
  measure("in any order", shuffled(inOrder, new Random(2))),
];
console.log(`heap at the end: ${Math.round(process.memoryUsage().heapUsed / 1e6)} MB`);
const worst = Math.max(...ratios);
if (!(worst <= LIMIT)) {
  console.error(
    `fold bench: expected at most ${LIMIT.toFixed(1)} times JSON.parse, found ${worst.toFixed(2)}`,
  );
  process.exit(1);
}
