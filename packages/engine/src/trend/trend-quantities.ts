import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { cusum, ewma } from "./control-charts.ts";
import { crossing } from "./crossing.ts";
import { kendall } from "./kendall.ts";
import { type LineFit, leastSquares, lineAt, predictionInterval } from "./least-squares.ts";
import { FEWEST_READINGS, type TooFew } from "./series.ts";
import { modifiedZ, statisticsOf } from "./statistics.ts";
import { theilSen } from "./theil-sen.ts";

/** Readings of any one unit: a value here is a plain number, and what comes out is in the unit of what went in. */
const ANY_VALUE = [-1e12, 1e12] as const;
const DAY_S = 86_400;

const TIMES_s = {
  name: "time_s",
  unit: "s",
  range: [-1e10, 1e10],
  meaning: "time of each reading, from any one instant",
  many: true,
} as const;
const VALUES_1 = {
  name: "value_1",
  unit: "1",
  range: ANY_VALUE,
  meaning: "each reading, all in one unit, in the order of the times",
  many: true,
} as const;
const CONFIDENCE_1 = {
  name: "confidence_1",
  unit: "1",
  range: [0.5, 0.9999],
  meaning: "confidence of the interval",
} as const;
const AT_s = {
  name: "at_s",
  unit: "s",
  range: [-1e10, 1e10],
  meaning: "time that is asked about, from the same instant",
} as const;

const HANDBOOK: QuantitySource = {
  title: "NIST/SEMATECH e-Handbook of Statistical Methods",
  edition: "online",
  url: "https://www.itl.nist.gov/div898/handbook/",
  status: "published",
};
const SEN: QuantitySource = {
  title: "Sen, Estimates of the regression coefficient based on Kendall's tau",
  edition: "Journal of the American Statistical Association 63, 1968",
  status: "published",
};
const KENDALL: QuantitySource = {
  title: "Kendall, Rank Correlation Methods",
  edition: "1975",
  status: "published",
};
const ONE_UNIT = "Readings of any one unit; the result is in that unit.";

const inDays = (time_s: readonly number[]): readonly number[] => time_s.map((time) => time / DAY_S);

/** What a calculation of a series gives, with its refusals and its "too few" in a quantity's own name. */
function answered<Answer extends { readonly kind: string }>(
  quantity: string,
  calculate: () => Answer | TooFew,
): Exclude<Answer, TooFew> {
  const answer = inOwnName(quantity, calculate);
  if (answer.kind !== "too-few") return answer as Exclude<Answer, TooFew>; // the kind has told them apart
  throw new InputError("out-of-range", "value_1", {
    quantity,
    expected: `${FEWEST_READINGS} readings at least, more for a high confidence`,
    received: String((answer as TooFew).n),
    remedy: "fewer cannot be told from chance",
  });
}

const FIELDS: Readonly<Record<string, string>> = { t_d: "time_s", y: "value_1" };

function inOwnName<Answer>(quantity: string, calculate: () => Answer): Answer {
  try {
    return calculate();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.code, FIELDS[error.field] ?? error.field, { ...error.detail, quantity });
  }
}

const lineOf = (quantity: string, time_s: readonly number[], value_1: readonly number[]): LineFit =>
  answered(quantity, () => leastSquares(inDays(time_s), value_1));

const lastOf = (values: readonly number[]): number => values.at(-1) ?? 0;

export const seriesSpread = defineQuantity({
  id: "series-spread",
  title: "Standard deviation of readings about their mean",
  inputs: [VALUES_1],
  output: { name: "spread_1", unit: "1" },
  formula: "√(sum of (y − mean)² / (n − 1))",
  sources: [{ ...HANDBOOK, locator: "1.3.5.6" }],
  notes: [ONE_UNIT],
  compute: ({ value_1 }) => inOwnName("series-spread", () => statisticsOf(value_1).sd),
});

