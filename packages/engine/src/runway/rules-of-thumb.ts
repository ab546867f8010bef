import { densityAt_kgPerM3, SEA_LEVEL_KGPERM3 } from "../air/standard-atmosphere-model.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { PHAK_PERFORMANCE } from "./sources.ts";

/** All of these catch a figure that was misread; none fills a gap in a table. */

const MASS_RATIO_1 = {
  name: "massRatio_1",
  unit: "1",
  range: [0.5, 1.5],
  meaning: "mass, as a share of the mass that the figure is for",
} as const;

export const windDistanceRule = defineQuantity({
  id: "wind-distance-rule",
  title: "What a wind makes of a take-off or landing distance",
  inputs: [
    {
      name: "headwindRatio_1",
      unit: "1",
      range: [-0.5, 0.9],
      meaning: "headwind as a share of the lift-off or touchdown speed; a tailwind below zero",
    },
  ],
  output: { name: "factor_1", unit: "1" },
  formula: "(1 − headwind / speed)²",
  sources: [PHAK_PERFORMANCE],
  crossCheckOnly: true,
  notes: ["Nearly true of the ground roll."],
  compute: ({ headwindRatio_1 }) => (1 - headwindRatio_1) ** 2,
});

export const massSpeedRule = defineQuantity({
  id: "mass-speed-rule",
  title: "What mass makes of the lift-off or landing speed",
  inputs: [MASS_RATIO_1],
  output: { name: "factor_1", unit: "1" },
  formula: "sqrt(mass ratio)",
  sources: [PHAK_PERFORMANCE],
  crossCheckOnly: true,
  compute: ({ massRatio_1 }) => Math.sqrt(massRatio_1),
});

export const massTakeOffRule = defineQuantity({
  id: "mass-take-off-rule",
  title: "What mass makes of the take-off distance, at least",
  inputs: [MASS_RATIO_1],
  output: { name: "factor_1", unit: "1" },
  formula: "(mass ratio)²",
  sources: [PHAK_PERFORMANCE],
  crossCheckOnly: true,
  notes: ["At low power for its mass an aeroplane needs 25 to 30 % more for 10 % of mass."],
  compute: ({ massRatio_1 }) => massRatio_1 ** 2,
});

export const massLandingRule = defineQuantity({
  id: "mass-landing-rule",
  title: "What mass makes of the landing distance, where the brakes govern",
  inputs: [MASS_RATIO_1],
  output: { name: "factor_1", unit: "1" },
  formula: "mass ratio",
  sources: [PHAK_PERFORMANCE],
  crossCheckOnly: true,
  compute: ({ massRatio_1 }) => massRatio_1,
});

export const densityLandingRule = defineQuantity({
  id: "density-landing-rule",
  title: "What density altitude makes of the landing distance",
  inputs: [{ name: "densityAltitude_m", unit: "m", range: [-1500, 6000], meaning: "density altitude" }],
  output: { name: "factor_1", unit: "1" },
  formula: "1 / density ratio",
  sources: [PHAK_PERFORMANCE],
  crossCheckOnly: true,
  notes: ["About 3.5 % for 1,000 ft."],
  compute: ({ densityAltitude_m }) => SEA_LEVEL_KGPERM3 / densityAt_kgPerM3(densityAltitude_m),
});

const AC_91_79: QuantitySource = {
  title: "AC 91-79A, Mitigating the Risks of a Runway Overrun Upon Landing",
  edition: "17 September 2014",
  locator: "appendix, rules of thumb",
  status: "from memory",
};

export const fastApproachRule = defineQuantity({
  id: "fast-approach-rule",
  title: "What too much approach speed makes of the landing distance",
  inputs: [
    {
      name: "excessSpeed_1",
      unit: "1",
      range: [0, 0.3],
      meaning: "speed in excess, as a share of the approach speed",
    },
  ],
  output: { name: "factor_1", unit: "1" },
  formula: "1 + 2 × excess",
  sources: [AC_91_79],
  crossCheckOnly: true,
  compute: ({ excessSpeed_1 }) => 1 + 2 * excessSpeed_1,
});

export const highThresholdRule = defineQuantity({
  id: "high-threshold-rule",
  title: "What too much height over the threshold adds to the landing distance",
  inputs: [
    {
      name: "excessHeight_m",
      unit: "m",
      range: [0, 60],
      meaning: "height over the threshold beyond the intended one",
    },
  ],
  output: { name: "addition_m", unit: "m" },
  formula: "20 × height: 200 ft for each 10 ft",
  sources: [AC_91_79],
  crossCheckOnly: true,
  notes: ["About a 3° path."],
  compute: ({ excessHeight_m }) => 20 * excessHeight_m,
});
