import { type FrostOutlook, frostOutlook, InputError } from "@witnessmark/engine";
import type { Sky } from "./ceiling.ts";

/** Cloud higher than this does not keep the ground warm: 10,000 ft. Common practice. */
const LOW_CLOUD_TO_M = 3048;

export interface NightGround {
  /** The lowest air temperature of the night that is known. Absent: unknown. */
  readonly oat_K?: number;
  /** The highest that the report allows. Absent: unknown. */
  readonly dewPoint_K?: number;
  /** What the report says of the sky. Absent: unknown. */
  readonly sky?: Sky;
  /** Absent: unknown, and taken for calm. */
  readonly wind_mPerS?: number;
}

export type FrostAnswer = FrostOutlook | { readonly frost: "open"; readonly missing: readonly string[] };

/** Low and unbroken cloud, or a hidden sky, keeps the skin from cooling below the air. A gap lets it cool. */
function skyFor(sky: Sky | undefined): "clear" | "overcast" | "not known" {
  if (sky === undefined || sky.cloudsNotObserved) return "not known";
  if (sky.verticalVisibility_ft !== undefined) return "overcast";
  const low = sky.clouds.some(
    ({ amount, base_m }) => amount === "OVC" && base_m !== null && base_m <= LOW_CLOUD_TO_M,
  );
  return low ? "overcast" : "clear";
}

/**
 * Whether frost is to be expected on an aircraft that stands outside, from what a report says. A look and a touch
 * decide. Open where temperature or dew point is unknown, or beyond what the formulas reach.
 */
export function reportedFrost({ oat_K, dewPoint_K, sky, wind_mPerS }: NightGround): FrostAnswer {
  if (oat_K === undefined || dewPoint_K === undefined) {
    const missing = [
      ...(oat_K === undefined ? ["temperature"] : []),
      ...(dewPoint_K === undefined ? ["dew point"] : []),
    ];
    return { frost: "open", missing };
  }
  try {
    return frostOutlook({
      oat_K,
      // of whole degrees and tenths the highest dew point may lie above the lowest temperature: saturated air
      dewPoint_K: Math.min(dewPoint_K, oat_K),
      sky: skyFor(sky),
      ...(wind_mPerS === undefined ? {} : { wind_mPerS }),
    });
  } catch (error) {
    if (error instanceof InputError) return { frost: "open", missing: [error.message] };
    throw error;
  }
}
