import { cubicTo, lineTo, moveTo, type Px } from "./path.ts";
import type { Projection } from "./projection.ts";

const SOLE_LENGTH_m = 0.3;
const LEAST_SOLE_px = 13;

/**
 * A pair of shoe soles at true size (13 px long at least) where one stands, toes where one looks.
 *
 * @param facing_deg clockwise from the nose
 */
export function feet(
  place: readonly [x_m: number, y_m: number],
  facing_deg: number,
  project: Projection,
): string {
  const [x_m, y_m] = place;
  const facing_rad = (facing_deg * Math.PI) / 180;
  const here = project(x_m, y_m);
  const ahead = project(x_m - Math.cos(facing_rad), y_m + Math.sin(facing_rad));
  const turn_rad = Math.atan2(ahead[0] - here[0], here[1] - ahead[1]);
  const scale_1 = Math.max(SOLE_LENGTH_m * project.pxPerMetre, LEAST_SOLE_px) / 30;
  const [sin, cos] = [Math.sin(turn_rad) * scale_1, Math.cos(turn_rad) * scale_1];
  const put = ([x, y]: Px): Px => [here[0] + x * cos - y * sin, here[1] + x * sin + y * cos];
  return sole((p) => put([-8 - p[0], p[1]])) + sole((p) => put([8 + p[0], p[1]]));
}

/** One right sole and its heel, 30 units long, toes towards −y. */
function sole(put: (p: Px) => Px): string {
  const curve = (arm1: Px, arm2: Px, to: Px): string =>
    cubicTo({ arm1: put(arm1), arm2: put(arm2), to: put(to) });
  return [
    moveTo(put([-1, -15])),
    curve([4, -16], [6, -9], [5, -3]),
    curve([4.4, 0], [3.6, 2], [3.2, 4]),
    lineTo(put([-3.6, 4])),
    curve([-4.4, 0], [-6, -6], [-5, -10]),
    curve([-4.4, -13], [-3, -14.7], [-1, -15]),
    "Z",
    moveTo(put([-3.5, 7])),
    lineTo(put([3.1, 7])),
    curve([3.6, 11], [2.6, 15], [-0.2, 15]),
    curve([-3.2, 15], [-4, 11], [-3.5, 7]),
    "Z",
  ].join("");
}
