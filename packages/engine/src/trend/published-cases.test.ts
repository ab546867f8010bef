import { readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { gaugePressureAtTemperature } from "../gas/gauge-pressure.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { cusum, ewma } from "./control-charts.ts";
import { kendall, kendallTail_1 } from "./kendall.ts";
import { leastSquares, lineAt, lineInterval, predictionInterval } from "./least-squares.ts";
import { outliersOf } from "./outliers.ts";
import { medianOf, modifiedZ, ODD_FROM } from "./statistics.ts";
import { theilSen } from "./theil-sen.ts";

type Figures = Readonly<Record<string, unknown>>;
interface Case {
  readonly id: string;
  readonly inputs: Figures;
  readonly expected: Figures;
  readonly tolerance: Figures;
}

// a file of this repository; the sources stand beside each case
const { cases } = JSON.parse(
  readFileSync(new URL("../../../../reference/decoded/trend.json", import.meta.url), "utf8"),
) as { readonly cases: readonly Case[] };
const used = new Set<string>();

function caseOf(id: string): Case {
  const found = cases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`reference/decoded/trend.json has no case ${id}`);
  used.add(id);
  return found;
}

function numberOf(figures: Figures, name: string): number {
  const value = figures[name];
  if (typeof value !== "number") throw new Error(`${name}: expected a number, received ${String(value)}`);
  return value;
}

function listOf(figures: Figures, name: string): readonly number[] {
  const value = figures[name];
  if (!Array.isArray(value)) throw new Error(`${name}: expected a list`);
  return value.map(Number);
}

/** Compares a figure with the printed one, within the case's own tolerance; exactly where it has none. */
function agrees({ expected, tolerance }: Case, name: string, computed: number): void {
  const allowed = Number(tolerance[name] ?? 0);
  expect(Math.abs(computed - numberOf(expected, name)), `${name}: ${computed}`).toBeLessThanOrEqual(allowed);
}

function allAgree({ expected, tolerance }: Case, name: string, computed: readonly number[]): void {
  const printed = listOf(expected, name);
  expect(computed.length).toBe(printed.length);
  const allowed = Number(tolerance[name]);
  for (const [index, value] of printed.entries()) {
    expect(Math.abs((computed[index] ?? Number.NaN) - value), `${name} ${index + 1}`).toBeLessThanOrEqual(
      allowed,
    );
  }
}

const steps = (values: readonly number[]): readonly number[] => values.map((_, index) => index);

function lineThrough(t: readonly number[], y: readonly number[]) {
  const line = leastSquares(t, y);
  if (line.kind !== "line") throw new Error("expected a line");
  return line;
}

function robustThrough(t: readonly number[], y: readonly number[]) {
  const line = theilSen(t, y, 0.95);
  if (line.kind !== "robust-line") throw new Error("expected a line");
  return line;
}

function kendallOf(t: readonly number[], y: readonly number[]) {
  const test = kendall(t, y);
  if (test.kind !== "kendall") throw new Error("expected a test");
  return test;
}

describe("control charts", () => {
  it("the tabular cumulative sum has every entry of the printed table", () => {
    const one = caseOf("cusum-tabular-textbook-16-8");
    const chart = cusum(listOf(one.inputs, "x"), {
      target: numberOf(one.inputs, "target"),
      reference: numberOf(one.inputs, "referenceValue_K"),
      decision: numberOf(one.inputs, "decisionInterval_H"),
    });
    allAgree(one, "upperCusum", chart.upper);
    allAgree(one, "lowerCusum", chart.lower);
    expect(chart.signals).toEqual(one.expected["signals"]);
  });

  const averages = (one: Case, limits: "steady" | "from-the-start") =>
    ewma(listOf(one.inputs, "x"), {
      target: numberOf(one.inputs, "target"),
      sd: numberOf(one.inputs, "sigma"),
      weight_1: numberOf(one.inputs, "lambda"),
      width_1: numberOf(one.inputs, "L"),
      limits,
    });

  it("the weighted average and its steady limits are the handbook's", () => {
    const one = caseOf("ewma-handbook-6-3-2-4");
    const chart = averages(one, "steady");
    allAgree(one, "ewma", chart.average);
    agrees(one, "ucl", chart.high[0] ?? Number.NaN);
    agrees(one, "lcl", chart.low.at(-1) ?? Number.NaN);
    expect(chart.signals).toEqual([]);
  });

  it("the weighted average signals where the limits that widen from the start are passed", () => {
    const one = caseOf("ewma-time-varying-limits");
    const chart = averages(one, "from-the-start");
    allAgree(one, "ewma", chart.average);
    allAgree(one, "ucl", chart.high);
    expect(chart.signals.map((place) => place + 1)).toEqual(one.expected["signals"]);
  });
});

