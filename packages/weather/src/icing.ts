import { icingConditions, toSI } from "@witnessmark/engine";
import type { CloudLayer } from "./groups/clouds.ts";
import type { Visibility } from "./groups/visibility.ts";
import type { WeatherCode } from "./groups/weather-code.ts";
import { isPrecipitation } from "./hazards.ts";

/** Fog and mist count as visible moisture up to this visibility: 1 SM, coded 1600 m; flight manuals say 1,500 m. */
const MOIST_TO_M = toSI(1, "mi");

export interface MoistureGround {
  /** Absent: unknown. An empty list says that there is none. */
  readonly weather?: readonly WeatherCode[];
  readonly visibility?: Visibility;
  /** The layers, and the height above the aerodrome up to which they count: 0 on the ground. */
  readonly clouds?: readonly CloudLayer[];
  readonly upTo_m?: number;
  /** Standing water, slush or snow where the aircraft taxies. */
  readonly wetGround?: boolean;
}

/** What of the visible moisture a report names; empty when it names none; `undefined` when the weather is unknown. */
export function visibleMoisture(ground: MoistureGround): readonly string[] | undefined {
  const { weather, visibility, clouds = [], upTo_m = 0, wetGround } = ground;
  const found: string[] = [];
  for (const code of weather ?? []) {
    const { phenomena, descriptor, vicinity } = code;
    const blown = (descriptor === "BL" || descriptor === "DR") && phenomena.includes("SN");
    // fog is below 1,000 m by its code; of mist the visibility decides, and unknown it counts
    const thick = visibility === undefined || visibility.visibility_m <= MOIST_TO_M;
    const mist = vicinity === undefined && (phenomena.includes("FG") || (phenomena.includes("BR") && thick));
    if (isPrecipitation(code) || blown || mist) found.push(code.code);
  }
  for (const { amount, base_m } of clouds)
    if (base_m === null || base_m <= upTo_m) found.push(`${amount ?? "///"} cloud`);
  if (wetGround) found.push("water, slush or snow on the ground");
  return found.length === 0 && weather === undefined ? undefined : found;
}

export interface IcingGround extends MoistureGround {
  /** The coldest of what the report says: body and tenths. Absent: unknown. */
  readonly oat_K?: number;
  /** From the book; at it counts. */
  readonly threshold_K: number;
}

export type IcingAnswer =
  | { readonly icing: "yes"; readonly moisture: readonly string[] }
  | { readonly icing: "no"; readonly because: string }
  | { readonly icing: "open"; readonly missing: readonly string[] };

/**
 * Icing conditions as flight manuals define them, from what a report says: visible moisture, and an air temperature at
 * or below a threshold. Cold and dry air is none; frost left from the night is a separate question.
 */
export function reportedIcing(ground: IcingGround): IcingAnswer {
  const { oat_K, threshold_K } = ground;
  const moisture = visibleMoisture(ground);
  if (moisture?.length === 0) return { icing: "no", because: "no visible moisture" };
  if (oat_K === undefined)
    return { icing: "open", missing: ["temperature", ...(moisture === undefined ? ["weather"] : [])] };
  const known = moisture === undefined ? undefined : true;
  const answer = icingConditions({ oat_K, threshold_K, visibleMoisture: known });
  if (answer === false) return { icing: "no", because: "the air is warmer than the threshold" };
  return answer === true && moisture !== undefined
    ? { icing: "yes", moisture }
    : { icing: "open", missing: ["weather"] };
}
