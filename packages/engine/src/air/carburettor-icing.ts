import { fromSI } from "../units/convert.ts";
import { relativeHumidity } from "./humidity.ts";

export interface CarburettorIcing {
  /** `not known`: hotter than the rule speaks of. */
  readonly zone: "severe" | "possible" | "rare" | "not known";
  readonly relativeHumidity_1: number;
}

/** "Well below freezing": the rule gives no figure. Ten degrees is taken, on the safe side of it. */
const WELL_BELOW_FREEZING_degF = 14;

/**
 * The likelihood of ice in a float carburettor, by the one rule in words of which the text is known: severe from 50 to
 * 70 °F above 60 % humidity; possible up to 100 °F; rare below 25 % or well below freezing. Whatever is not named rare
 * is possible. The coloured chart of the authorities warns at 22 °C over a dew point of 5 °C, where this says possible;
 * its borders are not published as figures and are not drawn here.
 *
 * @throws {InputError} `out-of-range`, `not-a-number`
 * @source US Department of the Interior, Safety Alert SA 11-01 (19 November 2010)
 */
export function carburettorIcing(oat_K: number, dewPoint_K: number): CarburettorIcing {
  const relativeHumidity_1 = relativeHumidity.compute({ temperature_K: oat_K, dewPoint_K });
  return { zone: zoneOf(fromSI(oat_K, "degF"), relativeHumidity_1), relativeHumidity_1 };
}

function zoneOf(oat_degF: number, relativeHumidity_1: number): CarburettorIcing["zone"] {
  if (oat_degF > 100 + 1e-6) return relativeHumidity_1 < 0.25 ? "rare" : "not known";
  if (relativeHumidity_1 < 0.25 || oat_degF < WELL_BELOW_FREEZING_degF) return "rare";
  const severe = oat_degF >= 50 - 1e-6 && oat_degF <= 70 + 1e-6 && relativeHumidity_1 > 0.6;
  return severe ? "severe" : "possible";
}
