import { InputError } from "../input-error.ts";
import { checkPositive, checkSeries, checkShare, FEWEST_READINGS, type TooFew, tooFew } from "./series.ts";

export interface LeakSettings {
  /** Which way the readings go when something is wrong. */
  readonly direction: "falling" | "rising";
  /** For how long the watch is to run with no more false alarms than asked for. */
  readonly horizon_d?: number;
  /** How many of a hundred sound series may be called leaking within the horizon. */
  readonly falseAlarm_1?: number;
}

/** What a watch on a series says after each of its readings. */
export interface LeakWatch {
  readonly kind: "watch";
  /** Evidence after each reading, on a scale on which a sound series has the days that have gone by, on average. */
  readonly evidence_d: readonly number[];
  /** From which evidence there is an alarm at each reading: the less, the rarer the readings have been so far. */
  readonly alarmFrom_d: readonly number[];
  /** The place of the first reading with an alarm. */
  readonly alarmAt?: number;
  /** After the last reading: since when, and how fast, if there is a leak. */
  readonly likely?: { readonly between: readonly [number, number]; readonly slope_perDay: number };
}

/** Leak rates that are thought of, in standard deviations of a reading for each day; each twice the one before. */
const RATES_sdPerDay = [0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 1.28, 2.56] as const;
/** A leak that began longer ago has been found, or is part of what is known of the level. */
const MOST_BACK = 400;
/** e^300 for each of 400 beginnings is still a number. */
const MOST_EXPONENT = 300;
/** What is less likely than this adds nothing to a sum of days. */
const LEAST_EXPONENT = -40;
/**
 * The bound of Doob's inequality is the horizon over the false-alarm rate; what really happens is a share of it, the
 * smaller the rarer the readings, since evidence that comes in large steps is past a threshold at once. For readings
 * one day apart, and how it goes with their distance: on the safe side of simulations of readings every third of a day
 * to every two weeks, over 60 to 730 days.
 */
const SHARE_OF_BOUND_1 = 0.22;
const WITH_DISTANCE = -0.45;

/** From which evidence there is an alarm, for readings that are on average so far apart. */
const alarmFrom_d = (gap_d: number, horizon_d: number, falseAlarm_1: number): number =>
  (Math.min(1, SHARE_OF_BOUND_1 * gap_d ** WITH_DISTANCE) * horizon_d) / falseAlarm_1;

/** What the readings after a possible beginning say: products of the ramp with the readings and with itself. */
interface Ramp {
  readonly place: number;
  readonly withReadings: number;
  readonly square: number;
}

/** The ramps that may have begun at each earlier reading, seen from a reading; the level is taken out. */
function* rampsAt(t_d: readonly number[], y: readonly number[], at: number, mean: number): Generator<Ramp> {
  const now_d = t_d[at] ?? 0;
  let [count, sumT, sumTT, sumY, sumTY] = [0, 0, 0, 0, 0];
  for (let place = at; place >= Math.max(0, at - MOST_BACK); place -= 1) {
    const time = (t_d[place] ?? 0) - now_d;
    const value = (y[place] ?? 0) - mean;
    if (count > 0) {
      const ramp = sumT - count * time;
      const square = sumTT - 2 * time * sumT + count * time * time - (ramp * ramp) / (at + 1);
      yield { place, withReadings: sumTY - time * sumY, square };
    }
    count += 1;
    sumT += time;
    sumTT += time * time;
    sumY += value;
    sumTY += time * value;
  }
}

/**
 * How much each rate counts: as its root. A fast leak has few readings to be found in, a slow one has many, so that the
 * same doubt costs the fast one the larger part of its time.
 */
const WEIGHTS = RATES_sdPerDay.map(Math.sqrt);
const ALL_WEIGHTS = WEIGHTS.reduce((sum, weight) => sum + weight);

/** How much likelier the readings are with a leak from there on than without: the mean over all rates. */
function likelihoodRatio({ withReadings, square }: Ramp, sd: number): number {
  let sum = 0;
  for (const [index, rate] of RATES_sdPerDay.entries()) {
    const exponent = (rate * withReadings) / sd - (rate * rate * square) / 2;
    if (exponent > LEAST_EXPONENT) sum += (WEIGHTS[index] ?? 0) * Math.exp(Math.min(exponent, MOST_EXPONENT));
  }
  return sum / ALL_WEIGHTS;
}

/**
 * Watches a series for a slow leak: after each reading, how likely all readings so far are if a leak of some rate began
 * at some earlier one, against no leak at all; summed over every beginning and every rate. The level before the leak
 * is not known beforehand, and need not be.
 *
 * @param t_d times in days, each later than the one before; from the last servicing on
 * @param sd standard deviation of one reading, by its gauge and its temperature
 * @returns `too-few` below five readings; no alarm is given on fewer
 * @throws {InputError} `not-a-number`, `out-of-range`
 * @source Shiryaev, 1963, and Roberts, 1966: the sum over beginnings; Pollak, 1987: the mean over unknown rates
 */
export function slowLeak(
  t_d: readonly number[],
  y: readonly number[],
  sd: number,
  { direction, horizon_d = 365, falseAlarm_1 = 0.05 }: LeakSettings,
): LeakWatch | TooFew {
  checkSeries(t_d, y);
  checkPositive("sd", sd);
  checkPositive("horizon_d", horizon_d);
  checkShare("falseAlarm_1", falseAlarm_1);
  if (!Number.isFinite(1 / sd ** 2)) {
    throw new InputError("out-of-range", "sd", {
      expected: "more than next to nothing",
      received: String(sd),
    });
  }
  if (y.length < FEWEST_READINGS) return tooFew(y.length);
  const turn = direction === "falling" ? -1 : 1;
  const towards = y.map((value) => turn * (value - (y[0] ?? 0)));
  const thresholds_d: number[] = [];
  const evidence_d: number[] = [];
  let total = 0;
  let alarmAt: number | undefined;
  for (const [at, value] of towards.entries()) {
    total += value;
    let evidence = 0;
    if (at + 1 >= FEWEST_READINGS) {
      for (const ramp of rampsAt(t_d, towards, at, total / (at + 1))) {
        evidence += likelihoodRatio(ramp, sd) * ((t_d[ramp.place + 1] ?? 0) - (t_d[ramp.place] ?? 0));
      }
    }
    evidence_d.push(evidence);
    const gap_d = ((t_d[at] ?? 0) - (t_d[0] ?? 0)) / Math.max(1, at);
    const threshold_d = alarmFrom_d(at === 0 ? 1 : gap_d, horizon_d, falseAlarm_1);
    thresholds_d.push(threshold_d);
    if (evidence >= threshold_d) alarmAt ??= at;
  }
  const likely = likeliest(t_d, towards, total / y.length);
  return {
    kind: "watch",
    evidence_d,
    alarmFrom_d: thresholds_d,
    ...(alarmAt === undefined ? {} : { alarmAt }),
    ...(likely === undefined
      ? {}
      : {
          likely: {
            between: [likely.place, likely.place + 1],
            slope_perDay: (turn * likely.withReadings) / likely.square,
          },
        }),
  };
}

/** The beginning that explains most, if any leak explains something. */
function likeliest(t_d: readonly number[], y: readonly number[], mean: number): Ramp | undefined {
  let best: Ramp | undefined;
  let most = 0;
  for (const ramp of rampsAt(t_d, y, y.length - 1, mean)) {
    const gain = ramp.withReadings > 0 && ramp.square > 0 ? ramp.withReadings ** 2 / ramp.square : 0;
    if (gain <= most) continue;
    most = gain;
    best = ramp;
  }
  return best;
}
