import type { Highs } from "highs";
import { FitError } from "./fit-error.ts";
import { Stopped, type Watch } from "./stop.ts";

/** A sum of columns, each times a factor, that lies between two values. */
export interface Row {
  readonly terms: readonly (readonly [column: number, factor: number])[];
  readonly low: number;
  readonly high: number;
}

export interface Column {
  readonly high: number;
  readonly whole: boolean;
}

/** A linear program with whole numbers: columns from zero up, rows, and what is to be least. */
export interface Program {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** By column; zero where it is missing. */
  readonly cost: ReadonlyMap<number, number>;
}

/** Tighter than the solver's own, as far as it goes: what it lets through is looked at again anyway. */
const TOLERANCE = 1e-9;

function matrix(rows: readonly Row[]): { starts: number[]; indices: number[]; values: number[] } {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { terms } of rows) {
    const sums = new Map<number, number>();
    for (const [column, factor] of terms) sums.set(column, (sums.get(column) ?? 0) + factor);
    for (const [column, factor] of sums) {
      if (factor === 0) continue;
      indices.push(column);
      values.push(factor);
    }
    starts.push(indices.length);
  }
  return { starts, indices, values };
}

/**
 * The columns' values for the least cost; undefined where there are none.
 *
 * @throws {Stopped} by time or by call
 * @throws {FitError} `solver`: it gave up for another reason
 */
export function solve(highs: Highs, program: Program, watch: Watch): readonly number[] | undefined {
  const { columns, rows, cost } = program;
  const empty = rows.find(({ terms, low, high }) => terms.length === 0 && !(low <= 0 && high >= 0));
  if (empty !== undefined || rows.some(({ low, high }) => low > high)) return undefined;
  if (columns.length === 0) return [];
  const { status, model } = { status: highs.constants.modelStatus, model: highs.createModel() };
  try {
    model.options.set({
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: TOLERANCE,
      primal_feasibility_tolerance: TOLERANCE,
      mip_feasibility_tolerance: TOLERANCE,
      random_seed: 0,
      time_limit: watch.left_s(),
    });
    model.passModel({
      numCols: columns.length,
      numRows: rows.length,
      colCost: columns.map((_, index) => cost.get(index) ?? 0),
      colLower: columns.map(() => 0),
      colUpper: columns.map(({ high }) => high),
      rowLower: rows.map(({ low }) => low),
      rowUpper: rows.map(({ high }) => high),
      matrix: { format: "csr", numRows: rows.length, numCols: columns.length, ...matrix(rows) },
      integrality: columns.map(({ whole }) => (whole ? 1 : 0)),
    });
    model.run({
      [highs.constants.callbackType.mipInterrupt](event) {
        if (watch.cancelled()) event.interrupt();
      },
    });
    const ended = model.getModelStatus();
    if (ended === status.optimal) return [...model.getSolution().colValue];
    if (ended === status.infeasible || ended === status.unboundedOrInfeasible) return undefined;
    if (ended === status.timeLimit) throw new Stopped("time");
    if (ended === status.interrupted) throw new Stopped("cancelled");
    throw new FitError("solver", `the solver ended with status ${ended} and no answer; report the load`);
  } finally {
    model.dispose();
  }
}
