/** A smooth line through points of which the first figure ascends. */
export interface SmoothCurve {
  readonly from: number;
  readonly to: number;
  /** `undefined` outside `from` to `to`: nothing is extrapolated. */
  at(value: number): number | undefined;
}

/**
 * The piecewise cubic that goes through every point and never swings over: between two points it stays between them, so
 * that what rises at the points rises everywhere.
 *
 * @param knots at least one, the first figure ascending, all finite
 * @source F. N. Fritsch and R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17(2), 1980; the
 *   slopes are those of F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5(2), 1984
 */
export function monotoneCurve(knots: readonly (readonly [number, number])[]): SmoothCurve {
  const [first] = knots;
  const last = knots.at(-1);
  if (first === undefined || last === undefined) throw new RangeError("a curve needs at least one point");
  const slopes = slopesOf(knots);
  return {
    from: first[0],
    to: last[0],
    at(value) {
      if (!(value >= first[0] && value <= last[0])) return undefined;
      if (value === last[0]) return last[1];
      let low = 0;
      let high = knots.length - 1;
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if ((knots[middle]?.[0] ?? 0) <= value) low = middle;
        else high = middle;
      }
      const [x0, y0] = knots[low] ?? first;
      const [x1, y1] = knots[high] ?? last;
      const width = x1 - x0;
      const t = (value - x0) / width;
      const m0 = (slopes[low] ?? 0) * width;
      const m1 = (slopes[high] ?? 0) * width;
      return (
        y0 * (1 + 2 * t) * (1 - t) ** 2 +
        m0 * t * (1 - t) ** 2 +
        y1 * t ** 2 * (3 - 2 * t) +
        m1 * t ** 2 * (t - 1)
      );
    },
  };
}

function slopesOf(knots: readonly (readonly [number, number])[]): readonly number[] {
  const widths: number[] = [];
  const rises: number[] = [];
  for (let i = 0; i + 1 < knots.length; i += 1) {
    const [x0, y0] = knots[i] ?? [0, 0];
    const [x1, y1] = knots[i + 1] ?? [0, 0];
    widths.push(x1 - x0);
    rises.push((y1 - y0) / (x1 - x0));
  }
  return knots.map((_, i) => {
    const [before, after] = [rises[i - 1], rises[i]];
    const [wide, next] = [widths[i - 1] ?? 0, widths[i] ?? 0];
    if (before === undefined && after === undefined) return 0;
    if (before === undefined) return endSlope(next, widths[i + 1], after ?? 0, rises[i + 1]);
    if (after === undefined) return endSlope(wide, widths[i - 2], before, rises[i - 2]);
    if (before * after <= 0) return 0;
    const [one, other] = [2 * next + wide, next + 2 * wide];
    return (one + other) / (one / before + other / after);
  });
}

/** The slope at an end, from the three points there, held to what keeps the piece from swinging over. */
function endSlope(near: number, far: number | undefined, rise: number, next: number | undefined): number {
  if (far === undefined || next === undefined) return rise;
  const slope = ((2 * near + far) * rise - near * next) / (near + far);
  if (slope * rise <= 0) return 0;
  return rise * next < 0 && Math.abs(slope) > 3 * Math.abs(rise) ? 3 * rise : slope;
}
