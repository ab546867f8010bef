import { studentFactor } from "../conformity/student.ts";
import { InputError } from "../input-error.ts";
import { checkShare, checkValues } from "./series.ts";
import { statisticsOf } from "./statistics.ts";

/** One step of the test: the value that lies farthest off, how far, and from where that is odd. */
export interface OutlierStep {
  /** Its place in the list, from 0. */
  readonly place: number;
  /** Distance from the mean of what is left, in standard deviations of what is left. */
  readonly distance_sd: number;
  readonly oddFrom_sd: number;
}

export interface Outliers {
  readonly steps: readonly OutlierStep[];
  /** Places of the odd values, the farthest first. */
  readonly places: readonly number[];
}

/** Against fewer others nothing can be called odd with any sureness. */
const FEWEST_LEFT = 6;

/**
 * Which values of a normal sample do not belong (the generalised extreme studentised deviate test). One odd value that
 * hides another does not hide both, as it does where values are tested one by one.
 *
 * @param most how many there may be; the test itself says how many there are
 * @param risk_1 probability of calling a value of a sound sample odd
 * @throws {InputError} `not-a-number`, `out-of-range`, also where fewer than six values would be left
 * @source Rosner, Percentage points for a generalized ESD many-outlier procedure, 1983; NIST/SEMATECH e-Handbook,
 *   1.3.5.17.3
 */
export function outliersOf(y: readonly number[], most: number, risk_1 = 0.05): Outliers {
  checkValues("y", y);
  checkShare("risk_1", risk_1);
  if (!(Number.isInteger(most) && most >= 1 && y.length - most >= FEWEST_LEFT)) {
    throw new InputError("out-of-range", "most", {
      expected: `a whole number from 1 that leaves ${FEWEST_LEFT} of ${y.length} values`,
      received: String(most),
    });
  }
  const steps: OutlierStep[] = [];
  let left = y.map((value, place) => ({ value, place }));
  let odd = 0;
  for (let step = 1; step <= most; step += 1) {
    const n = left.length;
    const { mean, sd } = statisticsOf(left.map(({ value }) => value));
    if (sd === 0) break; // what is left is all the same
    const farthest = left.reduce((a, b) => (Math.abs(b.value - mean) > Math.abs(a.value - mean) ? b : a));
    const t = studentFactor(1 - risk_1 / n, n - 2);
    const oddFrom_sd = ((n - 1) * t) / Math.sqrt((n - 2 + t * t) * n);
    const distance_sd = Math.abs(farthest.value - mean) / sd;
    steps.push({ place: farthest.place, distance_sd, oddFrom_sd });
    if (distance_sd > oddFrom_sd) odd = step;
    left = left.filter((one) => one !== farthest);
  }
  return { steps, places: steps.slice(0, odd).map(({ place }) => place) };
}
