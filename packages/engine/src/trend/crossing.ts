import { factorOf, type LineFit, lineAt } from "./least-squares.ts";
import { checkValues } from "./series.ts";

/** When a limit is met, on the time scale of the fit. What never comes is left out. */
export interface Crossing {
  /** From when a reading at the limit would be no surprise. */
  readonly earliest_d?: number;
  /** When the line meets the limit. */
  readonly expected_d?: number;
  /** After when a reading that is not yet at the limit would be a surprise. */
  readonly latest_d?: number;
}

/** The roots of a d² + b d + c, without the cancellation of the school formula. */
function rootsOf(a: number, b: number, c: number): readonly number[] {
  const under = b * b - 4 * a * c;
  if (under < 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(under));
  return [q / a, c / q].filter(Number.isFinite);
}

/**
 * When readings that follow a line meet a limit: by the line, and by the two limits of the prediction interval. Nothing
 * lies before the last reading: what is past there already is met then.
 *
 * @param confidence_1 of the interval from `earliest_d` to `latest_d`
 * @throws {InputError} `out-of-range`, `not-a-number`
 * @source the prediction interval of NIST/SEMATECH e-Handbook, 4.5.2.1, solved for the time
 */
export function crossing(fit: LineFit, limit: number, confidence_1 = 0.95): Crossing {
  checkValues("limit", [limit]);
  const from_d = fit.lastTime_d - fit.meanTime_d;
  const start = lineAt(fit, fit.lastTime_d);
  const factor = factorOf(fit, confidence_1);
  // Turned so that the readings start above a limit of zero and come down to it.
  const turn = start.value >= limit ? 1 : -1;
  const height = turn * (fit.meanValue - limit);
  const slope = turn * fit.slope;
  const atStart = turn * (start.value - limit);
  const c = (factor * fit.residualSd) ** 2;
  const roots_d = rootsOf(
    slope ** 2 - c / fit.timeSquares_d2,
    2 * slope * height,
    height ** 2 - c * (1 + 1 / fit.n),
  ).filter((d) => d >= from_d);
  /** The first root at which the line is on the side asked for: above zero for the lower limit, below for the upper. */
  const firstWhere = (side: 1 | -1): number | undefined =>
    roots_d.filter((d) => side * (height + slope * d) >= 0).sort((a, b) => a - b)[0];
  const half = factor * start.readingSd;
  const found = {
    earliest_d: atStart - half <= 0 ? from_d : firstWhere(1),
    expected_d: atStart <= 0 ? from_d : slope < 0 ? Math.max(from_d, -height / slope) : undefined,
    latest_d: atStart + half <= 0 ? from_d : firstWhere(-1),
  };
  return Object.fromEntries(
    Object.entries(found).flatMap(([name, d]) =>
      d === undefined || !Number.isFinite(d) ? [] : [[name, d + fit.meanTime_d]],
    ),
  );
}
