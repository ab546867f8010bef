import type { Book } from "@witnessmark/book";
import {
  type AircraftState,
  canonical,
  compareOrder,
  type Decision,
  hlcTime_ms,
  type Status,
} from "@witnessmark/ledger";
import { type Assessed, assessWithCauses } from "../assess.ts";
import type { Standing, Verdict } from "../assessment.ts";
import type { Cause } from "../finding.ts";
import { walkInHand } from "../walk/looks.ts";
import { recorded_ms } from "../walk/moments.ts";
import { counted, inWords, sentence } from "../words/count-words.ts";
import { type LocalClock, offsetOf_min, whenText } from "../words/local-time.ts";

/** How little one can rest on a verdict. What is no longer known is worse than a known caution. */
const UNSAFE: Readonly<Record<Status, number>> = { clear: 0, caution: 1, open: 2, stop: 3 };

type Lapsed = Extract<Standing, { stands: false }>;
type Worse = Lapsed["worse"][number];

interface Change {
  readonly worse: Worse;
  readonly verdict: Verdict;
  readonly cause: Cause | undefined;
}

/** How many causes are told before the rest is counted. */
const TOLD = 2;

function changesIn({ findings }: Assessed, was: ReadonlyMap<string, Status>): readonly Change[] {
  return findings.flatMap(({ verdict, cause }) => {
    const before = was.get(verdict.id) ?? "clear";
    if (UNSAFE[verdict.status] <= UNSAFE[before]) return [];
    return [{ worse: { verdict: verdict.id, was: before, now: verdict.status }, verdict, cause }];
  });
}

/** `Five checks no longer count` */
function noLongerCount(changes: readonly Change[]): string | undefined {
  const open = changes.filter(({ verdict }) => verdict.status === "open");
  const checks = open.filter(({ verdict }) => verdict.topic === "check").length;
  const gear = open.filter(({ verdict }) => verdict.topic === "ground-gear").length;
  const parts = [
    ...(checks > 0 ? [`${inWords(checks)} ${checks === 1 ? "check" : "checks"}`] : []),
    ...(gear > 0 ? [`${inWords(gear)} ${gear === 1 ? "item" : "items"} of ground gear`] : []),
  ];
  if (parts.length === 0) return undefined;
  return `${sentence(parts.join(" and "))} no longer ${checks + gear === 1 ? "counts" : "count"}.`;
}

interface Told {
  readonly cause: Cause;
  readonly changes: readonly Change[];
}

/** The changes by what caused them, earliest first; a change without a known cause is a withdrawn entry's. */
function byCause(changes: readonly Change[], fallback_ms: number): readonly [Told, ...Told[]] | readonly [] {
  const groups = new Map<string, { cause: Cause; changes: Change[] }>();
  for (const change of changes) {
    const cause: Cause = change.cause ?? {
      key: "unknown",
      at_ms: fallback_ms,
      words: "An entry that it rested on was taken back",
      reopens: true,
    };
    const group = groups.get(cause.key);
    if (group === undefined) groups.set(cause.key, { cause, changes: [change] });
    else group.changes.push(change);
  }
  const [first, ...rest] = [...groups.values()].sort(
    (a, b) => a.cause.at_ms - b.cause.at_ms || (a.cause.key < b.cause.key ? -1 : 1),
  );
  return first === undefined ? [] : [first, ...rest];
}

function wordsOf(told: readonly Told[]): string {
  const sentences = told.slice(0, TOLD).flatMap(({ cause, changes }) => {
    const reopened = cause.reopens && !cause.key.startsWith("age:") ? noLongerCount(changes) : undefined;
    return reopened === undefined ? [`${cause.words}.`] : [`${cause.words}.`, reopened];
  });
  const more = told.length - TOLD;
  return more > 0
    ? `${sentences.join(" ")} And ${counted(more, "more change", "more changes")}.`
    : sentences.join(" ");
}

const lapsed = (since_ms: number, because: string, worse: Lapsed["worse"] = []): Lapsed => ({
  stands: false,
  since_ms,
  because,
  worse,
});