export const seriesAutocorrelation = defineQuantity({
  id: "series-autocorrelation",
  title: "Correlation of each reading with the next",
  inputs: [VALUES_1],
  output: { name: "autocorrelation_1", unit: "1" },
  formula: "sum of (y − mean)(y next − mean) / sum of (y − mean)²",
  sources: [{ ...HANDBOOK, locator: "1.3.5.12" }],
  compute: ({ value_1 }) =>
    inOwnName("series-autocorrelation", () => statisticsOf(value_1).autocorrelation_1),
});

export const modifiedZScore = defineQuantity({
  id: "modified-z-score",
  title: "How odd the last reading is among all: its distance from the median in robust standard deviations",
  inputs: [VALUES_1],
  output: { name: "score_1", unit: "1" },
  formula: "0.6745 (y − median) / median of |y − median|",
  sources: [{ ...HANDBOOK, locator: "1.3.5.17" }],
  notes: ["Odd from 3.5 on. Where more than half of the readings are the same, the mean distance stands in."],
  compute: ({ value_1 }) => inOwnName("modified-z-score", () => lastOf(modifiedZ(value_1))),
});

export const trendSlope = defineQuantity({
  id: "trend-slope",
  title: "Slope of a straight line through readings, by least squares",
  inputs: [TIMES_s, VALUES_1],
  output: { name: "slopePerDay_1", unit: "1" },
  formula: "sum of (t − mean t)(y − mean y) / sum of (t − mean t)², for each day",
  sources: [{ ...HANDBOOK, locator: "4.1.4.1" }],
  notes: [ONE_UNIT],
  compute: ({ time_s, value_1 }) => lineOf("trend-slope", time_s, value_1).slope,
});

export const trendValue = defineQuantity({
  id: "trend-value",
  title: "A straight line through readings, by least squares, at a time",
  inputs: [TIMES_s, VALUES_1, AT_s],
  output: { name: "fitted_1", unit: "1" },
  formula: "mean y + slope (t − mean t)",
  sources: [{ ...HANDBOOK, locator: "4.1.4.1" }],
  notes: [ONE_UNIT],
  compute: ({ time_s, value_1, at_s }) => lineAt(lineOf("trend-value", time_s, value_1), at_s / DAY_S).value,
});

export const trendSpread = defineQuantity({
  id: "trend-spread",
  title: "Standard deviation of readings about their straight line",
  inputs: [TIMES_s, VALUES_1],
  output: { name: "spread_1", unit: "1" },
  formula: "√(sum of squares about the line / (n − 2))",
  sources: [{ ...HANDBOOK, locator: "4.1.4.1" }],
  notes: [ONE_UNIT],
  compute: ({ time_s, value_1 }) => lineOf("trend-spread", time_s, value_1).residualSd,
});

export const predictionLow = defineQuantity({
  id: "prediction-low",
  title: "Lowest reading to be expected at a time, by the trend so far",
  inputs: [TIMES_s, VALUES_1, AT_s, CONFIDENCE_1],
  output: { name: "low_1", unit: "1" },
  formula: "line − t(confidence; n − 2) s √(1 + 1/n + (t − mean t)² / sum of (t − mean t)²)",
  sources: [{ ...HANDBOOK, locator: "4.5.2.1" }],
  notes: [ONE_UNIT, "Below it a reading is less than expected since last time."],
  compute: ({ time_s, value_1, at_s, confidence_1 }) =>
    predictionInterval(lineOf("prediction-low", time_s, value_1), at_s / DAY_S, confidence_1).low,
});

export const predictionHigh = defineQuantity({
  id: "prediction-high",
  title: "Highest reading to be expected at a time, by the trend so far",
  inputs: [TIMES_s, VALUES_1, AT_s, CONFIDENCE_1],
  output: { name: "high_1", unit: "1" },
  formula: "line + t(confidence; n − 2) s √(1 + 1/n + (t − mean t)² / sum of (t − mean t)²)",
  sources: [{ ...HANDBOOK, locator: "4.5.2.1" }],
  notes: [ONE_UNIT, "Above it a reading is more than expected since last time."],
  compute: ({ time_s, value_1, at_s, confidence_1 }) =>
    predictionInterval(lineOf("prediction-high", time_s, value_1), at_s / DAY_S, confidence_1).high,
});

