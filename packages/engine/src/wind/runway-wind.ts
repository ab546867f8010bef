import { InputError } from "../input-error.ts";
import { valueText } from "../registry/range-text.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { roundToSafeSide } from "../units/round.ts";
import type { UnitId } from "../units/units.ts";
import { type Arc, arcShares, onArc } from "./circle.ts";

/** Where a wind comes from: one direction, a sector (`180V240`, clockwise) with or without a main direction, or VRB. */
export type WindDirection =
  | { readonly kind: "from"; readonly from_rad: number }
  | { readonly kind: "sector"; readonly sector: Arc; readonly from_rad?: number }
  | { readonly kind: "variable" };

/** A wind as a report gives it; calm is a speed of zero. */
export interface Wind {
  readonly direction: WindDirection;
  readonly speed_mPerS: number;
  readonly gust_mPerS?: number;
  /** The strongest wind of the past hour, where the remarks give one. */
  readonly peak_mPerS?: number;
}

/** What a wind does on a runway at its worst. None is below zero, and none flatters. */
export interface RunwayWind {
  /** What may be counted on: of the steady wind, at the least favourable direction. Zero where any of it is a tailwind. */
  readonly headwind_mPerS: number;
  /** Of the gust, at the least favourable direction. */
  readonly tailwind_mPerS: number;
  /** Of the gust, at the least favourable direction. */
  readonly crosswind_mPerS: number;
  readonly crosswindFrom: "left" | "right" | "either side" | "none";
  /** Headwind, or tailwind below zero: what a distance is looked up with. */
  readonly along_mPerS: number;
}

function speedOf(name: string, value_mPerS: number, atLeast_mPerS: number): number {
  if (Number.isFinite(value_mPerS) && value_mPerS >= atLeast_mPerS) return value_mPerS;
  const finite = Number.isFinite(value_mPerS);
  throw new InputError(finite ? "out-of-range" : "not-a-number", name, {
    expected:
      atLeast_mPerS === 0
        ? "a speed of zero or more"
        : `at least the steady wind, ${valueText(atLeast_mPerS, "mPerS")}`,
    received: finite ? valueText(value_mPerS, "mPerS") : String(value_mPerS),
    remedy: "read the wind group again",
  });
}

/** The strongest of steady wind and gust. @throws {InputError} `out-of-range`, `not-a-number` */
function gustOf({ speed_mPerS, gust_mPerS }: Wind): number {
  const steady = speedOf("speed_mPerS", speed_mPerS, 0);
  return gust_mPerS === undefined ? steady : speedOf("gust_mPerS", gust_mPerS, steady);
}

/**
 * The wind that a limit is compared with: the strongest that the report names.
 *
 * @throws {InputError} `out-of-range`, `not-a-number`
 */
export const strongestWind_mPerS = (wind: Wind): number =>
  Math.max(gustOf(wind), wind.peak_mPerS === undefined ? 0 : speedOf("peak_mPerS", wind.peak_mPerS, 0));

function arcsOf(direction: Exclude<WindDirection, { readonly kind: "variable" }>): readonly Arc[] {
  if (direction.kind === "from") return [{ from_rad: direction.from_rad, to_rad: direction.from_rad }];
  const { sector, from_rad } = direction;
  // A main direction outside its own sector is doubtful; both count.
  return from_rad === undefined || onArc(sector, from_rad)
    ? [sector]
    : [sector, { from_rad, to_rad: from_rad }];
}

function sideOf(left: boolean, right: boolean): RunwayWind["crosswindFrom"] {
  if (left && right) return "either side";
  return left ? "left" : right ? "right" : "none";
}

function requireAngles(heading_rad: number, direction: WindDirection): void {
  const angles = {
    runwayHeading_rad: heading_rad,
    from_rad: direction.kind === "variable" ? undefined : direction.from_rad,
    sectorFrom_rad: direction.kind === "sector" ? direction.sector.from_rad : undefined,
    sectorTo_rad: direction.kind === "sector" ? direction.sector.to_rad : undefined,
  };
  for (const [name, angle] of Object.entries(angles)) {
    if (angle === undefined || Number.isFinite(angle)) continue;
    throw new InputError("not-a-number", name, { expected: "a direction", received: String(angle) });
  }
}

const noNegativeZero = (value: number): number => (value === 0 ? 0 : value);

/**
 * The wind on a runway, at the least favourable direction that the report allows: crosswind and tailwind of the gust,
 * headwind of the steady wind. All of a variable wind (VRB) counts as tailwind and all of it as crosswind.
 *
 * @param runwayHeading_rad clockwise, from the same north as the wind
 * @throws {InputError} `out-of-range` (a gust below the steady wind), `not-a-number`
 * @source common practice; components by trigonometry (FAA-H-8083-25 chapter 11)
 */
export function windOnRunway(runwayHeading_rad: number, wind: Wind): RunwayWind {
  requireAngles(runwayHeading_rad, wind.direction);
  const gust_mPerS = gustOf(wind);
  if (gust_mPerS === 0)
    return {
      headwind_mPerS: 0,
      tailwind_mPerS: 0,
      crosswind_mPerS: 0,
      crosswindFrom: "none",
      along_mPerS: 0,
    };
  if (wind.direction.kind === "variable") {
    return {
      headwind_mPerS: 0,
      tailwind_mPerS: gust_mPerS,
      crosswind_mPerS: gust_mPerS,
      crosswindFrom: "either side",
      along_mPerS: -gust_mPerS,
    };
  }
  const shares = arcsOf(wind.direction).map((arc) => arcShares(arc, runwayHeading_rad));
  const leastAhead_1 = Math.min(...shares.map((share) => share.leastAhead_1));
  const headwind_mPerS = noNegativeZero(Math.max(0, leastAhead_1) * wind.speed_mPerS);
  const tailwind_mPerS = noNegativeZero(Math.max(0, -leastAhead_1) * gust_mPerS);
  return {
    headwind_mPerS,
    tailwind_mPerS,
    crosswind_mPerS: Math.max(...shares.map((share) => share.mostAcross_1)) * gust_mPerS,
    crosswindFrom: sideOf(
      shares.some(({ left }) => left),
      shares.some(({ right }) => right),
    ),
    along_mPerS: tailwind_mPerS > 0 ? -tailwind_mPerS : headwind_mPerS,
  };
}

/** The same in another unit and whole steps of it: crosswind and tailwind up, headwind down. */
export function roundedRunwayWind(
  wind: RunwayWind,
  unit: UnitId,
  step: number,
): Readonly<Record<"headwind" | "tailwind" | "crosswind", number>> {
  const round = (value_mPerS: number, direction: "up" | "down"): number =>
    roundToSafeSide(fromSI(value_mPerS, unit), step, direction);
  return {
    headwind: round(wind.headwind_mPerS, "down"),
    tailwind: round(wind.tailwind_mPerS, "up"),
    crosswind: round(wind.crosswind_mPerS, "up"),
  };
}

const GUST_FROM_mPerS = toSI(10, "kt");
/** Ten knots less one knot is what whole knots tell apart; a change of unit is not. */
const ROUNDING_mPerS = 1e-9;

/**
 * Whether the US observer's rule makes a gust of what the wind did in ten minutes: 10 kt from lull to peak.
 *
 * @source AFMAN 15-111 (12 March 2019) 7.4.1 to 7.4.3; FAA-H-8083-28B 24.4.3.5.1
 */
export const isGustReported = (peak_mPerS: number, lull_mPerS: number): boolean =>
  peak_mPerS - lull_mPerS >= GUST_FROM_mPerS - ROUNDING_mPerS;
