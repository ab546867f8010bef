import type { Ceiling } from "./ceiling.ts";
import type { Visibility } from "./groups/visibility.ts";

/** From the best to the worst. */
export const FLIGHT_CATEGORIES = ["VFR", "MVFR", "IFR", "LIFR"] as const;
export type FlightCategory = (typeof FLIGHT_CATEGORIES)[number];

/** The category, for planning only: it knows ceiling and visibility, no thunderstorm, and it is no law. */
export interface CategoryAnswer {
  /** Absent while ceiling or visibility is unknown. */
  readonly category?: FlightCategory;
  /** The worst that it can be, with what is known. */
  readonly atWorst: FlightCategory;
}

/** Statute miles, and the metres that stand for them in coding: 1,600 m a mile. 4800 m therefore counts as 3 SM. */
const VISIBILITY_STEPS = { mi: [1, 3, 5], m: [1600, 4800, 8000] } as const;

const categoryOf = (below: readonly boolean[]): FlightCategory =>
  below[0] ? "LIFR" : below[1] ? "IFR" : below[2] ? "MVFR" : "VFR";

export const worseCategory = (one: FlightCategory, other: FlightCategory): FlightCategory =>
  FLIGHT_CATEGORIES.indexOf(one) >= FLIGHT_CATEGORIES.indexOf(other) ? one : other;

export function visibilityCategory({ coded, bound, visibility_m }: Visibility): FlightCategory {
  const [low, middle, high] = VISIBILITY_STEPS[coded.unit === "mi" ? "mi" : "m"];
  const value = coded.unit === "mi" ? coded.value : visibility_m;
  // "less than 1" is below 1; "more than 5" is above 5
  const below = (limit: number): boolean => value < limit || (value === limit && bound === "less than");
  return categoryOf([below(low), below(middle), value < high || (value === high && bound !== "more than")]);
}

export function ceilingCategory(height_ft: number): FlightCategory {
  return categoryOf([height_ft < 500, height_ft < 1000, height_ft <= 3000]);
}

/**
 * The worse of what ceiling and visibility give each.
 *
 * @source NWS/FAA categories: LIFR below 500 ft or 1 SM; IFR below 1,000 ft or 3 SM; MVFR to 3,000 ft or 5 SM, both
 *   inclusive; VFR above both. The exact steps in feet are those of the code, so 1,000 ft is not IFR
 */
export function flightCategory(ceiling: Ceiling, visibility: Visibility | undefined): CategoryAnswer {
  const byVisibility = visibility === undefined ? undefined : visibilityCategory(visibility);
  const byCeiling =
    ceiling.kind === "height"
      ? ceilingCategory(ceiling.height_ft)
      : ceiling.kind === "none"
        ? "VFR"
        : undefined;
  if (byVisibility !== undefined && byCeiling !== undefined) {
    const category = worseCategory(byVisibility, byCeiling);
    return { category, atWorst: category };
  }
  return { atWorst: "LIFR" };
}
