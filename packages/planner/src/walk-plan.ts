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
}

/** The walk of one kind, in the book's order. */
export interface WalkPlan {
  readonly kind: WalkKind;
  readonly stops: readonly Stop[];
  readonly stepCount: number;
  /** Straight lines from stance to stance. */
  readonly distance_m: number;
  /** How long it honestly takes, a rough figure (`estimate.ts`). */
  readonly estimate_s: number;
}
