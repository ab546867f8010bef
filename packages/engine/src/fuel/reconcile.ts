import { InputError } from "../input-error.ts";
import { exactSum } from "../load/exact-sum.ts";
import { refuseUnequal } from "../load/refuse-unequal.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { chiSquareAbove_1 } from "./chi-square.ts";

/** One way in which the fuel aboard is known: gauge, dip, totaliser, arithmetic from last flight. */
export interface FuelSource {
  readonly id: string;
  readonly fuel_kg: number;
  readonly standardUncertainty_kg: number;
}

export interface ReconciledFuel {
  /** Mean of the sources, each weighted by one over its variance. Not to be used where they are not consistent. */
  readonly fuel_kg: number;
  readonly standardUncertainty_kg: number;
  readonly chiSquare_1: number;
  /** The probability of such a disagreement by chance; 1 with a single source, which nothing checks. */
  readonly probability_1: number;
  readonly consistent: boolean;
  /** The source that alone explains the disagreement; undefined where none does, or more than one could. */
  readonly odd: string | undefined;
  /** Each source's distance from the mean over the standard uncertainty of that distance. */
  readonly deviations: readonly { readonly id: string; readonly deviation_1: number }[];
  /** The least that any source says, for endurance while they disagree. */
  readonly least_kg: number;
}

/** Below this probability the sources do not agree: the same 5 % as for readings. */
const DISAGREE_BELOW_1 = 0.05;

const COX: QuantitySource = {
  title: "M. G. Cox, The evaluation of key comparison data, Metrologia 39, 589",
  edition: "2002",
  locator: "procedure A: weighted mean and chi-square check",
  status: "published",
};

interface Mean {
  readonly mean: number;
  readonly spread: number;
  readonly chiSquare_1: number;
  readonly probability_1: number;
}

function weightedMean(values: readonly { readonly value: number; readonly u: number }[]): Mean {
  const weights = values.map(({ u }) => 1 / u ** 2);
  const total = exactSum(weights);
  const mean = exactSum(values.map(({ value }, index) => value * (weights[index] ?? 0))) / total;
  const chiSquare_1 = exactSum(values.map(({ value, u }) => ((value - mean) / u) ** 2));
  return {
    mean,
    spread: 1 / Math.sqrt(total),
    chiSquare_1,
    probability_1: values.length < 2 ? 1 : chiSquareAbove_1(chiSquare_1, values.length - 1),
  };
}

const asValues = (sources: readonly FuelSource[]) =>
  sources.map(({ fuel_kg, standardUncertainty_kg }) => ({ value: fuel_kg, u: standardUncertainty_kg }));

/** The one source without which the others agree, where it is the only one of which that is so. */
function oddOneOut(sources: readonly FuelSource[]): string | undefined {
  if (sources.length < 3) return undefined; // of two that disagree, neither can be named
  const explains = sources.filter((source) => {
    const others = sources.filter((other) => other !== source);
    return weightedMean(asValues(others)).probability_1 >= DISAGREE_BELOW_1;
  });
  return explains.length === 1 ? explains[0]?.id : undefined;
}

/**
 * What several ways of knowing the fuel say together, and whether they agree.
 *
 * @param sources one at least; each apart from the others (a totaliser set from the gauge is not)
 * @throws {InputError} `missing` without a source; `out-of-range` for a mass below zero or an uncertainty that is not above
 * @source Cox 2002, procedure A
 */
export function reconcileFuel(sources: readonly FuelSource[]): ReconciledFuel {
  if (sources.length === 0) {
    throw new InputError("missing", "sources", {
      expected: "one source of the fuel at least",
      received: "none",
    });
  }
  for (const { id, fuel_kg, standardUncertainty_kg } of sources) {
    const field = !(fuel_kg >= 0 && Number.isFinite(fuel_kg))
      ? (["fuel_kg", fuel_kg, "a mass of zero or more"] as const)
      : !(standardUncertainty_kg > 0 && Number.isFinite(standardUncertainty_kg))
        ? (["standardUncertainty_kg", standardUncertainty_kg, "an uncertainty above zero"] as const)
        : undefined;
    if (field === undefined) continue;
    throw new InputError("out-of-range", `${id}, ${field[0]}`, {
      expected: field[2],
      received: String(field[1]),
    });
  }
  const { mean, spread, chiSquare_1, probability_1 } = weightedMean(asValues(sources));
  const consistent = probability_1 >= DISAGREE_BELOW_1;
  return {
    fuel_kg: mean,
    standardUncertainty_kg: spread,
    chiSquare_1,
    probability_1,
    consistent,
    odd: consistent ? undefined : oddOneOut(sources),
    deviations: sources.map(({ id, fuel_kg, standardUncertainty_kg: u }) => {
      const variance = u ** 2 - spread ** 2;
      // A single source is the mean itself.
      return { id, deviation_1: variance > 0 ? (fuel_kg - mean) / Math.sqrt(variance) : 0 };
    }),
    least_kg: Math.min(...sources.map(({ fuel_kg }) => fuel_kg)),
  };
}

const SOURCES_IN = [
  {
    name: "fuel_kg",
    unit: "kg",
    range: [0, 300_000],
    meaning: "fuel by each source",
    many: true,
  },
  {
    name: "standardUncertainty_kg",
    unit: "kg",
    range: [1e-6, 100_000],
    meaning: "standard uncertainty of each source, in the same order",
    many: true,
  },
] as const;

const paired = (quantity: string, fuel_kg: readonly number[], u_kg: readonly number[]) => {
  refuseUnequal(quantity, ["fuel_kg", fuel_kg], ["standardUncertainty_kg", u_kg]);
  return fuel_kg.map((value, index) => ({ value, u: u_kg[index] ?? Number.NaN }));
};

const APART =
  "The sources are apart from each other: a totaliser that was set from the gauge is none of its own.";

export const reconciledFuel = defineQuantity({
  id: "reconciled-fuel",
  title: "Fuel by several sources together",
  inputs: SOURCES_IN,
  output: { name: "reconciled_kg", unit: "kg" },
  formula: "(sum of m / u²) / (sum of 1 / u²)",
  sources: [COX],
  notes: [APART, "Only where fuel-consistency is 5 % or more."],
  compute: ({ fuel_kg, standardUncertainty_kg }) =>
    weightedMean(paired("reconciled-fuel", fuel_kg, standardUncertainty_kg)).mean,
});

export const reconciledFuelUncertainty = defineQuantity({
  id: "reconciled-fuel-uncertainty",
  title: "Standard uncertainty of the fuel by several sources together",
  inputs: [SOURCES_IN[1]],
  output: { name: "reconciledUncertainty_kg", unit: "kg" },
  formula: "1 / √(sum of 1 / u²)",
  sources: [COX],
  notes: [APART],
  compute: ({ standardUncertainty_kg }) =>
    1 / Math.sqrt(exactSum(standardUncertainty_kg.map((u) => 1 / u ** 2))),
});

export const fuelConsistency = defineQuantity({
  id: "fuel-consistency",
  title: "Probability that several sources of the fuel disagree so much by chance",
  inputs: SOURCES_IN,
  output: { name: "probability_1", unit: "1" },
  formula: "Pr(χ² with n − 1 degrees of freedom > sum of ((m − mean) / u)²)",
  sources: [COX],
  notes: [APART, "Below 5 % they do not agree; with a single source it is 1, since nothing checks it."],
  compute: ({ fuel_kg, standardUncertainty_kg }) =>
    weightedMean(paired("fuel-consistency", fuel_kg, standardUncertainty_kg)).probability_1,
});
