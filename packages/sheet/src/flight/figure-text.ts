import { fromSI, roundToSafeSide, type UnitId, withSymbol } from "@witnessmark/engine";

const PER_GROUP = /\B(?=(\d{3})+(?!\d))/g;

/** As set in type: a true minus, a comma before each thousand. */
export function digits(value: number, decimals = 0): string {
  const [whole = "0", part] = Math.abs(value).toFixed(decimals).split(".");
  const text = `${whole.replace(PER_GROUP, ",")}${part === undefined ? "" : `.${part}`}`;
  return value < 0 && Number(text.replaceAll(",", "")) !== 0 ? `−${text}` : text;
}

/** Inches are told to the hundredth, rates of climb in tens, everything else whole. */
const STEP: Readonly<Partial<Record<UnitId, number>>> = { in: 0.01, ftPerMin: 10 };
const DECIMALS: Readonly<Partial<Record<UnitId, number>>> = { in: 2 };

/** Rounded to the side that does not flatter, without its unit. */
export const safeDigits = (valueSI: number, unit: UnitId, way: "up" | "down"): string =>
  digits(roundToSafeSide(fromSI(valueSI, unit), STEP[unit] ?? 1, way), DECIMALS[unit] ?? 0);

/** The same with its unit: what is needed up, what is there and what is left down. */
export const safeText = (valueSI: number, unit: UnitId, way: "up" | "down"): string =>
  withSymbol(safeDigits(valueSI, unit, way), unit);

/** What is left; past the limit how far: `155 mm`, `28 mm over`. */
export const marginText = (leftSI: number, unit: UnitId): string =>
  leftSI < 0 ? `${safeText(-leftSI, unit, "up")} over` : safeText(leftSI, unit, "down");

/** `2 h 03`, `48 min`; whole minutes, rounded down. */
export function lastsText(time_s: number): string {
  const minutes = Math.floor(time_s / 60 + 1e-9);
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes}\u00A0min` : `${hours}\u00A0h ${String(minutes % 60).padStart(2, "0")}`;
}

const SMALL = ["nobody", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

export const countWord = (count: number): string => SMALL[count] ?? String(count);

export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
