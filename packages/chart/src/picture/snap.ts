import type { Ink } from "./ink.ts";
import { distance_px, type PicturePoint } from "./point.ts";
import { type Relief, SIGMA_px, smoothedWindow } from "./smoothed-window.ts";

/** A place on a line of the picture, found near a tap. */
export interface Snapped {
  readonly point: PicturePoint;
  /** How strongly it stands out: 0 is nothing, about 0.4 is a black line two pixels wide. */
  readonly strength_1: number;
}

/** Below this, what bends is the grain of the paper. */
const FAINTEST_1 = 0.04;
/** A step to the middle of a line that is longer than this belongs to another pixel. */
const LONGEST_STEP_px = 0.75;
/** How much the nearer line counts for more: where two meet, it is the tap that says which is meant. */
const NEARER = 6;

/** A place in the middle of a line, and the direction across the line there. */
export interface RidgePoint extends Snapped {
  readonly acrossX: number;
  readonly acrossY: number;
}

/**
 * The middle of the dark line near a tap; of two lines that are as dark, the nearer.
 *
 * @param reach_px how far from the tap it may lie
 * @returns `undefined` where no line stands out
 */
export function snapToLine(ink: Ink, tap: PicturePoint, reach_px = 10): Snapped | undefined {
  let found: Snapped | undefined;
  let worth = 0;
  for (const { point, strength_1 } of ridgePoints(ink, tap, reach_px)) {
    const counts = strength_1 * Math.exp(-NEARER * (distance_px(point, tap) / reach_px) ** 2);
    if (counts > worth) {
      worth = counts;
      found = { point, strength_1 };
    }
  }
  return found;
}

/**
 * Every place around a tap that lies in the middle of a line.
 *
 * @source C. Steger, "An unbiased detector of curvilinear structures", IEEE PAMI 20(2), 1998: the middle of a line is
 *   where the first derivative across it vanishes and the second is most negative
 */
export function ridgePoints(ink: Ink, tap: PicturePoint, reach_px: number): readonly RidgePoint[] {
  const middleX = Math.round(tap.x_px);
  const middleY = Math.round(tap.y_px);
  const reach = Math.ceil(reach_px);
  const window = smoothedWindow(ink, middleX, middleY, reach);
  const found: RidgePoint[] = [];
  for (let y = middleY - reach; y <= middleY + reach; y += 1) {
    for (let x = middleX - reach; x <= middleX + reach; x += 1) {
      const { slopeX, slopeY, ...bend } = window.at(x, y);
      const { least, acrossX, acrossY } = sharpest(bend);
      const strength_1 = -least * SIGMA_px ** 2;
      const step = -(slopeX * acrossX + slopeY * acrossY) / least;
      if (!(strength_1 > FAINTEST_1 && Math.abs(step) <= LONGEST_STEP_px)) continue;
      const point = { x_px: x + step * acrossX, y_px: y + step * acrossY };
      if (distance_px(point, tap) <= reach_px) found.push({ point, strength_1, acrossX, acrossY });
    }
  }
  return found;
}

/** The sharpest downward bend of a place, and the direction in which it bends so. */
function sharpest({ bendXX, bendXY, bendYY }: Pick<Relief, "bendXX" | "bendXY" | "bendYY">) {
  const least = (bendXX + bendYY) / 2 - Math.hypot((bendXX - bendYY) / 2, bendXY);
  const along = Math.atan2(2 * bendXY, bendXX - bendYY) / 2; // the direction of the other bend
  return { least, acrossX: -Math.sin(along), acrossY: Math.cos(along) };
}
