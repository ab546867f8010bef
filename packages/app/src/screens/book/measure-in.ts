import type { Plain } from "@witnessmark/book";
import { InputError, parseMeasure } from "@witnessmark/engine";

/** A figure of a draft in SI, where it can be read; why it cannot is told at its field. */
export function siOf(value: Plain | undefined, dimension: "length" | "mass"): number | undefined {
  if (typeof value !== "string") return undefined;
  try {
    return parseMeasure(value, dimension, dimension).valueSI;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return undefined;
  }
}
