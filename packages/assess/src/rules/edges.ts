import { formatValue, type UnitId, withSymbol } from "@witnessmark/engine";

/**
 * How rules meet numbers. A rule says "above 12,500 ft" or "at least 3 statute miles"; the figures come in metres, and
 * a conversion leaves a last bit over. Within a micrometre or a microsecond a value is on the edge.
 */
const ROUNDING = 1e-6;

export const isAbove = (value: number, edge: number): boolean => value > edge + ROUNDING;
export const isAtLeast = (value: number, edge: number): boolean => value >= edge - ROUNDING;

const PER_GROUP = /\B(?=(\d{3})+(?!\d))/g;

/** Whole numbers with a comma before each thousand, as the rules print them; a tenth only where there is one. */
const words = (valueSI: number, unit: UnitId, resolution: number): string => {
  const [whole = "", decimals = ""] = formatValue(valueSI, unit, resolution).split(".");
  const shown = decimals.replace(/0+$/, "");
  return `${whole.replace(PER_GROUP, ",")}${shown === "" ? "" : `.${shown}`}`;
};

/** `12,500 ft`, to the nearest foot. */
export const feet = (height_m: number): string => withSymbol(words(height_m, "ft", 1), "ft");
/** `3 SM`, to a hundredth. */
export const statuteMiles = (distance_m: number): string => `${words(distance_m, "mi", 0.01)}\u00A0SM`;
export const metres = (distance_m: number): string => withSymbol(words(distance_m, "m", 1), "m");
/** `45 min`, to a tenth. */
export const minutes = (time_s: number): string => withSymbol(words(time_s, "min", 0.1), "min");
export const kilograms = (mass_kg: number): string => withSymbol(words(mass_kg, "kg", 0.1), "kg");
