import { feet, isAtLeast } from "./edges.ts";
import { figure } from "./ruling.ts";

/**
 * The lowest broken or overcast layer or vertical visibility, above the field: a height, or that none is reported.
 * Absent means not known, which is something else.
 */
export type Ceiling = number | "none";

/** Whether there is as much ceiling as asked; `undefined` when the ceiling is not known. */
export function ceilingReaches(ceiling_m: Ceiling | undefined, least_m: number): boolean | undefined {
  if (ceiling_m === "none") return true;
  const height_m = figure(ceiling_m);
  return height_m === undefined ? undefined : isAtLeast(height_m, least_m);
}

/** Whether one sees as far as asked; `undefined` when the visibility is not known. */
export function visibilityReaches(visibility_m: number | undefined, least_m: number): boolean | undefined {
  const far_m = figure(visibility_m);
  return far_m === undefined ? undefined : isAtLeast(far_m, least_m);
}

export function ceilingText(ceiling_m: Ceiling | undefined): string {
  if (ceiling_m === "none") return "no ceiling reported";
  const height_m = figure(ceiling_m);
  return height_m === undefined ? "ceiling not known" : `ceiling ${feet(height_m)}`;
}
