import { type Table, type Trend, tableFaults, trendFaults } from "@witnessmark/engine";
import { AXIS_ORDER, axisWords } from "../paste/headings.ts";
import { flatCells, type PaperTable } from "./chart-table.ts";

/** A cell that goes against its neighbours. */
export interface OddCell {
  /** Places on the axes of the table, outermost first. */
  readonly indices: readonly number[];
  readonly says: string;
}

/** Of the steps along an axis, so many must go one way before the rest are looked at. */
const MOSTLY_1 = 0.8;

/**
 * Cells that go against the way of the others along an axis. Where the physics says which way it is, that is given;
 * else the way of most is taken, and nothing is said of an axis that has none. Of two cells that do not go together the
 * one is odd without which fewer are left that do not, and where that says nothing, without which the rest is smoother.
 *
 * @param trends by the name of the axis
 */
export function oddCells(
  table: PaperTable,
  trends: Readonly<Record<string, Trend>> = {},
): readonly OddCell[] {
  let plain: Table = { axes: table.axes, cells: flatCells(table.cells) };
  if (tableFaults(plain).length > 0) return [];
  const ways: Record<string, Trend> = {};
  for (const { name } of table.axes) {
    const trend = trends[name] ?? wayOfMost(plain, name);
    if (trend !== undefined) ways[name] = trend;
  }
  const found: OddCell[] = [];
  for (;;) {
    const odd = oddest(plain, ways);
    if (odd === undefined) return found;
    found.push(told(table, plain, odd));
    plain = without(plain, odd);
  }
}

/** The cell without which the least is wrong with the table; none where nothing is. */
function oddest(plain: Table, ways: Readonly<Record<string, Trend>>): number | undefined {
  const faults = trendFaults(plain, ways);
  const suspects = new Set(
    faults.flatMap(({ at, axis, to }) => [at, { ...at, [axis]: to }]).map((place) => indexOf(plain, place)),
  );
  if (suspects.size === 0) return undefined;
  const lines = linesOf(plain, [...suspects]);
  let best: { readonly cell: number; readonly faults: number; readonly roughness: number } | undefined;
  for (const cell of suspects) {
    const rest = without(plain, cell);
    const judged = {
      cell,
      faults: trendFaults(rest, ways).length,
      roughness: lines.reduce((sum, line) => sum + roughness(line, rest), 0),
    };
    const isBetter =
      best === undefined ||
      judged.faults < best.faults ||
      (judged.faults === best.faults && judged.roughness < best.roughness);
    if (isBetter) best = judged;
  }
  return best?.cell;
}

const without = ({ axes, cells }: Table, cell: number): Table => ({
  axes,
  cells: cells.map((value, index) => (index === cell ? null : value)),
});

interface Line {
  readonly values: readonly number[];
  /** Places in the flat list of cells. */
  readonly cells: readonly number[];
}

/** The rows along every axis on which one of the cells lies, each once. */
function linesOf({ axes }: Table, of: readonly number[]): readonly Line[] {
  const steps = stepsOf(axes);
  const lines = new Map<string, Line>();
  for (const cell of of) {
    for (const [dimension, { values }] of axes.entries()) {
      const step = steps[dimension] ?? 1;
      const first = cell - (Math.floor(cell / step) % values.length) * step;
      lines.set(`${dimension} ${first}`, { values, cells: values.map((_, on) => first + on * step) });
    }
  }
  return [...lines.values()];
}

/** How much the slope changes from one step to the next, in all. */
function roughness({ values, cells }: Line, table: Table): number {
  const points = cells.flatMap((cell, on) => {
    const figure = table.cells[cell];
    const at = values[on];
    return typeof figure === "number" && at !== undefined ? [{ at, figure }] : [];
  });
  const slopes = points
    .slice(1)
    .map(({ at, figure }, i) => (figure - (points[i]?.figure ?? 0)) / (at - (points[i]?.at ?? 0)));
  const length = Math.abs((values.at(-1) ?? 1) - (values[0] ?? 0)) || 1;
  return slopes.slice(1).reduce((sum, slope, i) => sum + Math.abs(slope - (slopes[i] ?? 0)) * length, 0);
}

/** How many cells lie between one value of an axis and its next. */
const stepsOf = (axes: Table["axes"]): readonly number[] =>
  axes.map((_, dimension) => axes.slice(dimension + 1).reduce((step, { values }) => step * values.length, 1));

const indexOf = ({ axes }: Table, at: Readonly<Record<string, number>>): number =>
  stepsOf(axes).reduce(
    (sum, step, dimension) =>
      sum + step * (axes[dimension]?.values.indexOf(at[axes[dimension].name] ?? Number.NaN) ?? 0),
    0,
  );

const indicesOf = ({ axes }: Table, cell: number): readonly number[] =>
  stepsOf(axes).map((step, dimension) => Math.floor(cell / step) % (axes[dimension]?.values.length ?? 1));

function told(table: PaperTable, plain: Table, cell: number): OddCell {
  const indices = indicesOf(plain, cell);
  const place = table.axes
    .map(({ name, unit, values }, i) => placeOf(name, withUnit(values[indices[i] ?? 0] ?? Number.NaN, unit)))
    .join(", ");
  const steps = stepsOf(plain.axes);
  const beside = steps.flatMap((step, dimension) => {
    const on = indices[dimension] ?? 0;
    const last = (plain.axes[dimension]?.values.length ?? 1) - 1;
    return [...(on > 0 ? [cell - step] : []), ...(on < last ? [cell + step] : [])];
  });
  const figures = beside.flatMap((index) => plain.cells[index] ?? []);
  const near = [...new Set(figures)].sort((a, b) => a - b).map((figure) => withUnit(figure, table.unit));
  return {
    indices,
    says: `At ${place} the table has ${withUnit(plain.cells[cell] ?? Number.NaN, table.unit)}; beside it stand ${listed(near)}.`,
  };
}

function wayOfMost(plain: Table, name: string): Trend | undefined {
  const falls = trendFaults(plain, { [name]: "rising" }).length;
  const rises = trendFaults(plain, { [name]: "falling" }).length;
  if (rises >= MOSTLY_1 * (rises + falls) && rises > 0) return "rising";
  if (falls >= MOSTLY_1 * (rises + falls) && falls > 0) return "falling";
  return undefined;
}

const withUnit = (value: number, unit: string): string => `${value} ${unit}`.trim();

/** `pressure altitude 2000 ft` */
function placeOf(name: string, value: string): string {
  const known = AXIS_ORDER.find((each) => each === name);
  return `${known === undefined ? name : axisWords(known)} ${value}`;
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? "none") : `${words.slice(0, -1).join(", ")} and ${words.at(-1) ?? ""}`;
