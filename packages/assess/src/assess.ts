import type { Book, Check } from "@witnessmark/book";
import type { AircraftState, Origin, PlannedFlight, Walk } from "@witnessmark/ledger";
import type { Assessment } from "./assessment.ts";
import { type BookIndex, indexOf } from "./book-index.ts";
import type { Context } from "./context.ts";
import type { Finding } from "./finding.ts";
import { flightVerdicts } from "./flight/flight-verdicts.ts";
import { leavingAt } from "./flight/leaving-at.ts";
import { compareFindings } from "./order.ts";
import { repeatVerdicts } from "./repeat/repeats.ts";
import { countsOf, headlineOf, holdsUntilOf, lineOf } from "./summary.ts";
import { timedVerdicts } from "./timed/timed-verdicts.ts";
import { trendVerdicts } from "./trend/trend-verdicts.ts";
import { checkVerdict } from "./verdicts/check-verdict.ts";
import { disagreementVerdicts } from "./verdicts/disagreements.ts";
import { discrepancyVerdicts } from "./verdicts/discrepancies.ts";
import { indexDiscrepancies } from "./verdicts/discrepancy-index.ts";
import { groundGearVerdicts } from "./verdicts/ground-gear.ts";
import { paceVerdict } from "./verdicts/pace.ts";
import { recordVerdicts } from "./verdicts/record.ts";
import { releaseVerdicts } from "./verdicts/releases.ts";
import { isOver, walkDue } from "./verdicts/walk-due.ts";
import { happeningsSince } from "./walk/happenings.ts";
import { answersIn, type Heads, type Look, lookAt, readingIn, walkInHand } from "./walk/looks.ts";
import { type Earliest, earlier, NOTHING } from "./walk/moments.ts";

import { latestPhotos } from "./walk/photos.ts";
import { type LocalClock, offsetOf_min } from "./words/local-time.ts";

/** An assessment together with what caused each verdict: for a decision that asks since when. */
export interface Assessed {
  readonly assessment: Assessment;
  readonly findings: readonly Finding[];
  readonly context: Context;
}

/** The checks that concern a walk, in its order. */
export const checksOf = (index: BookIndex, walk: Walk | null): readonly Check[] =>
  walk?.kind === "turnaround" ? index.ofTurnaround : index.ofKind[walk?.kind ?? "first-of-day"];

function looksAt(
  checks: readonly Check[],
  state: AircraftState,
  walk: Walk | null,
  inWalk: Context["inWalk"],
  heads: Heads | undefined,
): ReadonlyMap<string, Look> {
  const looks = new Map<string, Look>();
  for (const check of checks) {
    const isOfWalk = walk === null || check.walks.includes(walk.kind);
    const look = lookAt(state, check, inWalk, isOfWalk, heads);
    if (look !== undefined) looks.set(check.id, look);
  }
  return looks;
}

/** The offset of the latest word in the walk; of the book's adoption when there is no walk. */
function offset_min(state: AircraftState, walk: Walk | null, looks: Iterable<Look>): number {
  let last: Pick<Origin, "hlc" | "recordedAt"> | undefined = walk ?? state.books.at(-1);
  for (const { answer } of looks) {
    if (last === undefined || answer.hlc > last.hlc) last = answer;
  }
  return last === undefined ? 0 : offsetOf_min(last.recordedAt);
}

/** The earliest of everything that a happening could end: looks, readings, and ground gear counted in this walk. */
function earliestOf(state: AircraftState, walk: Walk | null, looks: Iterable<Look>): Earliest {
  let earliest = walk === null ? NOTHING : earlier(NOTHING, walk);
  for (const { answer, reading } of looks) {
    earliest = earlier(earliest, answer);
    if (reading !== undefined) earliest = earlier(earliest, reading);
  }
  for (const { removals, last } of state.groundGear.values()) {
    if (removals.some((removal) => removal.walk === walk?.id)) earliest = earlier(earliest, last);
  }
  return earliest;
}

/** What the verdicts of an assessment are made from. @param heads as in `findAll` */
export function contextOf(
  book: Book,
  state: AircraftState,
  now_ms: number,
  heads: Heads | undefined,
): Context {
  const index = indexOf(book);
  const walk = walkInHand(state);
  const inWalk = answersIn(state, walk, heads);
  const looks = looksAt(checksOf(index, walk), state, walk, inWalk, heads);
  return {
    book,
    index,
    state,
    walk,
    heads,
    inWalk,
    looks,
    clock: { now_ms, offset_min: offset_min(state, walk, looks.values()) },
    happenings: happeningsSince(state.happenings, earliestOf(state, walk, looks.values())),
    discrepancies: indexDiscrepancies(state.discrepancies),
    photos: latestPhotos(state.photos, heads),
  };
}

