import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { exactSum, exactSumOfProducts } from "./exact-sum.ts";
import { MASS_RANGE_kg } from "./inputs.ts";

const INDEPENDENT: QuantitySource = {
  title: "Sum of independent random variables: variances add",
  status: "common practice",
};

const SPREADS_kg = {
  name: "standardUncertainty_kg",
  unit: "kg",
  range: MASS_RANGE_kg,
  meaning: "standard uncertainty of each mass",
  many: true,
} as const;

const SPREAD_OF_ONE_kg = {
  name: "spread_kg",
  unit: "kg",
  range: [0, 1000],
  meaning: "standard deviation of one person's or bag's mass",
} as const;

export const spreadOfTotal = defineQuantity({
  id: "spread-of-total",
  title: "Standard uncertainty of a total of masses that are known apart from each other",
  inputs: [SPREADS_kg],
  output: { name: "spread_kg", unit: "kg" },
  formula: "√(sum of u²)",
  sources: [INDEPENDENT],
  notes: ["Errors in common, as of one scale or one season, do not average out and are not in it."],
  compute: ({ standardUncertainty_kg }) =>
    Math.sqrt(exactSumOfProducts(standardUncertainty_kg.map((u) => [u, u] as const))),
});

export const spreadOfMean = defineQuantity({
  id: "spread-of-mean",
  title: "Standard deviation of the mean of several masses",
  inputs: [
    SPREAD_OF_ONE_kg,
    { name: "people_count", unit: "count", range: [1, 10_000], meaning: "how many there are" },
  ],
  output: { name: "meanSpread_kg", unit: "kg" },
  formula: "s / √n",
  sources: [INDEPENDENT],
  compute: ({ spread_kg, people_count }) => spread_kg / Math.sqrt(people_count),
});

export const sampleForMean = defineQuantity({
  id: "sample-for-mean",
  title: "How many have to be weighed to know a mean mass",
  inputs: [
    { ...SPREAD_OF_ONE_kg, range: [1e-3, 1000] },
    { name: "mean_kg", unit: "kg", range: [0.1, 1000], meaning: "mean mass that is expected" },
    {
      name: "error_1",
      unit: "1",
      range: [1e-4, 1],
      meaning: "error that may remain, as a share of the mean",
    },
    {
      name: "coverage_1",
      unit: "1",
      range: [0.1, 10],
      meaning: "coverage factor of the confidence: 1.96 for 95 %",
    },
  ],
  output: { name: "sample_count", unit: "count" },
  formula: "(k s / (e mean))², rounded up",
  sources: [
    {
      title: "AC 120-27E, Aircraft Weight and Balance Control",
      edition: "10 June 2005",
      locator: "sample-size formula",
      status: "from memory",
    },
  ],
  compute: ({ spread_kg, mean_kg, error_1, coverage_1 }) =>
    Math.ceil(((coverage_1 * spread_kg) / (error_1 * mean_kg)) ** 2),
});

export const surveySample = defineQuantity({
  id: "survey-sample",
  title: "Passengers to weigh for a mass survey of one's own",
  inputs: [
    { name: "seats_count", unit: "count", range: [1, 1000], meaning: "passenger seats of the aircraft" },
  ],
  output: { name: "sample_count", unit: "count" },
  formula: "50 for each seat below 40 seats, 2,000 from 40 seats",
  sources: [
    {
      title: "AMC2 CAT.POL.MAB.100(e), Mass and balance, loading",
      edition: "UK CAA ORS9 Decision No. 1",
      locator: "paragraph (a)(2)",
      status: "published",
    },
  ],
  notes: ["More where the statistics of a pilot sample ask for it. Of checked bags 2,000."],
  compute: ({ seats_count }) => (seats_count < 40 ? 50 * Math.ceil(seats_count) : 2000),
});

export const passengerFromStated = defineQuantity({
  id: "passenger-from-stated",
  title: "Mass of a passenger from the body mass that the passenger states",
  inputs: [
    { name: "stated_kg", unit: "kg", range: [1, 500], meaning: "body mass as stated" },
    {
      name: "allowances_kg",
      unit: "kg",
      range: [0, 100],
      meaning: "clothing (4 kg at least) and hand baggage (6 kg at least)",
      many: true,
    },
  ],
  output: { name: "passenger_kg", unit: "kg" },
  formula: "stated + sum of allowances",
  sources: [
    {
      title: "AMC1 CAT.POL.MAB.100(e), Mass and balance, loading",
      edition: "UK CAA ORS9 Decision No. 15",
      locator: "paragraph (a), fewer than 10 seats",
      status: "published",
    },
  ],
  notes: ["A rule of commercial flying, and good practice for others."],
  compute: ({ stated_kg, allowances_kg }) => exactSum([stated_kg, ...allowances_kg]),
});

/**
 * Checked bags to weigh for a mass survey of one's own, and the confidence range that it should reach.
 *
 * @source AMC2 CAT.POL.MAB.100(e), paragraph (b), UK CAA ORS9 Decision No. 1
 */
export const CHECKED_BAG_SURVEY = { sample_count: 2000, confidenceRange_1: 0.01 } as const;
