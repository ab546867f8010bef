import type { PerformanceQuantity } from "@witnessmark/book";
import type { BookEnvelope, BookTable } from "@witnessmark/chart";
import type { Dimension, UnitId } from "@witnessmark/engine";

/** What a page of a book wants from a paper. */
export type Wanted =
  | {
      readonly kind: "table";
      readonly quantity?: PerformanceQuantity;
      /** Of the one that stands in the book already: it keeps its short name, title and flaps. */
      readonly id?: string;
      readonly title?: string;
    }
  | { readonly kind: "envelope"; readonly id?: string; readonly name?: string };

/** By a picture of it, or by its figures as a spreadsheet copies them. */
export type PaperWay = "picture" | "pasted";

/** What was made of a paper, in the book's own form: `value` is set at, or inserted into, `at` of a draft. */
export type FromPaper =
  | {
      readonly kind: "table";
      readonly at: readonly ["performance", "tables"];
      readonly value: BookTable;
      readonly yaml: string;
    }
  | {
      readonly kind: "envelope";
      readonly at: readonly ["loading", "envelopes"];
      readonly value: BookEnvelope;
      readonly yaml: string;
    };

interface QuantityWords {
  readonly name: string;
  readonly dimension: Dimension;
  readonly unit: UnitId;
  /** The safe side. */
  readonly rounds: "up" | "down";
}

export const QUANTITIES: Readonly<Record<PerformanceQuantity | "go-around-gradient", QuantityWords>> = {
  "take-off-ground-roll": { name: "Take-off ground roll", dimension: "length", unit: "m", rounds: "up" },
  "take-off-over-50ft": { name: "Take-off over 50 ft", dimension: "length", unit: "m", rounds: "up" },
  "landing-ground-roll": { name: "Landing ground roll", dimension: "length", unit: "m", rounds: "up" },
  "landing-over-50ft": { name: "Landing over 50 ft", dimension: "length", unit: "m", rounds: "up" },
  "accelerate-stop": { name: "Accelerate-stop distance", dimension: "length", unit: "m", rounds: "up" },
  "climb-gradient": { name: "Climb gradient", dimension: "ratio", unit: "percent", rounds: "down" },
  "go-around-gradient": { name: "Go-around gradient", dimension: "ratio", unit: "percent", rounds: "down" },
  "stall-speed": { name: "Stall speed", dimension: "speed", unit: "kt", rounds: "up" },
};

export const AXIS_NAMES = ["mass", "pressureAltitude", "oat", "headwind", "slope"] as const;
export type AxisName = (typeof AXIS_NAMES)[number];

interface AxisWords {
  readonly name: string;
  readonly dimension: Dimension;
  readonly unit: UnitId;
}

export const AXES: Readonly<Record<AxisName, AxisWords>> = {
  mass: { name: "Mass", dimension: "mass", unit: "kg" },
  pressureAltitude: { name: "Pressure altitude", dimension: "length", unit: "ft" },
  oat: { name: "Outside air temperature", dimension: "temperature", unit: "degC" },
  headwind: { name: "Headwind", dimension: "speed", unit: "kt" },
  slope: { name: "Slope", dimension: "ratio", unit: "percent" },
};
