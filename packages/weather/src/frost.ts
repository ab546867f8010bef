import { frostPoint, InputError } from "@witnessmark/engine";
import type { Ceiling } from "./ceiling.ts";

const FREEZING_K = 273.15;

/**
 * The surface temperature at and below which vapour settles on a surface as frost or freezes there: the frost point,
 * or the dew point where that is above 0 °C, but never above 0 °C.
 *
 * @returns K; `undefined` for a dew point colder than the formula reaches, −45 °C
 */
export function frostFrom_K(dewPoint_K: number): number | undefined {
  if (dewPoint_K >= FREEZING_K) return FREEZING_K;
  try {
    return frostPoint.compute({ dewPoint_K });
  } catch (error) {
    if (error instanceof InputError && error.code === "out-of-range") return undefined;
    throw error;
  }
}

/**
 * Whether frost forms on a surface of known temperature: at or below 0 °C, and at or below the frost point.
 *
 * @returns `undefined` when the dew point lies beyond the formula
 */
export function frostOnSurface(skin_K: number, dewPoint_K: number): boolean | undefined {
  const from_K = frostFrom_K(dewPoint_K);
  return from_K === undefined ? undefined : skin_K <= from_K;
}

/** A skin under a clear, calm night sky is this much colder than the air: 3 to 5 K, rule of thumb (from memory). */
export const SKIN_DEPRESSION_K = 4;
/** Cloud higher than this does not keep the ground warm: 10,000 ft. Common practice. */
const LOW_CLOUD_TO_M = 3048;
/** Up to this wind the air beside the skin is not renewed: 5 kt. Common practice. */
const CALM_TO_MPERS = (5 * 1852) / 3600;

export interface NightGround {
  /** The lowest air temperature of the night that is known. Absent: unknown. */
  readonly oat_K?: number;
  readonly dewPoint_K?: number;
  /** Absent: unknown, and taken for clear. */
  readonly ceiling?: Ceiling;
  /** Absent: unknown, and taken for calm. */
  readonly wind_mPerS?: number;
  readonly skinDepression_K?: number;
}

export type FrostAnswer =
  | {
      readonly frost: "likely" | "unlikely";
      readonly skin_K: number;
      readonly frostFrom_K: number;
      readonly because: string;
    }
  | { readonly frost: "open"; readonly missing: readonly string[] };

/**
 * How likely frost is on an aircraft that stands outside, from a report. Only touching the wing settles it.
 *
 * The skin is taken for colder than the air under a sky that is unknown or without low cloud, in little or unknown
 * wind; else for as cold.
 */
export function frostLikelihood(ground: NightGround): FrostAnswer {
  const { oat_K, dewPoint_K, ceiling, wind_mPerS, skinDepression_K = SKIN_DEPRESSION_K } = ground;
  if (oat_K === undefined || dewPoint_K === undefined)
    return {
      frost: "open",
      missing: [
        ...(oat_K === undefined ? ["temperature"] : []),
        ...(dewPoint_K === undefined ? ["dew point"] : []),
      ],
    };
  const lowCloud = ceiling?.kind === "height" && ceiling.height_m <= LOW_CLOUD_TO_M;
  const radiates = !lowCloud && (wind_mPerS === undefined || wind_mPerS <= CALM_TO_MPERS + 1e-9);
  const skin_K = oat_K - (radiates ? skinDepression_K : 0);
  const from_K = frostFrom_K(dewPoint_K);
  if (from_K === undefined) return { frost: "open", missing: ["a dew point above −45 °C"] };
  const because = radiates
    ? "a sky without low cloud, or unknown, and little or unknown wind let the skin cool below the air"
    : "cloud or wind keeps the skin at the temperature of the air";
  return { frost: skin_K <= from_K ? "likely" : "unlikely", skin_K, frostFrom_K: from_K, because };
}
