import { type Aspect, EVERYTHING, joinAspects } from "./aspect.ts";
import { overlay, type Source, type State, stateOf, type WorstCase, worstOf } from "./conditions.ts";
import type { PlacedForecast, PlacedPeriod } from "./placed.ts";

/** What a forecast says for a stretch of time within which it changes nothing. */
export interface Slice {
  readonly from_ms: number;
  readonly to_ms: number;
  readonly prevailing: State;
  /** While a BECMG group runs, both the old and the new may be the case. */
  readonly becoming: readonly State[];
  /** TEMPO, PROB and INTER groups laid over each of these, and groups whose time was not understood. */
  readonly temporary: readonly State[];
}

export interface Conditions {
  /** How much of the time asked for lies in the validity. Nothing is stretched beyond it. */
  readonly covered: "whole" | "part" | "none";
  readonly slices: readonly Slice[];
  /** Only what prevails: without groups that come and go. */
  readonly prevailing: WorstCase;
  /** Everything that may be the case. */
  readonly worst: WorstCase;
  readonly open: readonly Aspect[];
}

const roleOf = ({ kind }: PlacedPeriod): Source["role"] =>
  kind === "initial" || kind === "FM"
    ? "prevailing"
    : kind === "BECMG"
      ? "becoming"
      : kind === "unclear"
        ? "unclear"
        : "temporary";

const sourceOf = (period: PlacedPeriod): Source => ({
  role: roleOf(period),
  text: period.text,
  kind: period.kind,
  ...(period.probability_percent === undefined ? {} : { probability_percent: period.probability_percent }),
  from_ms: period.from_ms,
  to_ms: period.to_ms,
});

const laid = (state: State, period: PlacedPeriod): State =>
  overlay(state, period.elements, sourceOf(period), period.open);

function sliceAt(taf: PlacedForecast, from_ms: number, to_ms: number): Slice | undefined {
  const standing = taf.periods.filter(
    (period) => roleOf(period) === "prevailing" && period.from_ms <= from_ms,
  );
  const base = standing.at(-1);
  if (base === undefined) return undefined;
  // an FM group ends what came before it, changes included
  const changes = taf.periods.filter(
    (period) => period.kind === "BECMG" && period.from_ms >= base.from_ms && period.from_ms <= from_ms,
  );
  const done = changes.filter((period) => period.to_ms <= from_ms);
  const running = changes.filter((period) => period.to_ms > from_ms);
  const prevailing = done.reduce(laid, stateOf(base.elements, sourceOf(base), base.open));
  const becoming = running.map((period) => laid(prevailing, period));
  const passing = taf.periods.filter((period) => {
    const role = roleOf(period);
    return (
      role === "unclear" || (role === "temporary" && period.from_ms <= from_ms && period.to_ms > from_ms)
    );
  });
  const temporary = passing.flatMap((period) =>
    [prevailing, ...becoming].map((state) => laid(state, period)),
  );
  return { from_ms, to_ms, prevailing, becoming, temporary };
}

/** The instants at which a forecast says something new, both ends of its validity among them, in order. */
export function changesOf({ from_ms, to_ms, periods }: PlacedForecast): readonly number[] {
  const all = new Set([from_ms, to_ms, ...periods.flatMap((period) => [period.from_ms, period.to_ms])]);
  return [...all].filter((at) => at >= from_ms && at <= to_ms).toSorted((one, other) => one - other);
}

/**
 * What a forecast says for a span of time: what prevails, and the worst of all groups that overlap it, element by
 * element, with the group that each comes from. A BECMG group counts from its beginning, the old until its end. A
 * TEMPO, PROB or INTER group counts whatever its odds. The wind of a running change may also blow from between the
 * two directions, which the forecast does not say.
 *
 * @param fromUtc_ms first instant asked for
 * @param toUtc_ms last instant asked for, the same for a single one
 */
export function conditionsAt(taf: PlacedForecast, fromUtc_ms: number, toUtc_ms: number): Conditions {
  const [from_ms, to_ms] = [Math.max(fromUtc_ms, taf.from_ms), Math.min(toUtc_ms, taf.to_ms)];
  const sound = Number.isFinite(fromUtc_ms) && Number.isFinite(toUtc_ms) && fromUtc_ms <= toUtc_ms;
  const dead = taf.report.nil || taf.report.cancelled || taf.periods.length === 0;
  if (!sound || dead || from_ms > to_ms || from_ms >= taf.to_ms) {
    const nothing = worstOf([]);
    return { covered: "none", slices: [], prevailing: nothing, worst: nothing, open: EVERYTHING };
  }
  const starts = [from_ms, ...changesOf(taf).filter((at) => at > from_ms && at <= to_ms && at < taf.to_ms)];
  const slices = starts.flatMap((start, index) => {
    const slice = sliceAt(taf, start, starts[index + 1] ?? to_ms);
    return slice === undefined ? [] : [slice];
  });
  const whole = from_ms === fromUtc_ms && to_ms === toUtc_ms;
  const prevailing = worstOf(slices.flatMap((slice) => [slice.prevailing, ...slice.becoming]));
  const worst = worstOf(slices.flatMap((slice) => [slice.prevailing, ...slice.becoming, ...slice.temporary]));
  const general = taf.problems.filter(({ period }) => period === undefined).flatMap(({ affects }) => affects);
  const open = joinAspects([...worst.open, ...general, ...(whole ? [] : EVERYTHING)]);
  return { covered: whole ? "whole" : "part", slices, prevailing, worst, open };
}
