import { lineTo, moveTo, polyline } from "./path.ts";
import type { Projection } from "./projection.ts";
import { line, type Stroke } from "./stroke.ts";

const HATCH_EVERY_px = 7;

/** The ground under a side view, with earth hatched under it, from one place along the aircraft to another. */
export function groundLine(project: Projection, from_m: number, to_m: number): readonly Stroke[] {
  const [left, ground] = project(from_m, 0);
  const [right] = project(to_m, 0);
  let hatch = "";
  for (let x = left + 6; x < right; x += HATCH_EVERY_px) {
    hatch += moveTo([x, ground]) + lineTo([x - 5, ground + 6]);
  }
  const surface = line(
    polyline([
      [left, ground],
      [right, ground],
    ]),
  );
  return [surface, line(hatch, "hair")];
}

/** The centre line in plan; draw it dash-dot. */
export const centreLine = (project: Projection, from_m: number, to_m: number): string =>
  polyline([project(from_m, 0), project(to_m, 0)]);
