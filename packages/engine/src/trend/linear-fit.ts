import { InputError } from "../input-error.ts";
import { exactSumOfProducts } from "../load/exact-sum.ts";
import { checkValues } from "./series.ts";

/** A fit of several columns by least squares. */
export interface LinearFit {
  readonly coefficients: readonly number[];
  /** Standard deviation of each coefficient. */
  readonly coefficientSds: readonly number[];
  readonly residuals: readonly number[];
  readonly residualSd: number;
  readonly degreesOfFreedom: number;
}

/** A column, with what its doubles lose: powers have more digits than one double holds. */
interface Column {
  readonly values: readonly number[];
  readonly rest?: readonly number[];
}

type Pair = readonly [number, number];

/** A column of which less than this share is left beside those before it is a combination of them. */
const INDEPENDENT_FROM_1 = 1e-13;
const MOST_REFINEMENTS = 20;
const HIGHEST_DEGREE = 12;

const dot = (a: readonly number[], b: readonly number[]): number =>
  exactSumOfProducts(a.map((one, index) => [one, b[index] ?? 0] as const));
const lengthOf = (a: readonly number[]): number => Math.sqrt(dot(a, a));

/** Householder's factors: a unit vector for each column, and the columns of the upper triangle. */
interface Factors {
  readonly mirrors: readonly (readonly number[])[];
  readonly triangle: readonly (readonly number[])[];
}

function mirrored(values: readonly number[], mirror: readonly number[]): readonly number[] {
  const twice = 2 * dot(values, mirror);
  return values.map((value, row) => value - twice * (mirror[row] ?? 0));
}

function factorise(columns: readonly (readonly number[])[]): Factors {
  const mirrors: (readonly number[])[] = [];
  const triangle: (readonly number[])[] = [];
  for (const [place, column] of columns.entries()) {
    const turned = mirrors.reduce(mirrored, column);
    const below = turned.map((value, row) => (row < place ? 0 : value));
    const length = lengthOf(below);
    if (!(length > INDEPENDENT_FROM_1 * lengthOf(column))) {
      throw new InputError("out-of-range", "columns", {
        expected: "columns of which none is a combination of the others",
        received: `column ${place + 1} of ${columns.length}, which is one`,
        remedy: "leave it out, or give readings that differ more",
      });
    }
    const pivot = (below[place] ?? 0) < 0 ? length : -length;
    const mirror = below.map((value, row) => (row === place ? value - pivot : value));
    const size = lengthOf(mirror);
    mirrors.push(mirror.map((value) => value / size));
    triangle.push([...turned.slice(0, place), pivot]);
  }
  return { mirrors, triangle };
}

/** Solves R x = b. */
function backward({ triangle }: Factors, b: readonly number[]): readonly number[] {
  const x: number[] = triangle.map(() => 0);
  for (let row = triangle.length - 1; row >= 0; row -= 1) {
    const terms: Pair[] = [[b[row] ?? 0, 1]];
    for (let column = row + 1; column < triangle.length; column += 1) {
      terms.push([-(triangle[column]?.[row] ?? 0), x[column] ?? 0]);
    }
    x[row] = exactSumOfProducts(terms) / (triangle[row]?.[row] ?? 1);
  }
  return x;
}

/** Solves Rᵀ x = b. */
function forward({ triangle }: Factors, b: readonly number[]): readonly number[] {
  const x: number[] = [];
  for (const [row, column] of triangle.entries()) {
    const above: readonly Pair[] = x.map((value, place) => [-(column[place] ?? 0), value] as const);
    x.push(exactSumOfProducts([[b[row] ?? 0, 1], ...above]) / (column[row] ?? 1));
  }
  return x;
}

/** What a column gives in a row for a weight, digit for digit. */
const given = ({ values, rest }: Column, row: number, weight: number): readonly Pair[] => [
  [values[row] ?? 0, weight],
  [rest?.[row] ?? 0, weight],
];

interface Solution {
  readonly residuals: readonly number[];
  readonly coefficients: readonly number[];
}

/** What a solution is still out by, from left-overs that are computed without error. */
function corrections(
  columns: readonly Column[],
  y: readonly number[],
  factors: Factors,
  { residuals, coefficients }: Solution,
): Solution {
  const left = y.map((value, row) =>
    exactSumOfProducts([
      [value, 1],
      [-(residuals[row] ?? 0), 1],
      ...columns.flatMap((column, place) => given(column, row, -(coefficients[place] ?? 0))),
    ]),
  );
  const across = columns.map((column) =>
    exactSumOfProducts(residuals.flatMap((residual, row) => given(column, row, -residual))),
  );
  const inner = forward(factors, across);
  const turned = factors.mirrors.reduce(mirrored, left);
  return {
    coefficients: backward(
      factors,
      inner.map((value, place) => (turned[place] ?? 0) - value),
    ),
    residuals: factors.mirrors.reduceRight(
      mirrored,
      turned.map((value, row) => inner[row] ?? value),
    ),
  };
}

