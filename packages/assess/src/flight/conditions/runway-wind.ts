import type { Performance, Runway } from "@witnessmark/book";
import { toSI, type Wind, windAtCrosswindLimit, windOnRunway } from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import type { FieldWind } from "./field-weather.ts";
import { derived, type Figure } from "./figure.ts";

/** What the winds that may blow do on a runway, each part at its worst. None is below zero. */
export interface RunwayWindFigures {
  readonly headwind_mPerS: number;
  readonly tailwind_mPerS: number;
  readonly crosswind_mPerS: number;
  readonly crosswindFrom: "left" | "right" | "either side" | "none";
  /** Headwind, below zero tailwind: the least of all. */
  readonly along_mPerS: number;
  /** The wind with the most crosswind: the one that is drawn. */
  readonly worst: FieldWind;
  /** The strongest of all, gusts counted, and what of it blows across; often the same. */
  readonly strongest: StrongestWind;
  /** It may come from anywhere, so that all of it counts as crosswind and as tailwind. */
  readonly isVariable: boolean;
}

export interface StrongestWind {
  readonly is: FieldWind;
  readonly crosswind_mPerS: number;
  readonly crosswindFrom: RunwayWindFigures["crosswindFrom"];
}

export interface WindLimit {
  readonly kind: "limit" | "demonstrated" | "own" | "tailwind";
  readonly value_mPerS: number;
}

export interface WindMargin {
  readonly value_mPerS: number;
  readonly limit: WindLimit;
  /** Below zero past it. */
  readonly left_mPerS: number;
  /** As far as the wind is known. */
  readonly status: Status;
  /** The gust from that direction at which the limit is reached; absent along the runway and for a variable wind. */
  readonly fullAt_mPerS?: number;
}

export const headingOf_rad = ({ trueHeading_deg }: Runway): number => toSI(trueHeading_deg % 360, "deg");

/** The winds on a runway. @throws {InputError} for a wind that cannot be */
export function onRunway(winds: readonly FieldWind[], runway: Runway): RunwayWindFigures {
  const heading_rad = headingOf_rad(runway);
  const [first, ...more] = winds.map((one) => ({ one, on: windOnRunway(heading_rad, one.wind) }));
  if (first === undefined) throw new RangeError("a field's winds are never an empty list");
  const all = [first, ...more];
  const worst = more.reduce(
    (most, next) => (next.on.crosswind_mPerS > most.on.crosswind_mPerS ? next : most),
    first,
  );
  const strongest = all.reduce(
    (most, next) => (strength_mPerS(next.one.wind) > strength_mPerS(most.one.wind) ? next : most),
    worst,
  );
  return {
    headwind_mPerS: Math.min(...all.map(({ on }) => on.headwind_mPerS)),
    tailwind_mPerS: Math.max(...all.map(({ on }) => on.tailwind_mPerS)),
    crosswind_mPerS: worst.on.crosswind_mPerS,
    crosswindFrom: worst.on.crosswindFrom,
    along_mPerS: Math.min(...all.map(({ on }) => on.along_mPerS)),
    worst: worst.one,
    strongest: {
      is: strongest.one,
      crosswind_mPerS: strongest.on.crosswind_mPerS,
      crosswindFrom: strongest.on.crosswindFrom,
    },
    isVariable: all.some(({ one }) => isVariable(one.wind)),
  };
}

const strength_mPerS = ({ speed_mPerS, gust_mPerS }: Wind): number => Math.max(speed_mPerS, gust_mPerS ?? 0);

const isVariable = (wind: Wind): boolean => wind.direction.kind === "variable" && strength_mPerS(wind) > 0;

/** A wind is reported to 10° and a knot, and blows on: with less left than this it is a caution. Witnessmark's own rule. */
export const WIND_IN_HAND_mPerS = toSI(5, "kt");
/** What conversions leave over; on the limit is within it. */
const ROUNDING_mPerS = 1e-9;

function statusOf(value_mPerS: number, left_mPerS: number, isFromAnywhere: boolean): Status {
  if (left_mPerS < -ROUNDING_mPerS) return "stop";
  if (value_mPerS <= ROUNDING_mPerS) return "clear";
  return left_mPerS < WIND_IN_HAND_mPerS - ROUNDING_mPerS || isFromAnywhere ? "caution" : "clear";
}

/** The lower of the book's crosswind and the pilot's own; a wind that is on the limit is within it. */
export function crosswindMargin(
  wind: RunwayWindFigures,
  runway: Runway,
  limits: readonly [WindLimit, ...WindLimit[]],
): WindMargin {
  const limit = limits.reduce((least, one) => (one.value_mPerS < least.value_mPerS ? one : least));
  const left_mPerS = limit.value_mPerS - wind.crosswind_mPerS;
  const { direction } = wind.worst.wind;
  const full =
    direction.kind === "from" && wind.crosswind_mPerS > ROUNDING_mPerS
      ? derived(figureFrom(direction.from_rad), "", (windFrom_rad) =>
          windAtCrosswindLimit.compute({
            runwayHeading_rad: headingOf_rad(runway),
            windFrom_rad,
            crosswindLimit_mPerS: limit.value_mPerS,
          }),
        ).value
      : undefined;
  return {
    value_mPerS: wind.crosswind_mPerS,
    limit,
    left_mPerS,
    status: statusOf(wind.crosswind_mPerS, left_mPerS, wind.isVariable),
    ...(full === undefined ? {} : { fullAt_mPerS: full }),
  };
}

/** As `WindMargin`; without limit and what is left to it where the manual gives none. */
export type TailwindMargin = Omit<WindMargin, "limit" | "left_mPerS"> &
  Partial<Pick<WindMargin, "limit" | "left_mPerS">>;

const figureFrom = (value: number): Figure<number> => ({ value, from: [], missing: [] });

export function tailwindMargin(wind: RunwayWindFigures, { tailwindMax_mPerS }: Performance): TailwindMargin {
  if (tailwindMax_mPerS === undefined) {
    // nothing to judge it by: none is fine, any is the pilot's to weigh
    const status = wind.tailwind_mPerS <= ROUNDING_mPerS ? "clear" : "caution";
    return { value_mPerS: wind.tailwind_mPerS, status };
  }
  const left_mPerS = tailwindMax_mPerS - wind.tailwind_mPerS;
  return {
    value_mPerS: wind.tailwind_mPerS,
    limit: { kind: "tailwind", value_mPerS: tailwindMax_mPerS },
    left_mPerS,
    status: statusOf(wind.tailwind_mPerS, left_mPerS, wind.isVariable),
  };
}
