import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { valueText } from "../registry/range-text.ts";
import { probabilityBetween_1 } from "./judge-reading.ts";

/** Estimates, uncertainties and limits are in one unit, whichever it is; the result does not depend on it. */
const ANY_RANGE = [-1e12, 1e12] as const;

const ESTIMATE_1 = { name: "estimate_1", unit: "1", range: ANY_RANGE, meaning: "the reading" } as const;
const UNCERTAINTY_1 = {
  name: "standardUncertainty_1",
  unit: "1",
  range: [0, 1e12],
  meaning: "standard uncertainty of the reading, in its unit",
} as const;
const LOWER_LIMIT_1 = {
  name: "lowerLimit_1",
  unit: "1",
  range: ANY_RANGE,
  meaning: "lower limit, in the unit of the reading",
} as const;
const UPPER_LIMIT_1 = {
  name: "upperLimit_1",
  unit: "1",
  range: ANY_RANGE,
  meaning: "upper limit, in the unit of the reading",
} as const;

export const JCGM_106: QuantitySource = {
  title:
    "JCGM 106, Evaluation of measurement data: the role of measurement uncertainty in conformity assessment",
  edition: "2012",
  status: "published",
};

function refuseCrossedLimits(quantity: string, lowerLimit_1: number, upperLimit_1: number): void {
  if (lowerLimit_1 <= upperLimit_1) return;
  throw new InputError("out-of-range", "lowerLimit_1", {
    quantity,
    value: lowerLimit_1,
    expected: `at most the upper limit, ${valueText(upperLimit_1, "1")}`,
    received: valueText(lowerLimit_1, "1"),
  });
}

export const conformanceAbove = defineQuantity({
  id: "conformance-above",
  title: "Probability that the true value is at or above a lower limit",
  inputs: [ESTIMATE_1, UNCERTAINTY_1, LOWER_LIMIT_1],
  output: { name: "probability_1", unit: "1" },
  formula: "Φ((y − TL) / u)",
  sources: [{ ...JCGM_106, locator: "7.3" }],
  compute: ({ estimate_1, standardUncertainty_1, lowerLimit_1 }) =>
    probabilityBetween_1(estimate_1, standardUncertainty_1, lowerLimit_1, Number.POSITIVE_INFINITY),
});

export const conformanceBelow = defineQuantity({
  id: "conformance-below",
  title: "Probability that the true value is at or below an upper limit",
  inputs: [ESTIMATE_1, UNCERTAINTY_1, UPPER_LIMIT_1],
  output: { name: "probability_1", unit: "1" },
  formula: "Φ((TU − y) / u)",
  sources: [{ ...JCGM_106, locator: "7.3" }],
  compute: ({ estimate_1, standardUncertainty_1, upperLimit_1 }) =>
    probabilityBetween_1(estimate_1, standardUncertainty_1, Number.NEGATIVE_INFINITY, upperLimit_1),
});

const BETWEEN = [ESTIMATE_1, UNCERTAINTY_1, LOWER_LIMIT_1, UPPER_LIMIT_1] as const;

export const conformanceBetween = defineQuantity({
  id: "conformance-between",
  title: "Probability that the true value is between two limits",
  inputs: BETWEEN,
  output: { name: "probability_1", unit: "1" },
  formula: "Φ((TU − y) / u) − Φ((TL − y) / u)",
  sources: [{ ...JCGM_106, locator: "7.4" }],
  compute: ({ estimate_1, standardUncertainty_1, lowerLimit_1, upperLimit_1 }) => {
    refuseCrossedLimits("conformance-between", lowerLimit_1, upperLimit_1);
    return probabilityBetween_1(estimate_1, standardUncertainty_1, lowerLimit_1, upperLimit_1);
  },
});

export const nonconformanceBetween = defineQuantity({
  id: "nonconformance-between",
  title: "Specific risk: probability that the true value is outside two limits",
  inputs: BETWEEN,
  output: { name: "probability_1", unit: "1" },
  formula: "Φ((TL − y) / u) + Φ((y − TU) / u)",
  sources: [{ ...JCGM_106, locator: "9.3.2" }],
  compute: ({ estimate_1: y, standardUncertainty_1: u, lowerLimit_1, upperLimit_1 }) => {
    refuseCrossedLimits("nonconformance-between", lowerLimit_1, upperLimit_1);
    if (u === 0) return y >= lowerLimit_1 && y <= upperLimit_1 ? 0 : 1;
    const below = probabilityBetween_1(y, u, Number.NEGATIVE_INFINITY, lowerLimit_1);
    return Math.min(1, below + probabilityBetween_1(y, u, upperLimit_1, Number.POSITIVE_INFINITY));
  },
});

export const capabilityIndex = defineQuantity({
  id: "capability-index",
  title: "Distance to the nearer of two limits in units of three standard uncertainties",
  inputs: [ESTIMATE_1, { ...UNCERTAINTY_1, range: [1e-12, 1e12] }, LOWER_LIMIT_1, UPPER_LIMIT_1],
  output: { name: "capability_1", unit: "1" },
  formula: "min(TU − y, y − TL) / (3 u)",
  sources: [{ ...JCGM_106, locator: "7.4; capability index as in statistical process control" }],
  compute: ({ estimate_1, standardUncertainty_1, lowerLimit_1, upperLimit_1 }) => {
    refuseCrossedLimits("capability-index", lowerLimit_1, upperLimit_1);
    return Math.min(upperLimit_1 - estimate_1, estimate_1 - lowerLimit_1) / (3 * standardUncertainty_1);
  },
});