/** Standard normal values, the same in every run. @source mulberry32, public domain; Box and Muller, 1958 */
function normals(seed: number): () => number {
  let state = seed;
  const even = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
}

const RUNS = 600;

/** Mean length of runs until a chart signals, and its standard error. */
function runLength(shift: number, signalsOf: (y: readonly number[]) => readonly number[]) {
  const draw = normals(20_261_125);
  const lengths = Array.from({ length: RUNS }, () => {
    const y: number[] = [];
    for (let size = 32; ; size *= 4) {
      while (y.length < size) y.push(shift + draw());
      const [first] = signalsOf(y);
      if (first !== undefined) return first + 1;
    }
  });
  const mean = lengths.reduce((sum, length) => sum + length / RUNS, 0);
  const variance = lengths.reduce((sum, length) => sum + (length - mean) ** 2, 0) / (RUNS - 1);
  return { mean, error: Math.sqrt(variance / RUNS) };
}

/** The run lengths of a table; drawn, so each may be four standard errors off and no more. */
function runLengthsAgree(
  { inputs, expected, tolerance }: Case,
  signalsOf: (y: readonly number[]) => readonly number[],
) {
  const printed = listOf(expected, "arl");
  const allowed = listOf(tolerance, "arl");
  for (const [index, shift] of listOf(inputs, "shift_sigma").entries()) {
    const { mean, error } = runLength(shift, signalsOf);
    const off = Math.abs(mean - (printed[index] ?? Number.NaN));
    expect(off, `shift ${shift}: ${mean}`).toBeLessThanOrEqual((allowed[index] ?? 0) + 4 * error);
  }
}

describe("how long a chart runs", () => {
  it("the tabular cumulative sum, by the table for k 0.5 and h 4", () => {
    const one = caseOf("cusum-arl-k0p5-h4");
    const settings = {
      target: 0,
      reference: numberOf(one.inputs, "k_sigma"),
      decision: numberOf(one.inputs, "h_sigma"),
    };
    runLengthsAgree(one, (y) => cusum(y, settings).signals);
  });

  it("the weighted average, by the table for weight 0.1", () => {
    const one = caseOf("ewma-arl-lambda-0p1");
    const settings = {
      target: 0,
      sd: 1,
      weight_1: numberOf(one.inputs, "lambda"),
      width_1: numberOf(one.inputs, "L"),
      limits: "steady",
    } as const;
    runLengthsAgree(one, (y) => ewma(y, settings).signals);
  });
});

describe("Kendall's test and the robust slope", () => {
  it("agree with the example by hand, which has a tie", () => {
    const one = caseOf("mann-kendall-by-hand-14");
    const y = listOf(one.inputs, "x");
    const test = kendallOf(steps(y), y);
    agrees(one, "S", test.s);
    agrees(one, "varS", test.variance);
    agrees(one, "Z", (test.s - 1) / Math.sqrt(test.variance));
    agrees(one, "pTwoSided", test.p);
    agrees(one, "pOneSided", test.p / 2);
    agrees(one, "senSlope_perStep", robustThrough(steps(y), y).slope_perDay);
  });

  it("agree with a library on 36 monthly values", () => {
    const one = caseOf("mann-kendall-monthly-36");
    const y = listOf(one.inputs, "x");
    const test = kendallOf(steps(y), y);
    const line = robustThrough(steps(y), y);
    agrees(one, "S", test.s);
    agrees(one, "tau", test.tau_1);
    agrees(one, "varS", test.variance);
    agrees(one, "Z", (test.s - 1) / Math.sqrt(test.variance));
    agrees(one, "pTwoSided", test.p);
    agrees(one, "senSlope_perStep", line.slope_perDay);
    agrees(one, "intercept", line.intercept);
  });

  it("have the tail of the printed tables for 4 to 10 readings", () => {
    const one = caseOf("mann-kendall-exact-tail-small-n");
    const given = one.inputs["n_and_s"];
    if (!Array.isArray(given)) throw new Error("the case has no n and s");
    const tails = given.map((pair: readonly number[]) => kendallTail_1(pair[0] ?? 0, pair[1] ?? 0));
    allAgree(one, "p", tails);
  });
});

