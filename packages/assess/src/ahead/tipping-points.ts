import type { Book } from "@witnessmark/book";
import type { UnitId } from "@witnessmark/engine";
import type { AircraftState, Status } from "@witnessmark/ledger";
import { contextOf } from "../assess.ts";
import type { Flight } from "../assessment.ts";
import { type Finding, worthOf } from "../finding.ts";
import { massesOf } from "../flight/conditions/condition-verdicts.ts";
import { leavingAt } from "../flight/leaving-at.ts";
import { workLoad } from "../flight/load/load-figures.ts";
import { BADNESS } from "../order.ts";
import { type Answer, answerOf, worthsOf } from "./answer.ts";
import { type Asked, nearestChange } from "./nearest-change.ts";
import { type Variable, variablesOf } from "./variables.ts";

/** Where the answer for a flight changes as one value of it changes alone. */
export interface TippingPoint {
  readonly variable: string;
  /** "temperature at ZZTW" */
  readonly title: string;
  readonly unit: UnitId;
  /** All in `unit`. */
  readonly now: number;
  /** The last value at which the answer is still what it is now. */
  readonly holds: number;
  /** The first found at which it is another. */
  readonly changes: number;
  readonly low: number;
  readonly high: number;
  /** The verdict that makes it another, and what that becomes. */
  readonly verdict: string;
  readonly verdictTitle: string;
  readonly says: string;
  readonly was: Status;
  readonly becomes: Status;
  /** Whether the flight is better off there than now. */
  readonly better: boolean;
  /** How many times the likely error or change lies between now and there: the smaller, the likelier. */
  readonly likelihood_1: number;
}

const byId = (findings: readonly Finding[]): ReadonlyMap<string, Finding> =>
  new Map(findings.map((finding) => [worthOf(finding).id, finding]));

/** A value of a flight with which nothing changes, as far as it may plausibly go. All in `unit`. */
export type Steady = Pick<TippingPoint, "variable" | "title" | "unit" | "now" | "low" | "high">;

export interface Tips {
  /** The likeliest first. */
  readonly points: readonly TippingPoint[];
  /** What was looked at as well, in no order: it tips nothing within its range. */
  readonly steady: readonly Steady[];
}

/** Which of the values one looks at, where several look side by side: every `of`th, from `part` on, which is below it. */
export interface Share {
  readonly part: number;
  readonly of: number;
}

const WHOLE: Share = { part: 0, of: 1 };

const byLikelihood = (points: readonly TippingPoint[]): readonly TippingPoint[] =>
  points.toSorted(
    (one, other) => one.likelihood_1 - other.likelihood_1 || (one.variable < other.variable ? -1 : 1),
  );

/** What each found of its share, as if one had looked at everything. */
export const allTips = (shares: readonly Tips[]): Tips => ({
  points: byLikelihood(shares.flatMap(({ points }) => points)),
  steady: shares.flatMap(({ steady }) => steady),
});

/**
 * Where the answer for a flight tips over: for each value that could be wrong or can change, the nearest on either side
 * at which something begins to stop the flight, or ceases to, or what may stop it is not known any more, as beyond the
 * end of a table, or the worst of its answers is another. Found by asking the same verdicts that `assess` gives, so it
 * holds for whatever they hold for. The walk is left as it is.
 *
 * @param now_ms milliseconds since 1970 UTC
 * @param share of the values; the others are neither among the points nor steady
 * @returns nothing when the flight has no plan
 */
export function tipsOfFlight(
  book: Book,
  state: AircraftState,
  planned: Flight | null,
  now_ms: number,
  share: Share = WHOLE,
): Tips {
  const flight = leavingAt(planned, now_ms);
  const plan = flight?.plan;
  if (flight === null || plan === undefined) return { points: [], steady: [] };
  const context = contextOf(book, state, now_ms, undefined);
  const now = answerOf(context, flight);
  const worths = worthsOf(now);
  const ask = (other: Flight): Answer => answerOf(context, other, worths);
  const masses = massesOf(workLoad(book, plan).figures);
  const points: TippingPoint[] = [];
  const steady: Steady[] = [];
  const variables = variablesOf(book, flight, plan, masses, now_ms);
  for (const variable of variables.filter((_, at) => at % share.of === share.part)) {
    const found = tipsOf(variable, flight, now, ask);
    if (found === undefined) continue;
    points.push(...found);
    const { id, title, unit, low, high } = variable;
    if (found.length === 0) steady.push({ variable: id, title, unit, now: variable.now, low, high });
  }
  return { points: byLikelihood(points), steady };
}