/** What ends a decision by itself, whatever the verdicts say: it was taken back, or a newer one was signed. */
function overtaken(
  state: AircraftState,
  decision: Decision,
  clock: LocalClock,
  latest_ms: number,
): Lapsed | undefined {
  if (state.withdrawn.has(decision.event)) return lapsed(latest_ms, "The decision was taken back.");
  const newer = state.decisions.find(
    (other) => other.event !== decision.event && compareOrder(other, decision) > 0,
  );
  if (newer === undefined) return undefined;
  const at_ms = recorded_ms(newer);
  const answer = newer.answer === "go" ? "go" : "not going yet";
  return lapsed(at_ms, `A newer decision was signed ${whenText(at_ms, clock)}: ${answer}.`);
}

/** What a going decision rests on as a whole: its walk and its book. */
function groundsGone(
  book: Book,
  state: AircraftState,
  decision: Decision,
  clock: LocalClock,
  latest_ms: number,
): Lapsed | undefined {
  const walk = walkInHand(state);
  if (walk?.id !== decision.walk) {
    if (walk === null || compareOrder(walk, decision) < 0) {
      return lapsed(latest_ms, "The walk that it rests on is no longer the one in hand.");
    }
    const at_ms = recorded_ms(walk);
    return lapsed(at_ms, `A new walk began ${whenText(at_ms, clock)}.`);
  }
  if (book.sha256 === decision.bookSha256) return undefined;
  const adopted = state.books.findLast(({ sha256 }) => sha256 === book.sha256);
  const at_ms = adopted === undefined ? latest_ms : recorded_ms(adopted);
  return lapsed(at_ms, `The book changed to revision ${book.revision} ${whenText(at_ms, clock)}.`);
}

/** The flight that it was signed for was planned anew since, with anything in it another. */
function plannedAnew(state: AircraftState, decision: Decision, clock: LocalClock): Lapsed | undefined {
  const { flight } = decision;
  const record = flight?.id === undefined ? undefined : state.flights.get(flight.id);
  if (flight === null || record === undefined || compareOrder(record, decision) < 0) return undefined;
  if (canonical(record.planned) === canonical(flight)) return undefined;
  const at_ms = recorded_ms(record);
  return lapsed(at_ms, `The flight was planned anew ${whenText(at_ms, clock)}.`);
}

/**
 * Whether a signed decision still stands.
 *
 * A decision to go lapses when a verdict is worse than it was at signing: by what the looks that it rests on are worth
 * now, even if somebody has looked again since (that asks for a new signature), by everything recorded since, and when
 * its flight is planned anew. A decision not to go never turns into one to go; only a newer decision takes its place.
 *
 * @param book the book in force now
 * @param now_ms milliseconds since 1970 UTC
 */
export function standing(book: Book, state: AircraftState, decision: Decision, now_ms: number): Standing {
  const signed_ms = recorded_ms(decision);
  const clock: LocalClock = { now_ms, offset_min: offsetOf_min(decision.recordedAt) };
  // The state does not say when an entry was taken back; the latest entry is the last moment at which it can have been.
  const latest_ms = Math.max(signed_ms, state.upTo === null ? signed_ms : hlcTime_ms(state.upTo.hlc));
  const over = overtaken(state, decision, clock, latest_ms);
  if (over !== undefined || decision.answer === "not-going") return over ?? { stands: true };
  const gone = groundsGone(book, state, decision, clock, latest_ms) ?? plannedAnew(state, decision, clock);
  if (gone !== undefined) return { ...gone, since_ms: Math.max(gone.since_ms, signed_ms) };
  const was = new Map(decision.restsOn.map(({ verdict, status }) => [verdict, status]));
  const rested = assessWithCauses(book, state, decision.flight, now_ms, decision.heads);
  const now = assessWithCauses(book, state, decision.flight, now_ms);
  const ofRested = changesIn(rested, was);
  const known = new Set(ofRested.map(({ worse }) => worse.verdict));
  const changes = [...ofRested, ...changesIn(now, was).filter(({ worse }) => !known.has(worse.verdict))];
  const told = byCause(changes, latest_ms);
  const [first] = told;
  if (first === undefined) {
    const { holdsUntil } = rested.assessment;
    return holdsUntil === undefined ? { stands: true } : { stands: true, until: holdsUntil };
  }
  return lapsed(
    Math.max(signed_ms, first.cause.at_ms),
    wordsOf(told),
    changes.map(({ worse }) => worse),
  );
}
