import { cheapestWay } from "./cheapest-way.ts";
import { type Ink, inkAt } from "./ink.ts";
import { distance_px, type PicturePoint } from "./point.ts";

/** A line of the picture between two taps. */
export interface Followed {
  /** The middle of the line, in steps of some pixels; begins and ends at the taps. */
  readonly points: readonly PicturePoint[];
  /** The share of the way that lies on ink; a low one says that there is no line to follow. */
  readonly onLine_1: number;
}

/** Below this share the way is a guess, and the taps alone count. */
export const FOLLOWED_FROM_1 = 0.8;
const STEP_px = 6;
/** A way that is lighter than this in its middle goes over the grain of the paper. */
const FAINTEST_1 = 0.18;

/**
 * Follows the dark line from one tap to another: the cheapest way over the picture where ink is cheap and paper dear,
 * then in the middle of the line.
 *
 * @param from, to at most 3000 px apart, on the picture
 * @source E. N. Mortensen and W. A. Barrett, "Intelligent scissors for image composition", SIGGRAPH 1995: a way over the
 *   picture that is cheap along its lines
 */
export function followLine(ink: Ink, from: PicturePoint, to: PicturePoint): Followed {
  const path = cheapestWay(ink, from, to);
  if (path.length < 3) return { points: [from, to], onLine_1: 0 };
  const dark = darkOn(ink, path);
  if (dark < FAINTEST_1) return { points: [from, to], onLine_1: 0 };
  const points: PicturePoint[] = [from];
  const count = Math.max(2, Math.round(path.length / STEP_px));
  let on = 0;
  for (let i = 1; i < count; i += 1) {
    const at = Math.round((i * (path.length - 1)) / count);
    const before = path[Math.max(0, at - STEP_px)];
    const after = path[Math.min(path.length - 1, at + STEP_px)];
    const here = path[at];
    if (before === undefined || after === undefined || here === undefined) continue;
    const middle = middleOfLine(ink, here, before, after, dark);
    if (middle !== undefined) {
      on += 1;
      points.push(middle);
    }
  }
  points.push(to);
  const onLine_1 = on / Math.max(1, count - 1);
  return onLine_1 < FOLLOWED_FROM_1 ? { points: [from, to], onLine_1 } : { points, onLine_1 };
}

/** How dark the line is: most of the way lies on it. */
function darkOn(ink: Ink, path: readonly PicturePoint[]): number {
  const values = path.map(({ x_px, y_px }) => inkAt(ink, x_px, y_px)).sort((a, b) => a - b);
  return values[Math.floor(values.length / 2)] ?? 0;
}

const PROFILE_REACH_px = 5;
const PROFILE_STEP_px = 0.5;

/**
 * The middle of the line across the way at one place: of the ink that hangs together there. What crosses at a right
 * angle darkens all of the profile alike and moves nothing.
 */
function middleOfLine(
  ink: Ink,
  here: PicturePoint,
  before: PicturePoint,
  after: PicturePoint,
  dark: number,
): PicturePoint | undefined {
  const long = distance_px(before, after);
  if (long === 0) return undefined;
  const alongX = (after.x_px - before.x_px) / long;
  const alongY = (after.y_px - before.y_px) / long;
  const half = Math.round(PROFILE_REACH_px / PROFILE_STEP_px);
  const profile = Array.from({ length: 2 * half + 1 }, (_, i) => {
    const off = (i - half) * PROFILE_STEP_px;
    const x = here.x_px - alongY * off;
    const y = here.y_px + alongX * off;
    return (
      inkAt(ink, x, y) / 2 + (inkAt(ink, x + alongX, y + alongY) + inkAt(ink, x - alongX, y - alongY)) / 4
    );
  });
  let top = half;
  const near = Math.round(2.5 / PROFILE_STEP_px);
  for (let i = half - near; i <= half + near; i += 1) {
    if ((profile[i] ?? 0) > (profile[top] ?? 0)) top = i;
  }
  const height = profile[top] ?? 0;
  const floor = Math.min(...profile);
  if (height - floor < Math.max(FAINTEST_1 / 2, dark / 3)) return undefined;
  const edge = floor + (height - floor) / 2;
  let sum = 0;
  let moment = 0;
  for (const way of [-1, 1]) {
    for (let i = way < 0 ? top : top + 1; i >= 0 && i < profile.length; i += way) {
      const over = (profile[i] ?? 0) - edge;
      if (over <= 0) break;
      sum += over;
      moment += over * (i - half) * PROFILE_STEP_px;
    }
  }
  if (sum === 0) return undefined;
  const off = moment / sum;
  return { x_px: here.x_px - alongY * off, y_px: here.y_px + alongX * off };
}
