import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { normalQuantile } from "./normal-quantile.ts";
import { normal95Uncertainty, rectangularUncertainty } from "./uncertainty.ts";

const GUM: QuantitySource = {
  title: "JCGM 100, Evaluation of measurement data: guide to the expression of uncertainty in measurement",
  edition: "2008",
  status: "published",
};

const WIDTH_RANGE = [0, 1e12] as const;
const HALF_WIDTH_1 = {
  name: "halfWidth_1",
  unit: "1",
  range: WIDTH_RANGE,
  meaning: "half width of the interval, in the unit of the reading",
} as const;
const RESOLUTION_1 = {
  name: "resolution_1",
  unit: "1",
  range: WIDTH_RANGE,
  meaning: "smallest step that can be read, in the unit of the reading",
} as const;
const OUTPUT = { name: "standardUncertainty_1", unit: "1" } as const;

export const gaugeUncertainty = defineQuantity({
  id: "gauge-uncertainty",
  title: "Standard uncertainty of a reading of a gauge whose accuracy is a bound",
  inputs: [HALF_WIDTH_1, RESOLUTION_1],
  output: OUTPUT,
  formula: "sqrt(a² / 3 + δ² / 12)",
  sources: [{ ...GUM, locator: "4.3.7 and F.2.2.1" }],
  compute: ({ halfWidth_1, resolution_1 }) => rectangularUncertainty(halfWidth_1, resolution_1),
});

export const gaugeUncertainty95 = defineQuantity({
  id: "gauge-uncertainty-95",
  title: "Standard uncertainty of a reading of a gauge whose accuracy holds for 95 %",
  inputs: [HALF_WIDTH_1, RESOLUTION_1],
  output: OUTPUT,
  formula: "sqrt((a / 1.96)² + δ² / 12)",
  sources: [{ ...GUM, locator: "4.3.4 and F.2.2.1" }],
  compute: ({ halfWidth_1, resolution_1 }) => normal95Uncertainty(halfWidth_1, resolution_1),
});

export const uncertaintyFromMultiple = defineQuantity({
  id: "uncertainty-from-multiple",
  title: "Standard uncertainty from a stated multiple of it",
  inputs: [
    { name: "statedUncertainty_1", unit: "1", range: WIDTH_RANGE, meaning: "what a certificate states" },
    {
      name: "coverageFactor_1",
      unit: "1",
      range: [0.1, 100],
      meaning: "the multiple of a standard uncertainty that it is",
    },
  ],
  output: OUTPUT,
  formula: "U / k",
  sources: [{ ...GUM, locator: "4.3.3" }],
  compute: ({ statedUncertainty_1, coverageFactor_1 }) => statedUncertainty_1 / coverageFactor_1,
});

export const uncertaintyFromCoverage = defineQuantity({
  id: "uncertainty-from-coverage",
  title: "Standard uncertainty from an interval and the probability that it holds, normal",
  inputs: [
    HALF_WIDTH_1,
    {
      name: "coverage_1",
      unit: "1",
      range: [0.01, 0.9999],
      meaning: "probability that the value is in the interval",
    },
  ],
  output: OUTPUT,
  formula: "a / z((1 + p) / 2)",
  sources: [{ ...GUM, locator: "4.3.4 and 4.3.5" }],
  compute: ({ halfWidth_1, coverage_1 }) => halfWidth_1 / normalQuantile((1 + coverage_1) / 2),
});

export const uncertaintyFromHalfWidth = defineQuantity({
  id: "uncertainty-from-half-width",
  title: "Standard uncertainty from bounds, trapezoidal",
  inputs: [
    HALF_WIDTH_1,
    {
      name: "topToBase_1",
      unit: "1",
      range: [0, 1],
      meaning: "top over base of the trapezoid: 1 rectangular, 0 triangular",
    },
  ],
  output: OUTPUT,
  formula: "a sqrt((1 + β²) / 6)",
  sources: [{ ...GUM, locator: "4.3.7 and 4.3.9" }],
  compute: ({ halfWidth_1, topToBase_1 }) => halfWidth_1 * Math.sqrt((1 + topToBase_1 ** 2) / 6),
});

export const uncertaintyOfCycle = defineQuantity({
  id: "uncertainty-of-cycle",
  title: "Standard uncertainty from the amplitude of a cycle, arcsine",
  inputs: [HALF_WIDTH_1],
  output: OUTPUT,
  formula: "a / sqrt(2)",
  sources: [{ ...GUM, locator: "H.1.3.4" }],
  compute: ({ halfWidth_1 }) => halfWidth_1 / Math.SQRT2,
});