export const robustSlope = defineQuantity({
  id: "robust-slope",
  title: "Slope of readings that a few wild ones do not turn: the median slope of all pairs",
  inputs: [TIMES_s, VALUES_1],
  output: { name: "slopePerDay_1", unit: "1" },
  formula: "median of (y₂ − y₁) / (t₂ − t₁), for each day",
  sources: [SEN],
  notes: [ONE_UNIT, "Times in order, none twice; 2,000 readings at most."],
  compute: ({ time_s, value_1 }) =>
    answered("robust-slope", () => theilSen(inDays(time_s), value_1, 0.5)).slope_perDay,
});

export const robustSlopeLow = defineQuantity({
  id: "robust-slope-low",
  title: "Lower end of the robust slope's interval",
  inputs: [TIMES_s, VALUES_1, CONFIDENCE_1],
  output: { name: "lowPerDay_1", unit: "1" },
  formula: "the pair slope of rank (N − C) / 2, where |S| ≤ C is no surprise",
  sources: [SEN, KENDALL],
  notes: [ONE_UNIT],
  compute: ({ time_s, value_1, confidence_1 }) =>
    answered("robust-slope-low", () => theilSen(inDays(time_s), value_1, confidence_1)).low,
});

export const robustSlopeHigh = defineQuantity({
  id: "robust-slope-high",
  title: "Upper end of the robust slope's interval",
  inputs: [TIMES_s, VALUES_1, CONFIDENCE_1],
  output: { name: "highPerDay_1", unit: "1" },
  formula: "the pair slope of rank (N + C) / 2 + 1, where |S| ≤ C is no surprise",
  sources: [SEN, KENDALL],
  notes: [ONE_UNIT],
  compute: ({ time_s, value_1, confidence_1 }) =>
    answered("robust-slope-high", () => theilSen(inDays(time_s), value_1, confidence_1)).high,
});

export const kendallScore = defineQuantity({
  id: "kendall-score",
  title: "Kendall's S: pairs of readings that go up less pairs that go down",
  inputs: [TIMES_s, VALUES_1],
  output: { name: "score_count", unit: "count" },
  formula: "sum of sign(y₂ − y₁) over all pairs",
  sources: [KENDALL],
  compute: ({ time_s, value_1 }) => answered("kendall-score", () => kendall(inDays(time_s), value_1)).s,
});

export const kendallProbability = defineQuantity({
  id: "kendall-probability",
  title: "Probability of so clear a trend, up or down, by chance",
  inputs: [TIMES_s, VALUES_1],
  output: { name: "probability_1", unit: "1" },
  formula: "every order counted up to 10 readings; beyond, normal with ties and a correction for continuity",
  sources: [KENDALL],
  compute: ({ time_s, value_1 }) => answered("kendall-probability", () => kendall(inDays(time_s), value_1)).p,
});

const TARGET_1 = {
  name: "target_1",
  unit: "1",
  range: ANY_VALUE,
  meaning: "what the readings should be",
} as const;
const SLACK_1 = {
  name: "slack_1",
  unit: "1",
  range: [0, 1e12],
  meaning: "half the shift that is to be found",
} as const;

export const cusumUpper = defineQuantity({
  id: "cusum-upper",
  title: "Cumulative sum of what lies above the target, after the last reading",
  inputs: [VALUES_1, TARGET_1, SLACK_1],
  output: { name: "sum_1", unit: "1" },
  formula: "S = max(0, y − target − slack + S before)",
  sources: [{ ...HANDBOOK, locator: "6.3.2.3" }],
  notes: [ONE_UNIT],
  compute: ({ value_1, target_1, slack_1 }) =>
    lastOf(cusum(value_1, { target: target_1, reference: slack_1, decision: 1 }).upper),
});

