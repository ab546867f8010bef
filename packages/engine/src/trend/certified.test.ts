import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { leastSquares } from "./least-squares.ts";
import { type LinearFit, linearFit, polynomialFit } from "./linear-fit.ts";
import { statisticsOf } from "./statistics.ts";

/** NIST Statistical Reference Datasets: certified results, in `reference/nist-strd`. */
interface DataSet {
  readonly data: Readonly<Record<string, readonly number[]>> & { readonly y: readonly number[] };
  readonly certified: {
    readonly parameters?: readonly { readonly estimate: number; readonly standardDeviation: number }[];
    readonly residualStandardDeviation?: number;
    readonly mean?: number;
    readonly standardDeviation?: number;
    readonly autocorrelationLag1?: number;
  };
}
const dataSet = (name: string): DataSet =>
  // files of this repository, of which the shape is known
  JSON.parse(
    readFileSync(new URL(`../../../../reference/nist-strd/${name}.json`, import.meta.url), "utf8"),
  ) as DataSet;

/** Significant digits that agree with a certified value; 15, all that are certified, where nothing differs. */
function digits(computed: number, certified = Number.NaN): number {
  const difference = Math.abs(computed - certified) / (certified === 0 ? 1 : Math.abs(certified));
  return difference === 0 ? 15 : Math.min(15, -Math.log10(difference));
}

const fewest = (computed: readonly number[], certified: readonly number[]): number => {
  expect(computed.length).toBe(certified.length);
  return Math.min(...computed.map((value, index) => digits(value, certified[index])));
};

const column = ({ data }: DataSet, name: string): readonly number[] => {
  const values = data[name];
  if (values === undefined) throw new Error(`no column ${name}`);
  return values;
};

const FITS: readonly {
  readonly name: string;
  readonly solve: (set: DataSet) => LinearFit;
  /** Digits that are reached at least: of the coefficients, their standard deviations, the residual's. */
  readonly coefficients: number;
  readonly sds: number;
  readonly residual: number;
}[] = [
  {
    name: "Norris",
    solve: (set) => polynomialFit(column(set, "x"), set.data.y, 1),
    coefficients: 13,
    sds: 13,
    residual: 13,
  },
  {
    name: "NoInt1",
    solve: (set) => linearFit([column(set, "x")], set.data.y),
    coefficients: 14,
    sds: 14,
    residual: 14,
  },
  {
    name: "Longley",
    solve: (set) =>
      linearFit(
        [set.data.y.map(() => 1), ...["x1", "x2", "x3", "x4", "x5", "x6"].map((name) => column(set, name))],
        set.data.y,
      ),
    coefficients: 14,
    sds: 14,
    residual: 14,
  },
  ...(["Wampler1", "Wampler2", "Wampler3", "Wampler5"] as const).map((name) => ({
    name,
    solve: (set: DataSet) => polynomialFit(column(set, "x"), set.data.y, 5),
    coefficients: 13,
    sds: 14,
    residual: 14,
  })),
  {
    name: "Filip",
    solve: (set) => polynomialFit(column(set, "x"), set.data.y, 10),
    coefficients: 13,
    sds: 7, // they come from the factors, which are not refined
    residual: 14,
  },
];

describe("certified fits (NIST StRD, Linear Least Squares Regression)", () => {
  it.each(FITS)(
    "$name: $coefficients digits of the coefficients",
    ({ name, solve, coefficients, sds, residual }) => {
      const set = dataSet(name);
      const { certified } = set;
      const parameters = certified.parameters ?? [];
      const found = solve(set);
      const reached = [
        fewest(
          found.coefficients,
          parameters.map(({ estimate }) => estimate),
        ),
        fewest(
          found.coefficientSds,
          parameters.map(({ standardDeviation }) => standardDeviation),
        ),
        digits(found.residualSd, certified.residualStandardDeviation),
      ];
      expect(reached[0]).toBeGreaterThanOrEqual(coefficients);
      expect(reached[1]).toBeGreaterThanOrEqual(sds);
      expect(reached[2]).toBeGreaterThanOrEqual(residual);
    },
  );

  it("Norris: the straight line of a trend has 12 digits too", () => {
    const set = dataSet("Norris");
    const line = leastSquares(column(set, "x"), set.data.y);
    if (line.kind !== "line") throw new Error("expected a line");
    const [intercept, slope] = set.certified.parameters ?? [];
    const reached = [
      digits(line.intercept, intercept?.estimate),
      digits(line.slope, slope?.estimate),
      digits(line.interceptSd, intercept?.standardDeviation),
      digits(line.slopeSd, slope?.standardDeviation),
      digits(line.residualSd, set.certified.residualStandardDeviation),
    ];
    expect(Math.min(...reached)).toBeGreaterThanOrEqual(12);
  });
});

describe("certified statistics (NIST StRD, Univariate Summary Statistics)", () => {
  it.each([
    { name: "Lottery", sd: 15, autocorrelation: 14 },
    { name: "Lew", sd: 15, autocorrelation: 14 },
    { name: "Michelso", sd: 13, autocorrelation: 13 },
    { name: "NumAcc1", sd: 15, autocorrelation: 15 },
    { name: "NumAcc2", sd: 15, autocorrelation: 15 },
    // 10 000 000.1 has nine digits after its tenth as a double: more of the scatter is not in the data
    { name: "NumAcc4", sd: 8, autocorrelation: 10 },
  ])("$name: $sd digits of the standard deviation", ({ name, sd, autocorrelation }) => {
    const { data, certified } = dataSet(name);
    const found = statisticsOf(data.y);
    expect(digits(found.mean, certified.mean)).toBeGreaterThanOrEqual(14);
    expect(digits(found.sd, certified.standardDeviation)).toBeGreaterThanOrEqual(sd);
    expect(digits(found.autocorrelation_1, certified.autocorrelationLag1)).toBeGreaterThanOrEqual(
      autocorrelation,
    );
  });
});
