import type { Check, GroundGearItem, Stance } from "@witnessmark/book";

/** One thing to do at a stance. */
export type Step =
  | { readonly kind: "check"; readonly id: string; readonly check: Check }
  | { readonly kind: "ground-gear"; readonly id: string; readonly item: GroundGearItem };

/** A stance and what is done from it, in order. */
export interface Stop {
  /** 1, 2, 3 … as written on the drawing. */
  readonly number: number;
  readonly stance: Stance;
  readonly steps: readonly Step[];
}

/** The walk of one kind, in the book's order. */
export interface WalkPlan {
  readonly stops: readonly Stop[];
  readonly stepCount: number;
}
