import type { Check, GroundGearItem, Stance, WalkKind } from "@witnessmark/book";

/** One thing to do at a stance. `id` is the check's or the item's own. */
export type Step =
  | { readonly kind: "check"; readonly id: string; readonly check: Check }
  | { readonly kind: "ground-gear"; readonly id: string; readonly item: GroundGearItem };

/** A stance and what is done from it, in order. */
export interface Stop {
  /** 1, 2, 3 … as written on the drawing. */
  readonly number: number;
  readonly stance: Stance;
  readonly steps: readonly [Step, ...Step[]];
  /** No way leads to its stance on the drawing. */
  readonly noWay?: boolean;
}

/** The walk of one kind, in the order in which it is walked. */
export interface WalkPlan {
  readonly kind: WalkKind;
  readonly stops: readonly Stop[];
  readonly stepCount: number;
  /** Round everything that is in the way, where the order was planned; else straight from stance to stance. */
  readonly distance_m: number;
  /** Seconds for walking, stops and postures, where the order was planned. */
  readonly walking_s?: number;
  /** How long it honestly takes, a rough figure (`estimate.ts`). */
  readonly estimate_s: number;
  /** Whose order it is; the book's when absent. */
  readonly follows?: "manual" | "planned" | "by-hand";
}
