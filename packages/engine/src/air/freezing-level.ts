import { defineQuantity } from "../registry/define-quantity.ts";
import { differenceToSI, fromSI, toSI } from "../units/convert.ts";
import { ELEVATION_m, OAT_K } from "./inputs.ts";

export const freezingLevelRule = defineQuantity({
  id: "freezing-level-rule",
  title: "Freezing level from the temperature at the surface",
  inputs: [ELEVATION_m, OAT_K],
  output: { name: "freezingLevel_m", unit: "m" },
  formula: "elevation + 1,000 ft for each 2 °C above freezing; the surface itself when it freezes there",
  sources: [{ title: "Lapse of 2 °C per 1,000 ft, as taught to pilots", status: "common practice" }],
  crossCheckOnly: true,
  notes: [
    "An inversion, a front or a cold valley makes it wrong by thousands of feet; a forecast or a sounding comes first.",
    "Rounded down for ice, which begins at or below it.",
  ],
  compute: ({ elevation_m, oat_K }) =>
    elevation_m + toSI((Math.max(0, fromSI(oat_K, "degC")) / 2) * 1000, "ft"),
});

/** Flight manuals commonly speak of icing at this temperature or colder in visible moisture; the book's figure rules. */
export const USUAL_ICING_FROM_K = toSI(5, "degC");

/** What is known of the air around the aircraft, for the question of icing conditions. */
export interface IcingQuestion {
  /** The coldest that the report allows: of whole degrees and tenths the lower one. */
  readonly oat_K: number;
  /** From the book; at it counts. */
  readonly threshold_K: number;
  /** Cloud, precipitation, fog or mist with a visibility of about 1,500 m or less; undefined where nothing is known. */
  readonly visibleMoisture: boolean | undefined;
}

/**
 * Whether flight manuals call it icing conditions: visible moisture at or below the threshold. Where the moisture is
 * not known and it is cold enough, neither is the answer.
 *
 * @source usual wording of aeroplane flight manuals; from memory
 */
export function icingConditions({
  oat_K,
  threshold_K,
  visibleMoisture,
}: IcingQuestion): boolean | "not known" {
  if (!Number.isFinite(oat_K) || !Number.isFinite(threshold_K)) return "not known";
  // What a conversion from another unit leaves over must not make 5 °C warmer than 5 °C.
  if (oat_K > threshold_K + differenceToSI(1e-6, "degC")) return false;
  return visibleMoisture ?? "not known";
}
