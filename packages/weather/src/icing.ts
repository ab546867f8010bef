import { toSI } from "@witnessmark/engine";
import type { CloudLayer } from "./groups/clouds.ts";
import type { Visibility } from "./groups/visibility.ts";
import type { WeatherCode } from "./groups/weather-code.ts";
import { isPrecipitation } from "./hazards.ts";

/** Fog and mist count as visible moisture up to this visibility: 1 SM, coded 1600 m; flight manuals say 1,500 m. */
const MOIST_TO_M = toSI(1, "mi");

export interface IcingGround {
  /** The coldest of what the report says: body and tenths. Absent: unknown. */
  readonly oat_K?: number;
  /** Absent: unknown. An empty list says that there is none. */
  readonly weather?: readonly WeatherCode[];
  readonly visibility?: Visibility;
  /** Height above the aerodrome up to which cloud counts, and the layers; on the ground only cloud at the surface. */
  readonly clouds?: readonly CloudLayer[];
  readonly upTo_m?: number;
  /** From the book: at this temperature counts. +5 °C is usual for inlets and propellers, +10 °C for jets (from memory). */
  readonly threshold_K: number;
  /** Standing water, slush or snow where the aircraft taxies. */
  readonly wetGround?: boolean;
}

export type IcingAnswer =
  | { readonly icing: "yes"; readonly moisture: readonly string[] }
  | { readonly icing: "no"; readonly because: string }
  | { readonly icing: "open"; readonly missing: readonly string[] };

/** Whether an obscuration is water: fog, mist, and what hangs or blows as droplets or snow. */
const isMist = ({ phenomena, vicinity }: WeatherCode): boolean =>
  vicinity === undefined && (phenomena.includes("FG") || phenomena.includes("BR"));
const isBlownSnow = ({ phenomena, descriptor }: WeatherCode): boolean =>
  (descriptor === "BL" || descriptor === "DR") && phenomena.includes("SN");

function moistureIn({
  weather = [],
  visibility,
  clouds = [],
  upTo_m = 0,
  wetGround,
}: IcingGround): readonly string[] {
  const found = weather.filter((code) => isPrecipitation(code) || isBlownSnow(code)).map(({ code }) => code);
  for (const code of weather.filter(isMist)) {
    // fog is below 1,000 m by its code; of mist the visibility decides, and unknown it counts
    const thick =
      code.phenomena.includes("FG") || visibility === undefined || visibility.visibility_m <= MOIST_TO_M;
    if (thick) found.push(code.code);
  }
  for (const { amount, base_m } of clouds)
    if (base_m === null || base_m <= upTo_m) found.push(`${amount ?? "///"} cloud`);
  if (wetGround) found.push("water, slush or snow on the ground");
  return found;
}

/** A billionth of a kelvin: what turning °C into K may add. */
const NOISE_K = 1e-9;

/**
 * Icing conditions as flight manuals define them: visible moisture, and an air temperature at or below a threshold.
 *
 * Cold and dry air is none; frost left from the night is a separate question (`frostOnSurface`).
 */
export function icingConditions(ground: IcingGround): IcingAnswer {
  const { oat_K, weather, threshold_K } = ground;
  const moisture = moistureIn(ground);
  if (oat_K !== undefined && oat_K > threshold_K + NOISE_K)
    return { icing: "no", because: "the air is warmer than the threshold" };
  if (moisture.length > 0 && oat_K !== undefined) return { icing: "yes", moisture };
  const missing = [
    ...(oat_K === undefined ? ["temperature"] : []),
    ...(weather === undefined ? ["weather"] : []),
    ...(ground.visibility === undefined && weather === undefined ? ["visibility"] : []),
  ];
  if (missing.includes("temperature") && moisture.length === 0 && weather !== undefined)
    return { icing: "no", because: "no visible moisture" };
  return missing.length > 0 ? { icing: "open", missing } : { icing: "no", because: "no visible moisture" };
}