export const cusumLower = defineQuantity({
  id: "cusum-lower",
  title: "Cumulative sum of what lies below the target, after the last reading",
  inputs: [VALUES_1, TARGET_1, SLACK_1],
  output: { name: "sum_1", unit: "1" },
  formula: "S = max(0, target − slack − y + S before)",
  sources: [{ ...HANDBOOK, locator: "6.3.2.3" }],
  notes: [ONE_UNIT],
  compute: ({ value_1, target_1, slack_1 }) =>
    lastOf(cusum(value_1, { target: target_1, reference: slack_1, decision: 1 }).lower),
});

const WEIGHT_1 = {
  name: "weight_1",
  unit: "1",
  range: [1e-3, 1],
  meaning: "weight of the newest reading",
} as const;
const SPREAD_1 = {
  name: "spread_1",
  unit: "1",
  range: [1e-9, 1e12],
  meaning: "standard deviation of one reading",
} as const;
const WIDTH_1 = {
  name: "width_1",
  unit: "1",
  range: [0.1, 10],
  meaning: "width of the limits in standard deviations of the average",
} as const;

export const ewmaAverage = defineQuantity({
  id: "ewma-average",
  title: "Exponentially weighted moving average, after the last reading",
  inputs: [VALUES_1, TARGET_1, WEIGHT_1],
  output: { name: "average_1", unit: "1" },
  formula: "z = weight y + (1 − weight) z before, from the target",
  sources: [{ ...HANDBOOK, locator: "6.3.2.4" }],
  notes: [ONE_UNIT],
  compute: ({ value_1, target_1, weight_1 }) =>
    lastOf(ewma(value_1, { target: target_1, sd: 1, weight_1, width_1: 3, limits: "steady" }).average),
});

export const ewmaHalfWidth = defineQuantity({
  id: "ewma-half-width",
  title: "How far the moving average may lie from its target, in the long run",
  inputs: [SPREAD_1, WEIGHT_1, WIDTH_1],
  output: { name: "halfWidth_1", unit: "1" },
  formula: "width s √(weight / (2 − weight))",
  sources: [{ ...HANDBOOK, locator: "6.3.2.4" }],
  notes: ["In the unit of the spread."],
  compute: ({ spread_1, weight_1, width_1 }) => width_1 * spread_1 * Math.sqrt(weight_1 / (2 - weight_1)),
});

const LIMIT_1 = {
  name: "limit_1",
  unit: "1",
  range: ANY_VALUE,
  meaning: "limit that the readings come to, in their unit",
} as const;

function refuseNever(quantity: string, time_d: number | undefined): number {
  if (time_d !== undefined && Math.abs(time_d) <= 1e9) return time_d * DAY_S;
  throw new InputError("out-of-range", "limit_1", {
    quantity,
    expected: "a limit that the readings come to in this way",
    received: "one that they do not",
    remedy: "as things stand it is never met",
  });
}

export const limitMetExpected = defineQuantity({
  id: "limit-met-expected",
  title: "When a limit is met by the straight line through readings",
  inputs: [TIMES_s, VALUES_1, LIMIT_1],
  output: { name: "met_s", unit: "s" },
  formula: "line(t) = limit, after the last reading",
  sources: [{ ...HANDBOOK, locator: "4.1.4.1" }],
  notes: ["From the same instant as the times. The date to plan by is the earliest one: limit-met-earliest."],
  compute: ({ time_s, value_1, limit_1 }) =>
    refuseNever(
      "limit-met-expected",
      crossing(lineOf("limit-met-expected", time_s, value_1), limit_1).expected_d,
    ),
});

export const limitMetEarliest = defineQuantity({
  id: "limit-met-earliest",
  title: "From when a reading at a limit would be no surprise, by the trend so far",
  inputs: [TIMES_s, VALUES_1, LIMIT_1, CONFIDENCE_1],
  output: { name: "met_s", unit: "s" },
  formula: "end of the prediction interval (t) = limit, after the last reading",
  sources: [{ ...HANDBOOK, locator: "4.5.2.1" }],
  notes: ["From the same instant as the times."],
  compute: ({ time_s, value_1, limit_1, confidence_1 }) =>
    refuseNever(
      "limit-met-earliest",
      crossing(lineOf("limit-met-earliest", time_s, value_1), limit_1, confidence_1).earliest_d,
    ),
});