const added = (a: readonly number[], b: readonly number[]): readonly number[] =>
  a.map((value, index) => value + (b[index] ?? 0));

/** The solution, refined until what is left is rounding. */
function solve(columns: readonly Column[], y: readonly number[], factors: Factors): Solution {
  let solution: Solution = { residuals: y.map(() => 0), coefficients: columns.map(() => 0) };
  let before = Number.POSITIVE_INFINITY;
  for (let step = 0; step < MOST_REFINEMENTS; step += 1) {
    const change = corrections(columns, y, factors, solution);
    const size = lengthOf(change.coefficients);
    if (!(size < before)) break;
    solution = {
      residuals: added(solution.residuals, change.residuals),
      coefficients: added(solution.coefficients, change.coefficients),
    };
    before = size;
  }
  return solution;
}

function fitColumns(columns: readonly Column[], y: readonly number[]): LinearFit {
  const count = columns.length;
  if (count === 0 || y.length <= count) {
    throw new InputError("out-of-range", "y", {
      expected: `one column at least, and more readings than columns (${count})`,
      received: String(y.length),
    });
  }
  // A power of two changes no digit, and makes the columns of one size.
  const scales = columns.map(({ values }) => 2 ** -Math.ceil(Math.log2(lengthOf(values) || 1)));
  const scaled = columns.map(({ values, rest = [] }, place): Column => {
    const by = (value: number): number => value * (scales[place] ?? 1);
    return { values: values.map(by), rest: rest.map(by) };
  });
  const factors = factorise(scaled.map(({ values }) => values));
  const { residuals, coefficients } = solve(scaled, y, factors);
  const degreesOfFreedom = y.length - count;
  const residualSd = lengthOf(residuals) / Math.sqrt(degreesOfFreedom);
  const back = (values: readonly number[]): readonly number[] =>
    values.map((value, place) => value * (scales[place] ?? 1));
  const inverseLengths = columns.map((_, place) =>
    lengthOf(
      forward(
        factors,
        columns.map((_column, other) => (other === place ? 1 : 0)),
      ),
    ),
  );
  return {
    coefficients: back(coefficients),
    coefficientSds: back(inverseLengths.map((length) => length * residualSd)),
    residuals,
    residualSd,
    degreesOfFreedom,
  };
}

/**
 * Several columns fitted by least squares: Householder's QR, refined with left-overs that are computed without error.
 *
 * @param columns each as long as `y`; a column of ones for a constant
 * @throws {InputError} `not-a-number`; `out-of-range` for lists of two lengths, too few readings, columns that depend
 *   on each other
 * @source Björck, Numerical Methods for Least Squares Problems, 1996, 2.4 and 2.9.3
 */
export function linearFit(columns: readonly (readonly number[])[], y: readonly number[]): LinearFit {
  checkValues("y", y);
  for (const [place, values] of columns.entries()) {
    checkValues("columns", values);
    if (values.length === y.length) continue;
    throw new InputError("out-of-range", "columns", {
      expected: `columns as long as y, ${y.length}`,
      received: `${values.length} values in column ${place + 1}`,
    });
  }
  return fitColumns(
    columns.map((values) => ({ values })),
    y,
  );
}

/** A column of powers from the one before it, to twice a double's digits. */
function raised({ values, rest }: Column, t: readonly number[]): Column {
  const products = t.map((time, row): readonly [number, number] => {
    const terms: readonly Pair[] = [
      [values[row] ?? 0, time],
      [rest?.[row] ?? 0, time],
    ];
    const value = exactSumOfProducts(terms);
    return [value, exactSumOfProducts([...terms, [-value, 1]])];
  });
  return { values: products.map(([value]) => value), rest: products.map(([, lost]) => lost) };
}

/**
 * A polynomial by least squares; coefficients from the constant up.
 *
 * @param degree 1 to 12
 * @throws {InputError} as `linearFit`
 */
export function polynomialFit(t: readonly number[], y: readonly number[], degree: number): LinearFit {
  checkValues("t", t);
  checkValues("y", y);
  if (!(Number.isInteger(degree) && degree >= 1 && degree <= HIGHEST_DEGREE)) {
    throw new InputError("out-of-range", "degree", {
      expected: `a whole degree of 1 to ${HIGHEST_DEGREE}`,
      received: String(degree),
    });
  }
  if (t.length !== y.length) {
    throw new InputError("out-of-range", "y", {
      expected: `as many readings as times, ${t.length}`,
      received: String(y.length),
    });
  }
  let column: Column = { values: t.map(() => 1) };
  const columns = [column];
  for (let power = 1; power <= degree; power += 1) {
    column = raised(column, t);
    columns.push(column);
  }
  for (const { values } of columns) checkValues("t", values); // high powers of large times are beyond a double
  return fitColumns(columns, y);
}
