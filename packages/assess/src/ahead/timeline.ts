import type { Book } from "@witnessmark/book";
import type { AircraftState, Status } from "@witnessmark/ledger";
import { findAll } from "../assess.ts";
import type { Flight } from "../assessment.ts";
import { type Finding, worthOf } from "../finding.ts";
import { worstStatus } from "../flight/figures.ts";
import { compareFindings } from "../order.ts";

/** One verdict that changes by time alone. */
export interface Turn {
  /** The first moment at which it is so, to half a minute; milliseconds since 1970 UTC. */
  readonly at_ms: number;
  readonly verdict: string;
  readonly title: string;
  readonly was: Status;
  readonly becomes: Status;
  /** One plain line: what it says from then on. */
  readonly says: string;
}

/** How long the answer as a whole stays the same. */
export interface Span {
  readonly from_ms: number;
  readonly until_ms: number;
  readonly status: Status;
}

export interface Timeline {
  readonly spans: readonly Span[];
  /** In order of time; the worst first of those at one moment. */
  readonly turns: readonly Turn[];
}

const AHEAD_ms = 12 * 3_600_000;
const STEP_ms = 30 * 60_000;
const RESOLUTION_ms = 30_000;

interface Moment {
  readonly at_ms: number;
  readonly status: Status;
  readonly findings: ReadonlyMap<string, Finding>;
}

/** Whether two moments have the same verdicts, each with the same status. */
function answerAlike(one: Moment, other: Moment): boolean {
  if (one.findings.size !== other.findings.size) return false;
  for (const [id, finding] of one.findings) {
    const same = other.findings.get(id);
    if (same === undefined || worthOf(same).status !== worthOf(finding).status) return false;
  }
  return true;
}

/**
 * The answer over the next 12 hours, when nothing happens but time: what one would be told who leaves then, at the
 * planned time or, once that is past, at once. Moments at which a verdict says that it runs out are looked at exactly;
 * between them every half hour, and every change found is narrowed down to half a minute. A change and its reverse
 * within one half hour may be missed.
 *
 * @param now_ms milliseconds since 1970 UTC
 */
export function timeline(book: Book, state: AircraftState, flight: Flight | null, now_ms: number): Timeline {
  const known = new Map<number, Moment>();
  const momentAt = (at_ms: number): Moment => {
    const found = known.get(at_ms);
    if (found !== undefined) return found;
    const made = assessedAt(book, state, flight, at_ms);
    known.set(at_ms, made);
    return made;
  };
  const first = momentAt(now_ms);
  const ends = endsOf(first, now_ms);
  const isEnd = ({ at_ms }: Moment): boolean => ends.has(at_ms);
  const changes: Moment[] = [];
  let last = first;
  for (const at_ms of sampleTimes(ends, now_ms)) {
    const next = momentAt(at_ms);
    narrow(last, next, momentAt, isEnd, changes);
    last = next;
  }
  return { spans: spansOf(first, changes, now_ms + AHEAD_ms), turns: turnsOf(first, changes) };
}

/** The first moments after those until which a verdict of now says that it holds. */
function endsOf({ findings }: Moment, now_ms: number): ReadonlySet<number> {
  const ends = new Set<number>();
  for (const { verdict } of findings.values()) {
    const { holdsUntil_ms } = verdict;
    if (holdsUntil_ms !== undefined && holdsUntil_ms >= now_ms && holdsUntil_ms < now_ms + AHEAD_ms) {
      ends.add(holdsUntil_ms + 1);
    }
  }
  return ends;
}

function sampleTimes(ends: ReadonlySet<number>, now_ms: number): readonly number[] {
  const times = new Set(ends);
  for (let at_ms = now_ms + STEP_ms; at_ms <= now_ms + AHEAD_ms; at_ms += STEP_ms) times.add(at_ms);
  return [...times].sort((a, b) => a - b);
}

/**
 * Finds every change between two moments by halving the time between them.
 *
 * @param isEnd whether a verdict said that it holds until the moment before
 */
function narrow(
  from: Moment,
  to: Moment,
  momentAt: (at_ms: number) => Moment,
  isEnd: (moment: Moment) => boolean,
  found: Moment[],
): void {
  if (answerAlike(from, to)) return;
  if (to.at_ms - from.at_ms <= RESOLUTION_ms) {
    found.push(to);
    return;
  }
  // a verdict said until when it holds: where nothing is otherwise the moment before, that is all there is to find
  if (isEnd(to) && answerAlike(momentAt(to.at_ms - 1), from)) {
    found.push(to);
    return;
  }
  const middle = momentAt(Math.round((from.at_ms + to.at_ms) / 2));
  narrow(from, middle, momentAt, isEnd, found);
  narrow(middle, to, momentAt, isEnd, found);
}

function assessedAt(book: Book, state: AircraftState, flight: Flight | null, at_ms: number): Moment {
  const all = findAll(book, state, flight, at_ms).findings;
  const findings = new Map(all.map((finding) => [worthOf(finding).id, finding]));
  return { at_ms, status: worstOf(all), findings };
}

/** As the status of an assessment; one of nothing is open. */
const worstOf = (findings: readonly Finding[]): Status =>
  findings.length === 0 ? "open" : worstStatus(findings.map((finding) => worthOf(finding).status));

function spansOf(first: Moment, changes: readonly Moment[], end_ms: number): readonly Span[] {
  const spans: Span[] = [];
  let from = { at_ms: first.at_ms, status: first.status };
  for (const { at_ms, status } of changes) {
    if (status === from.status) continue;
    spans.push({ from_ms: from.at_ms, until_ms: at_ms, status: from.status });
    from = { at_ms, status };
  }
  return [...spans, { from_ms: from.at_ms, until_ms: end_ms, status: from.status }];
}

function turnsOf(first: Moment, changes: readonly Moment[]): readonly Turn[] {
  const turns: Turn[] = [];
  let before = first;
  for (const moment of changes) {
    for (const finding of [...moment.findings.values()].sort(compareFindings)) {
      const { id, status } = worthOf(finding);
      const known = before.findings.get(id);
      if (known === undefined || worthOf(known).status === status) continue;
      const { title, says } = finding.verdict;
      turns.push({
        at_ms: moment.at_ms,
        verdict: id,
        title,
        was: worthOf(known).status,
        becomes: status,
        says,
      });
    }
    before = moment;
  }
  return turns;
}
