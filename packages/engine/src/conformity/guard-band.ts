import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { JCGM_106 } from "./conformance.ts";
import { normalQuantile } from "./normal-quantile.ts";
import { studentFactor } from "./student.ts";

const RISK_1 = {
  name: "maximumRisk_1",
  unit: "1",
  range: [1e-9, 0.5],
  meaning: "highest probability of nonconformity at the acceptance limit",
} as const;
const DEGREES_count = {
  name: "degreesOfFreedom_count",
  unit: "count",
  range: [1, 1000],
  meaning: "degrees of freedom of the standard uncertainty",
} as const;
const BAND = { name: "guardBand_1", unit: "1" } as const;

const GUM_T: QuantitySource = {
  title: "JCGM 100, Evaluation of measurement data: guide to the expression of uncertainty in measurement",
  edition: "2008",
  locator: "annex G, Table G.2",
  status: "published",
};

function refuseFraction(quantity: string, degreesOfFreedom_count: number): void {
  if (Number.isInteger(degreesOfFreedom_count)) return;
  throw new InputError("out-of-range", "degreesOfFreedom_count", {
    quantity,
    value: degreesOfFreedom_count,
    expected: "a whole number",
    received: String(degreesOfFreedom_count),
    remedy: "round down: fewer degrees of freedom are the safe side",
  });
}

export const guardBandNormal = defineQuantity({
  id: "guard-band-normal",
  title: "Guard band for a stated risk, normal, in standard uncertainties",
  inputs: [RISK_1],
  output: BAND,
  formula: "z(1 − risk)",
  sources: [{ ...JCGM_106, locator: "8.3.2 and 9.5.2" }],
  compute: ({ maximumRisk_1 }) => -normalQuantile(maximumRisk_1),
});

export const guardBandStudent = defineQuantity({
  id: "guard-band-student",
  title:
    "Guard band for a stated risk when the uncertainty comes from few readings, in standard uncertainties",
  inputs: [RISK_1, DEGREES_count],
  output: BAND,
  formula: "t(1 − risk; n)",
  sources: [{ ...JCGM_106, locator: "8.3.2" }, GUM_T],
  compute: ({ maximumRisk_1, degreesOfFreedom_count }) => {
    refuseFraction("guard-band-student", degreesOfFreedom_count);
    return studentFactor(1 - 2 * maximumRisk_1, degreesOfFreedom_count);
  },
});

export const guardBandRectangular = defineQuantity({
  id: "guard-band-rectangular",
  title: "Guard band for a stated risk, rectangular, in standard uncertainties",
  inputs: [{ ...RISK_1, range: [0, 0.5] }],
  output: BAND,
  formula: "sqrt(3) (1 − 2 risk)",
  sources: [{ ...JCGM_106, locator: "8.3.2, applied to a rectangular distribution" }],
  compute: ({ maximumRisk_1 }) => Math.sqrt(3) * (1 - 2 * maximumRisk_1),
});

export const coverageFactorStudent = defineQuantity({
  id: "coverage-factor-student",
  title: "Coverage factor of Student's t",
  inputs: [
    { name: "coverage_1", unit: "1", range: [0.01, 0.9999], meaning: "probability that the interval holds" },
    DEGREES_count,
  ],
  output: { name: "coverageFactor_1", unit: "1" },
  formula: "t((1 + p) / 2; n)",
  sources: [GUM_T],
  compute: ({ coverage_1, degreesOfFreedom_count }) => {
    refuseFraction("coverage-factor-student", degreesOfFreedom_count);
    return studentFactor(coverage_1, degreesOfFreedom_count);
  },
});

const TUR_1 = {
  name: "testUncertaintyRatio_1",
  unit: "1",
  range: [1, 100],
  meaning: "tolerance over expanded uncertainty",
} as const;
const FACTOR = { name: "acceptanceFactor_1", unit: "1" } as const;
const CALIBRATION: QuantitySource = {
  title: "Guard-banding factors of calibration practice, as in the test suite of an open uncertainty toolkit",
  status: "published",
};

export const acceptanceFactorRss = defineQuantity({
  id: "acceptance-factor-rss",
  title: "Factor on a tolerance, root sum of squares",
  inputs: [TUR_1],
  output: FACTOR,
  formula: "sqrt(1 − 1 / TUR²)",
  sources: [CALIBRATION],
  crossCheckOnly: true,
  compute: ({ testUncertaintyRatio_1 }) => Math.sqrt(1 - 1 / testUncertaintyRatio_1 ** 2),
});

export const acceptanceFactorLinear = defineQuantity({
  id: "acceptance-factor-linear",
  title: "Factor on a tolerance, less the whole expanded uncertainty",
  inputs: [TUR_1],
  output: FACTOR,
  formula: "1 − 1 / TUR",
  sources: [CALIBRATION],
  crossCheckOnly: true,
  compute: ({ testUncertaintyRatio_1 }) => 1 - 1 / testUncertaintyRatio_1,
});

export const acceptanceFactorTwoPercent = defineQuantity({
  id: "acceptance-factor-two-percent",
  title: "Factor on a tolerance that holds the false acceptance risk to 2 %",
  inputs: [TUR_1],
  output: FACTOR,
  formula: "1 − M / TUR, M = 1.04 − exp(0.38 ln TUR − 0.54)",
  sources: [CALIBRATION],
  crossCheckOnly: true,
  compute: ({ testUncertaintyRatio_1: tur }) => 1 - (1.04 - Math.exp(0.38 * Math.log(tur) - 0.54)) / tur,
});
