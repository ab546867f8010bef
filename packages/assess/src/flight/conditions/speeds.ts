import {
  approachSpeed,
  fastApproachRule,
  gustAdditive,
  roundToSafeSide,
  type Wind,
} from "@witnessmark/engine";
import type { DistanceAnswer } from "./distances.ts";
import { attempt, type Missing } from "./figure.ts";
import { flapsOf, type PerformanceAsk, readCell } from "./read-performance.ts";
import type { Warned } from "./told.ts";

/** Stall and approach at the mass there, calibrated, in level flight. */
export interface SpeedFigures {
  readonly mass_kg: number;
  readonly flaps?: string;
  /** With the flap of the take-off or of the landing. */
  readonly stall_mPerS: number;
  readonly stallTitle: string;
  /** With the flaps up, where the book has it. */
  readonly stallClean_mPerS?: number;
  /** At a landing only. */
  readonly approach?: ApproachFigures;
  readonly status: Warned;
}

export interface ApproachFigures {
  readonly factor_1: number;
  readonly steady_mPerS: number;
  /** Half of what the gust has over the wind. */
  readonly forGust_mPerS: number;
  /** What the landing then needs, by the rule that each percent of speed adds two of distance. */
  readonly needed_m?: number;
  readonly available_m?: number;
}

export type SpeedsFound =
  | { readonly ok: true; readonly speeds: SpeedFigures }
  | { readonly ok: false; readonly missing: readonly Missing[] };

const isUp = (flaps: string | undefined): boolean => flaps === undefined || /^(up|0 ?°|clean)$/i.test(flaps);

/** The stall speed with given flaps; undefined where the book has no stall speed at all. */
export function stallWith(
  ask: PerformanceAsk,
  flaps: string | undefined,
): { readonly value: number; readonly title: string } | Missing | undefined {
  const stalls = ask.performance.tables.filter(({ quantity }) => quantity === "stall-speed");
  const [only] = stalls;
  if (only === undefined) return undefined;
  const table = stalls.find((one) => one.flaps === flaps) ?? (stalls.length === 1 ? only : undefined);
  if (table === undefined)
    return { what: `a stall speed with the flaps of the distances (${flaps ?? "not said"}), in the book` };
  const read = readCell(table, ask, "more");
  return "what" in read ? read : { value: read.value, title: table.title };
}

/** What all the gusts that may blow add at most. */
const forGust_mPerS = (winds: readonly Wind[]): number =>
  Math.max(
    0,
    ...winds.map(({ speed_mPerS, gust_mPerS }) =>
      gust_mPerS === undefined
        ? 0
        : gustAdditive.compute({
            windSpeed_mPerS: speed_mPerS,
            gust_mPerS: Math.max(gust_mPerS, speed_mPerS),
          }),
    ),
  );

/** The landing with the speed that the gust asks for; nothing where the gust adds nothing, or no distance is known. */
function fastLanding(
  steady_mPerS: number,
  more_mPerS: number,
  landing: DistanceAnswer | undefined,
): Pick<ApproachFigures, "needed_m" | "available_m"> & { readonly status: Warned } {
  if (more_mPerS <= 0 || landing === undefined) return { status: "clear" };
  const factor = attempt(() => fastApproachRule.compute({ excessSpeed_1: more_mPerS / steady_mPerS }), "");
  if (factor.value === undefined) return { status: "caution" }; // faster than the rule reaches
  const needed_m = roundToSafeSide(landing.nearest.needed_m * factor.value, 1, "up");
  const { available_m } = landing.nearest;
  return { needed_m, available_m, status: needed_m > available_m ? "caution" : "clear" };
}

export interface SpeedsAsk extends PerformanceAsk {
  readonly phase: "take-off" | "landing";
  readonly winds: readonly Wind[];
  readonly landing?: DistanceAnswer | undefined;
}

/** @throws {InputError} for what the engine refuses */
export function speedsOf(ask: SpeedsAsk): SpeedsFound | undefined {
  const { performance, phase, winds, landing } = ask;
  const flaps = flapsOf(performance, phase === "landing" ? "landing-over-50ft" : "take-off-over-50ft");
  const stall = stallWith(ask, flaps);
  if (stall === undefined) return undefined;
  if ("what" in stall) return { ok: false, missing: [stall] };
  const clean = performance.tables.find(
    (table) => table.quantity === "stall-speed" && isUp(table.flaps) && table.flaps !== flaps,
  );
  const cleanRead = clean === undefined ? undefined : readCell(clean, ask, "more");
  const base = {
    mass_kg: ask.at.mass_kg,
    ...(flaps === undefined ? {} : { flaps }),
    stall_mPerS: stall.value,
    stallTitle: stall.title,
    ...(cleanRead === undefined || "what" in cleanRead ? {} : { stallClean_mPerS: cleanRead.value }),
  };
  if (phase === "take-off") return { ok: true, speeds: { ...base, status: "clear" } };
  const factor_1 = performance.approachFactor_1;
  const gust_mPerS = forGust_mPerS(winds);
  const steady_mPerS = approachSpeed.compute({
    stallSpeed_mPerS: stall.value,
    approachFactor_1: factor_1,
    additive_mPerS: 0,
  });
  const { status, ...fast } = fastLanding(steady_mPerS, gust_mPerS, landing);
  return {
    ok: true,
    speeds: { ...base, approach: { factor_1, steady_mPerS, forGust_mPerS: gust_mPerS, ...fast }, status },
  };
}
