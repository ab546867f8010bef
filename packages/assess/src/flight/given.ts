import { type Dimension, toSI, UNITS, withSymbol } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";

/** A value that a person typed, in SI; or why it cannot be one. */
export type Given =
  | { readonly ok: true; readonly valueSI: number }
  | { readonly ok: false; readonly says: string };

const WORDS: Readonly<Partial<Record<Dimension, string>>> = {
  mass: "a mass, such as 84 kg",
  volume: "a volume, such as 170 L",
  temperature: "a temperature, such as 5 °C",
  length: "a length",
  time: "a time",
};

/** Nothing of a flight is beyond this in SI; what is came by mistake, and would overflow when multiplied. */
const BEYOND_ANY_FLIGHT = 1e9;

/** As it was typed: `−4 kg`. */
export const readText = ({ value, unit }: Read): string =>
  withSymbol(String(Number(value.toPrecision(12))).replace("-", "−"), unit);

/**
 * A value of one of these dimensions, zero or more unless it is a temperature.
 *
 * @param what for the message: "Mass of the surgeon"
 */
export function given(read: Read, dimensions: readonly Dimension[], what: string): Given {
  const dimension: Dimension | undefined = UNITS[read.unit]?.dimension;
  const [first] = dimensions;
  if (dimension === undefined || !dimensions.includes(dimension)) {
    const wanted = first === undefined ? "another unit" : (WORDS[first] ?? `a ${first}`);
    return { ok: false, says: `${what}: expected ${wanted}, received ${readText(read)}` };
  }
  if (!Number.isFinite(read.value))
    return { ok: false, says: `${what}: expected a number, received ${String(read.value)}` };
  const valueSI = toSI(read.value, read.unit);
  if (valueSI > BEYOND_ANY_FLIGHT)
    return { ok: false, says: `${what}: expected a figure of a flight, received ${readText(read)}` };
  if (valueSI < 0) {
    const least = dimension === "temperature" ? "a temperature above absolute zero" : "zero or more";
    return { ok: false, says: `${what}: expected ${least}, received ${readText(read)}` };
  }
  return { ok: true, valueSI };
}