/** The clock that verdicts go by: the local day of the last look, wherever the one who reads it is. */
export const clockOf = (book: Book, state: AircraftState, now_ms: number): LocalClock =>
  contextOf(book, state, now_ms, undefined).clock;

function checkFindings(context: Context): readonly Finding[] {
  const { index, walk, state, heads, looks } = context;
  return checksOf(index, walk).flatMap((check) => {
    const reading =
      walk === null || check.reading === undefined || looks.has(check.id)
        ? undefined
        : readingIn(state, check.id, walk.id, heads);
    return checkVerdict(check, reading, context) ?? [];
  });
}

/** What an assessment is made of: every finding, in no order, each told when it is read. */
export interface Found {
  readonly findings: readonly Finding[];
  readonly context: Context;
}

/**
 * The findings of an assessment, without what is said of them together.
 *
 * @param heads when given, only looks that had been seen up to there count
 */
export function findAll(
  book: Book,
  state: AircraftState,
  planned: PlannedFlight | null,
  now_ms: number,
  heads?: Heads,
): Found {
  const context = contextOf(book, state, now_ms, heads);
  const flight = leavingAt(planned, now_ms);
  const ofDiscrepancies = discrepancyVerdicts(context, flight);
  const byDiscrepancy = new Map(
    ofDiscrepancies.flatMap((finding) =>
      finding.verdict.subject === undefined || finding.verdict.topic !== "discrepancy"
        ? []
        : [[finding.verdict.subject.id, finding] as const],
    ),
  );
  const findings = [
    ...checkFindings(context),
    ...groundGearVerdicts(context),
    ...ofDiscrepancies,
    ...releaseVerdicts(context, flight),
    ...repeatVerdicts(context),
    ...disagreementVerdicts(context, byDiscrepancy),
    ...paceVerdict(context),
    ...recordVerdicts(context),
    ...walkDue(context),
    ...timedVerdicts(context, flight),
    ...trendVerdicts(context, flight),
    ...flightVerdicts(context, flight),
  ];
  return { findings, context };
}

/** `assess`, with the causes. @param heads when given, only looks that had been seen up to there count */
export function assessWithCauses(
  book: Book,
  state: AircraftState,
  flight: PlannedFlight | null,
  now_ms: number,
  heads?: Heads,
): Assessed {
  const found = findAll(book, state, flight, now_ms, heads);
  const { context } = found;
  const findings = found.findings.toSorted(compareFindings);
  const counts = countsOf(findings);
  const holdsUntil = holdsUntilOf(findings, context);
  const { walk } = context;
  const assessment: Assessment = {
    aircraft: state.aircraft,
    book: { revision: book.revision, sha256: book.sha256 },
    flight,
    at: new Date(now_ms).toISOString(),
    walk:
      walk === null
        ? null
        : { id: walk.id, kind: walk.kind, startedAt: walk.recordedAt, isOver: isOver(context) },
    status: findings[0]?.verdict.status ?? "open",
    headline: headlineOf(findings, counts),
    ...lineOf(findings, holdsUntil, context),
    counts,
    verdicts: findings.map(({ verdict }) => verdict),
    restsOn: {
      checks: findings.reduce((sum, { restsOn }) => sum + (restsOn?.checks ?? 0), 0),
      readings: findings.reduce((sum, { restsOn }) => sum + (restsOn?.readings ?? 0), 0),
    },
    ...(holdsUntil === undefined ? {} : { holdsUntil }),
    heads: Object.fromEntries([...state.heads].sort(([a], [b]) => (a < b ? -1 : 1))),
  };
  return { assessment, findings, context };
}

/**
 * Every verdict for one aircraft, one flight, one moment, worst first.
 *
 * Pure: no clock, no input or output, no chance; nothing given is changed. The same book, state, flight and moment
 * give the same assessment, years later and on any machine.
 *
 * @param now_ms milliseconds since 1970 UTC
 */
export const assess = (
  book: Book,
  state: AircraftState,
  flight: PlannedFlight | null,
  now_ms: number,
): Assessment => assessWithCauses(book, state, flight, now_ms).assessment;
