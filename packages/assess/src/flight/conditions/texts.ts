import { fromSI, roundToSafeSide, type UnitId, withSymbol } from "@witnessmark/engine";
import type { Margin } from "../../assessment.ts";

const PER_GROUP = /\B(?=(\d{3})+(?!\d))/g;
type Way = "up" | "down";

const digits = (value: number): string =>
  String(value + 0)
    .replace("-", "−")
    .replace(PER_GROUP, ",");

const whole = (valueSI: number, unit: UnitId, way: Way): number =>
  roundToSafeSide(fromSI(valueSI, unit), 1, way) + 0;
const text = (valueSI: number, unit: UnitId, way: Way): string =>
  withSymbol(digits(whole(valueSI, unit, way)), unit);

/** Whole figures, to the side that does not flatter. */
export const kt = (speed_mPerS: number, way: Way): string => text(speed_mPerS, "kt", way);
export const ktDigits = (speed_mPerS: number, way: Way): string => digits(whole(speed_mPerS, "kt", way));
export const metres = (length_m: number, way: Way): string => text(length_m, "m", way);
export const metreDigits = (length_m: number, way: Way): string => digits(whole(length_m, "m", way));
export const feet = (height_m: number, way: Way): string => text(height_m, "ft", way);
/** In tenths, where a reader checks a chain by hand. */
const tenths = (valueSI: number, unit: UnitId, way: Way): string =>
  withSymbol(
    roundToSafeSide(fromSI(valueSI, unit), 0.1, way)
      .toFixed(1)
      .replace("-", "−")
      .replace(/\B(?=(\d{3})+\.)/g, ","),
    unit,
  );
export const ktTenths = (speed_mPerS: number, way: Way): string => tenths(speed_mPerS, "kt", way);
export const metreTenths = (length_m: number, way: Way): string => tenths(length_m, "m", way);
/** A gradient over the ground in whole feet a nautical mile. */
export const feetPerMile = (gradient_1: number, way: Way): string => text(gradient_1, "ftPerNM", way);
/** A rate of climb in steps of ten feet a minute. */
export const feetPerMinute = (rate_mPerS: number, way: Way): string =>
  withSymbol(digits(roundToSafeSide(fromSI(rate_mPerS, "ftPerMin"), 10, way)), "ftPerMin");
export const degC = (temperature_K: number): string =>
  withSymbol(digits(Math.round(fromSI(temperature_K, "degC"))), "degC");
export const hPa = (pressure_Pa: number): string => text(pressure_Pa, "hPa", "down");

/** What is left, rounded down; past it how far, rounded away from zero: `3 kt`, `112 m`, `4 kt over`. */
export function marginIn(leftSI: number, unit: "kt" | "m" | "ft" | "ftPerNM", past: string): Margin {
  const value = whole(leftSI, unit, "down");
  const size = withSymbol(digits(Math.abs(value)), unit);
  return { value, unit: unit === "ftPerNM" ? "ft/NM" : unit, text: value < 0 ? `${size} ${past}` : size };
}

/** `6 h 42`, `38 min`; rounded down, past it away from zero. */
export function marginOfTime(left_s: number, past: string): Margin {
  const value = Math.floor(left_s / 60) + 0;
  const minutes = Math.abs(value);
  const hours = Math.floor(minutes / 60);
  const size =
    hours === 0 ? `${minutes}\u00A0min` : `${hours}\u00A0h ${String(minutes % 60).padStart(2, "0")}`;
  return { value, unit: "min", text: value < 0 ? `${size} ${past}` : size };
}
