import type { Performance, PerformanceSource, PerformanceTable } from "../schema/performance.ts";
import { given } from "./given.ts";

/** One hundredth: the rule of a slope is written for 1 %, and kept for a slope of 1. */
const PERCENT_1 = 0.01;
const HEADWIND_CREDIT_1 = 0.5;
const TAILWIND_CHARGE_1 = 1.5;

export function performanceInSI(source: PerformanceSource, tables: readonly PerformanceTable[]): Performance {
  const {
    factors,
    crosswind,
    tailwindMax,
    approachFactor,
    liftOffFactor,
    touchdownFactor,
    slope,
    windInTable,
  } = source;
  return {
    tables,
    factors: factors.map(({ id, quantities, when, factor, of, source: from }) => ({
      id,
      quantities,
      when: { ...given("surface", when.surface), ...given("condition", when.condition) },
      factor_1: factor,
      of,
      source: from,
    })),
    crosswind: { value_mPerS: crosswind.value.valueSI, kind: crosswind.kind },
    ...given("tailwindMax_mPerS", tailwindMax?.valueSI),
    approachFactor_1: approachFactor,
    ...given("liftOffFactor_1", liftOffFactor),
    ...given("touchdownFactor_1", touchdownFactor),
    ...given(
      "slope",
      slope && {
        max_1: slope.max.valueSI,
        takeOffUp_1: slope.takeOffUp / PERCENT_1,
        landingDown_1: slope.landingDown / PERCENT_1,
      },
    ),
    windInTable,
    headwindCredit_1: windInTable ? 1 : (source.headwindCredit ?? HEADWIND_CREDIT_1),
    tailwindCharge_1: windInTable ? 1 : (source.tailwindCharge ?? TAILWIND_CHARGE_1),
  };
}