/** Of `tipsOfFlight` only where it tips over: the likeliest first; empty when the flight has no plan. */
export const tippingPoints = (
  book: Book,
  state: AircraftState,
  flight: Flight | null,
  now_ms: number,
): readonly TippingPoint[] => tipsOfFlight(book, state, flight, now_ms).points;

/**
 * Where the margin of a verdict that turns between two answers comes to nothing, were it a straight line; the nearest
 * where there are several. Margins are told in whole units rounded down: half a unit is what is left on average.
 */
function edgeBetween(near: Asked<Answer>, far: Asked<Answer>): number | undefined {
  let share_1 = Number.POSITIVE_INFINITY;
  const known = byId(near.answer.seen);
  for (const finding of far.answer.seen) {
    const { id, status } = worthOf(finding);
    const before = known.get(id);
    if (before === undefined || worthOf(before).status === status) continue;
    const [was, is] = [before.verdict.margin, finding.verdict.margin];
    if (was === undefined || is === undefined || is.unit === "" || was.unit !== is.unit) continue;
    const [from, to] = [was.value + 0.5, is.value + 0.5];
    if (from > 0 !== to > 0) share_1 = Math.min(share_1, from / (from - to));
  }
  return Number.isFinite(share_1) ? near.value + share_1 * (far.value - near.value) : undefined;
}

/**
 * @param now the answer for the flight as it is
 * @returns undefined where what was reported, asked about as if it had been typed, has another answer than there is
 */
function tipsOf(
  variable: Variable,
  flight: Flight,
  now: Answer,
  ask: (flight: Flight) => Answer,
): readonly TippingPoint[] | undefined {
  const { low, high, resolution } = variable;
  const asked = new Map<number, Answer>();
  const answerAt = (value: number): Answer => {
    const other = variable.with(value);
    const answer = other === flight ? now : (asked.get(value) ?? ask(other));
    asked.set(value, answer);
    return answer;
  };
  // asked about as if it had been typed, the answer must be the one there is; else the two cannot be compared
  if (answerAt(variable.now).key !== now.key) return undefined;
  return [low, high].flatMap((end) => {
    const found = nearestChange({
      now: variable.now,
      end,
      resolution,
      answerAt,
      isSame: (a, b) => a.key === b.key,
      guess: edgeBetween,
    });
    return found === undefined ? [] : (pointOf(variable, now, answerAt(found.holds), found) ?? []);
  });
}

/** What is not known any more is worse than anything that is known and does not stop. */
const isWorse = (was: Status, becomes: Status): boolean =>
  becomes === "open" ? was !== "stop" : BADNESS[becomes] < BADNESS[was];

/** @param near the answer at the last value that holds: what turned before it did not make another of it */
function pointOf(
  variable: Variable,
  now: Answer,
  near: Answer,
  found: { readonly holds: number; readonly changes: number; readonly answer: Answer },
): TippingPoint | undefined {
  const before = byId(now.all());
  const statusIn = (findings: typeof before, id: string): Status => {
    const one = findings.get(id);
    return one === undefined ? "clear" : worthOf(one).status;
  };
  const all = found.answer
    .all()
    .map((finding) => {
      const { id, status: becomes } = worthOf(finding);
      return { id, finding, was: statusIn(before, id), becomes };
    })
    .filter(({ was, becomes }) => becomes !== was);
  // where one alone turned, it is the one: all of the near answer need not be worked out
  const beside = all.length > 1 ? byId(near.all()) : before;
  const turned = all.filter(({ id, becomes }) => becomes !== statusIn(beside, id));
  const worse = turned
    .filter(({ was, becomes }) => isWorse(was, becomes))
    .sort((a, b) => BADNESS[a.becomes] - BADNESS[b.becomes])[0];
  const better = turned.sort((a, b) => BADNESS[a.was] - BADNESS[b.was])[0];
  const cause = worse ?? better;
  if (cause === undefined) return undefined;
  const { id, title, unit, low, high, likely } = variable;
  const { verdict } = cause.finding;
  return {
    variable: id,
    title,
    unit,
    now: variable.now,
    holds: found.holds,
    changes: found.changes,
    low,
    high,
    verdict: verdict.id,
    verdictTitle: verdict.title,
    says: verdict.says,
    was: cause.was,
    becomes: cause.becomes,
    better: worse === undefined,
    likelihood_1: Math.abs(found.changes - variable.now) / likely,
  };
}
