import { roundToSafeSide, withSymbol } from "@witnessmark/engine";
import type { Margin, Source } from "../assessment.ts";
import type { Citation } from "../rules/ruling.ts";
import { SURE_FROM_1 } from "./figures.ts";

const PER_GROUP = /\B(?=(\d{3})+(?!\d))/g;

/** Whole figures with a comma before each thousand. */
const grouped = (whole: number): string => String(whole).replace("-", "−").replace(PER_GROUP, ",");

type Way = "up" | "down";

const digits = (value: number, way: Way): string => grouped(roundToSafeSide(value, 1, way) + 0);

/** `2,528 kg`, in whole kilograms to the side that does not flatter. */
export const kg = (mass_kg: number, way: Way): string => withSymbol(digits(mass_kg, way), "kg");

/** `2,528 of 2,585 kg` */
export const ofKg = (mass_kg: number, limit_kg: number): string =>
  `${digits(mass_kg, "up")} of ${kg(limit_kg, "down")}`;

export const litres = (volume_m3: number, way: Way): string => withSymbol(digits(volume_m3 * 1000, way), "L");

/** `4.205 m` */
export const metres3 = (arm_m: number): string => withSymbol(arm_m.toFixed(3).replace("-", "−"), "m");

/** `91 %`, rounded down; `over 99 %` rather than 100. */
export const chanceText = (chance_1: number): string => {
  const percent = Math.floor(chance_1 * 100);
  return percent >= 100 ? `over ${withSymbol("99", "percent")}` : withSymbol(String(percent), "percent");
};

export const SURE_PERCENT = Math.round(SURE_FROM_1 * 100);

/** What is left, rounded down; when past the limit how far, rounded away from zero: `57 kg`, `14 kg over`. */
function marginIn(
  left: number,
  unit: "kg" | "L" | "mm" | "min" | "bar" | "percent",
  symbol: string,
  past: string,
): Margin {
  const value = roundToSafeSide(left, 1, "down") + 0;
  const size = withSymbol(grouped(Math.abs(value)), unit === "percent" ? "percent" : unit);
  return { value, unit: symbol, text: value < 0 ? `${size} ${past}` : size };
}

export const marginKg = (left_kg: number, past = "over"): Margin => marginIn(left_kg, "kg", "kg", past);
export const marginMm = (left_m: number, past: string): Margin => marginIn(left_m * 1000, "mm", "mm", past);
export const marginBar = (left_Pa: number, past = "short"): Margin =>
  marginIn(left_Pa / 1e5, "bar", "bar", past);

/** `not known`: a margin in words only. */
export const words = (text: string): Margin => ({ value: 0, unit: "", text });

export const asSource = ({ title, locator, edition }: Citation): Source => ({
  title: `${title} (${edition})`,
  ...(locator === undefined ? {} : { locator }),
});
