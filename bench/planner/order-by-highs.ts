import type { SequenceProblem } from "@witnessmark/planner";
import type { Highs } from "highs";

/** What a rule forbids costs this much in the published sequences. */
const FORBIDDEN = 1_000_000;

interface Row {
  readonly terms: readonly (readonly [column: number, value: number])[];
  readonly low: number;
  readonly high: number;
}

/**
 * The same problem as a general integer program: a variable for each arc that may be walked, and for each node a
 * number that grows along the way (Miller, Tucker, Zemlin, 1960); a rule is a difference of two such numbers.
 *
 * @param shouldStop asked now and then: whether its time is up
 * @returns the cost of the best order found by then, or undefined when it found none
 */
export function orderByHighs(
  highs: Highs,
  { size, cost, after }: SequenceProblem,
  shouldStop: () => boolean,
) {
  const arcs: { readonly from: number; readonly to: number; readonly cost: number }[] = [];
  for (let from = 0; from < size - 1; from += 1) {
    for (let to = 1; to < size; to += 1) {
      const arc = cost[from * size + to] ?? 0;
      if (from !== to && arc < FORBIDDEN && !(from === 0 && to === size - 1))
        arcs.push({ from, to, cost: arc });
    }
  }
  const rows: Row[] = [];
  const once = (one: "from" | "to", node: number): Row => ({
    terms: arcs.flatMap((arc, column) => (arc[one] === node ? [[column, 1] as const] : [])),
    low: 1,
    high: 1,
  });
  for (let node = 0; node < size; node += 1) {
    if (node < size - 1) rows.push(once("from", node));
    if (node > 0) rows.push(once("to", node));
  }
  const number = (node: number): number => arcs.length + node;
  for (const [column, { from, to }] of arcs.entries()) {
    const terms = [[number(from), 1] as const, [number(to), -1] as const, [column, size] as const];
    rows.push({ terms, low: Number.NEGATIVE_INFINITY, high: size - 1 });
  }
  for (const [node, earlier] of after.entries()) {
    for (const one of earlier) {
      rows.push({ terms: [[number(node), 1] as const, [number(one), -1] as const], low: 1, high: size });
    }
  }
  return solve(highs, arcs, rows, size, shouldStop);
}

function solve(
  highs: Highs,
  arcs: readonly { readonly cost: number }[],
  rows: readonly Row[],
  size: number,
  shouldStop: () => boolean,
) {
  const columns = arcs.length + size;
  const [starts, indices, values]: [number[], number[], number[]] = [[0], [], []];
  for (const { terms } of rows) {
    for (const [column, value] of terms) {
      indices.push(column);
      values.push(value);
    }
    starts.push(indices.length);
  }
  const model = highs.createModel();
  try {
    model.options.set({ output_flag: false, random_seed: 0 });
    model.passModel({
      numCols: columns,
      numRows: rows.length,
      colCost: Array.from({ length: columns }, (_, i) => arcs[i]?.cost ?? 0),
      colLower: Array.from({ length: columns }, () => 0),
      colUpper: Array.from({ length: columns }, (_, i) => (i < arcs.length ? 1 : size - 1)),
      rowLower: rows.map(({ low }) => low),
      rowUpper: rows.map(({ high }) => high),
      matrix: { format: "csr", numRows: rows.length, numCols: columns, starts, indices, values },
      integrality: Array.from({ length: columns }, (_, i) => (i < arcs.length ? 1 : 0)),
    });
    model.run({
      [highs.constants.callbackType.mipInterrupt](event) {
        if (shouldStop()) event.interrupt();
      },
    });
    const walked = [...model.getSolution().colValue].slice(0, arcs.length).map(Math.round);
    const isWhole = walked.reduce((count, one) => count + one, 0) === size - 1;
    return isWhole ? walked.reduce((sum, one, i) => sum + one * (arcs[i]?.cost ?? 0), 0) : undefined;
  } finally {
    model.dispose();
  }
}