describe("straight lines", () => {
  it("nine sparse readings: line, robust line, test and what is expected next", () => {
    const one = caseOf("leak-trend-noisy-9");
    const t = listOf(one.inputs, "day");
    const y = listOf(one.inputs, "pressure_psi");
    const line = lineThrough(t, y);
    const next = predictionInterval(line, numberOf(one.inputs, "predictionDay"), 0.95);
    const test = kendallOf(t, y);
    agrees(one, "olsSlope_psiPerDay", line.slope);
    agrees(one, "olsIntercept_psi", line.intercept);
    agrees(one, "residualSd_psi", line.residualSd);
    agrees(one, "theilSenSlope_psiPerDay", robustThrough(t, y).slope_perDay);
    agrees(one, "S", test.s);
    agrees(one, "pExactTwoSided", test.p);
    agrees(one, "fit_psi", next.expected);
    agrees(one, "pi95Low_psi", next.low);
    agrees(one, "pi95High_psi", next.high);
  });

  it("readings of a leaking cylinder show the leak once they are referred to one temperature", () => {
    const one = caseOf("leak-slope-temperature-corrected");
    const t = listOf(one.inputs, "day");
    const shown = listOf(one.inputs, "gaugePressure_psi");
    const temperatures = listOf(one.inputs, "gasTemperature_C");
    const referred = shown.map((pressure_psi, index) =>
      fromSI(
        gaugePressureAtTemperature.compute({
          gaugePressure_Pa: toSI(pressure_psi, "psi"),
          temperature_K: toSI(temperatures[index] ?? Number.NaN, "degC"),
          newTemperature_K: toSI(numberOf(one.inputs, "referenceTemperature_C"), "degC"),
          ambientPressure_Pa: toSI(numberOf(one.inputs, "atmosphericPressure_psi"), "psi"),
        }),
        "psi",
      ),
    );
    agrees(one, "slopeCorrected_psiPerDay", lineThrough(t, referred).slope);
    agrees(one, "pressureDay0Corrected_psi", lineThrough(t, referred).intercept);
    agrees(one, "theilSenCorrected_psiPerDay", robustThrough(t, referred).slope_perDay);
    agrees(one, "slopeUncorrected_psiPerDay", lineThrough(t, shown).slope);
  });

  it("a textbook's regression: every printed figure", () => {
    const one = caseOf("regression-prediction-interval-oxygen");
    const x0 = numberOf(one.inputs, "x0");
    const confidence_1 = numberOf(one.inputs, "confidence");
    const line = lineThrough(listOf(one.inputs, "x"), listOf(one.inputs, "y"));
    const mean = lineInterval(line, x0, confidence_1);
    const next = predictionInterval(line, x0, confidence_1);
    agrees(one, "intercept", line.intercept);
    agrees(one, "slope", line.slope);
    agrees(one, "seIntercept", line.interceptSd);
    agrees(one, "seSlope", line.slopeSd);
    agrees(one, "residualSd", line.residualSd);
    agrees(one, "fit", mean.expected);
    agrees(one, "seFit", lineAt(line, x0).lineSd);
    agrees(one, "ciLow", mean.low);
    agrees(one, "ciHigh", mean.high);
    agrees(one, "piLow", next.low);
    agrees(one, "piHigh", next.high);
  });

  it("the thermometer of GUM H.3", () => {
    const one = caseOf("gum-h3-thermometer-calibration");
    const reference = numberOf(one.inputs, "referenceTemperature_C");
    const line = lineThrough(
      listOf(one.inputs, "reading_C").map((reading) => reading - reference),
      listOf(one.inputs, "correction_C"),
    );
    const at30 = lineAt(line, numberOf(one.inputs, "predictAt_C") - reference);
    agrees(one, "y1_C", line.intercept);
    agrees(one, "u_y1_C", line.interceptSd);
    agrees(one, "y2", line.slope);
    agrees(one, "u_y2", line.slopeSd);
    agrees(one, "s_C", line.residualSd);
    agrees(one, "sumSquares", line.residualSd ** 2 * line.degreesOfFreedom);
    agrees(one, "b30_C", at30.value);
    agrees(one, "u_b30_C", at30.lineSd);
  });
});

describe("odd readings", () => {
  it("the mass spectrometer: median, deviation and every score", () => {
    const one = caseOf("modified-z-score-mass-spectrometer");
    const x = listOf(one.inputs, "x");
    agrees(one, "median", medianOf(x));
    const scores = modifiedZ(x);
    allAgree(one, "modifiedZ", scores);
    const odd = x.filter((_, index) => Math.abs(scores[index] ?? 0) > ODD_FROM);
    expect(odd).toEqual(one.expected["outliers"]);
  });

  it("three of 54, though the first two steps alone show none", () => {
    const one = caseOf("generalized-esd-54");
    const x = listOf(one.inputs, "x");
    const found = outliersOf(x, numberOf(one.inputs, "maxOutliers"), numberOf(one.inputs, "alpha"));
    allAgree(
      one,
      "R",
      found.steps.map(({ distance_sd }) => distance_sd),
    );
    allAgree(
      one,
      "lambda",
      found.steps.map(({ oddFrom_sd }) => oddFrom_sd),
    );
    expect(found.places.length).toBe(one.expected["nOutliers"]);
    expect(found.places.map((place) => x[place])).toEqual(one.expected["outliers"]);
  });
});

afterAll(() => {
  expect(cases.map(({ id }) => id).filter((id) => !used.has(id))).toEqual([]);
});
