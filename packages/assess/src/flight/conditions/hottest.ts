import type { Book } from "@witnessmark/book";
import type { OwnMinima as Own } from "@witnessmark/ledger";
import { type DistanceAnswer, distanceOf, KINDS } from "./distances.ts";
import type { FieldFigures } from "./field-figures.ts";

/** Up to which temperature a distance fits, everything else as it is. */
export interface HottestThatFits {
  /** The highest at which it still fits, to a tenth of a degree, down. */
  readonly oat_K: number;
  /** Whether it is the table that ends there: hotter is not known, and no reason to think that it fits. */
  readonly isEndOfTable: boolean;
}

/** Hotter than any place has been. */
const HOTTEST_K = 335;
const STEP_K = 0.1;

/**
 * The temperature at which nothing is left of a distance.
 *
 * @returns undefined where it does not fit as it is, or nothing is known of it
 */
export function hottestThatFits(
  book: Pick<Book, "performance">,
  { runway, planned }: Pick<FieldFigures, "runway" | "planned">,
  distance: DistanceAnswer,
  own: Pick<Own, "takeOffFactor_1" | "landingFactor_1"> = {},
): HottestThatFits | undefined {
  const { performance } = book;
  const { condition } = planned;
  if (performance === undefined || runway === undefined || condition === undefined) return undefined;
  if (distance.nearest.left_m < 0) return undefined;
  const ownFactor_1 = KINDS[distance.kind].phase === "take-off" ? own.takeOffFactor_1 : own.landingFactor_1;
  const at = (steps: number): "fits" | "short" | "no-figure" => {
    const oat_K = distance.at.oat_K + steps * STEP_K;
    const asked = { ...distance.at, oat_K };
    const found = distanceOf(distance.kind, {
      performance,
      runway,
      condition,
      at: asked,
      ownFactor_1,
    });
    return found.ok ? (found.answer.nearest.left_m < 0 ? "short" : "fits") : "no-figure";
  };
  // hotter is never shorter, and no table begins again: the first that does not fit is the only edge
  let [fits, not] = [0, Math.ceil((HOTTEST_K - distance.at.oat_K) / STEP_K)];
  if (not <= 0 || at(not) === "fits") return undefined;
  while (not - fits > 1) {
    const middle = Math.floor((fits + not) / 2);
    if (at(middle) === "fits") fits = middle;
    else not = middle;
  }
  return { oat_K: distance.at.oat_K + fits * STEP_K, isEndOfTable: at(not) === "no-figure" };
}
