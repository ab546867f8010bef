import { askedOn, type Located, locate, type Place, valueAt } from "./locate.ts";
import { requireSoundTable, type Table, type TableAxis } from "./table.ts";

/** Beyond which end of an axis the edge cell is on the safe side of the truth, so that it may stand. */
export type HarmlessEnd = "below" | "above" | "both";

export interface TableReading {
  /** `linear` between the cells around the point, or the worst of those cells. */
  readonly mode: "linear" | "next-worse";
  /** Which way the figures are worse: a distance is worse when it is more, a gradient when it is less. Default `more`. */
  readonly worse?: "more" | "less";
  /** By axis name; an axis that is not named is covered between its first and last value only. */
  readonly harmless?: Readonly<Record<string, HarmlessEnd>>;
}

/** One printed cell that an answer rests on. */
export interface TableCorner {
  /** Its place in the table's cells; `axisValuesOfCell` says where that is. */
  readonly index: number;
  readonly cell: number;
  /** Its share in a linear answer; the shares add up to 1. */
  readonly weight_1: number;
}

export type TableAnswer =
  | {
      readonly ok: true;
      readonly value: number;
      readonly corners: readonly TableCorner[];
      /** Axes on which the edge cell stands for a value beyond the harmless end. */
      readonly edges: readonly { readonly axis: string; readonly asked: number; readonly used: number }[];
    }
  | {
      readonly ok: false;
      /** Beyond an end of the axis, or between cells of which one has no figure. */
      readonly why: "off-table" | "no-figure";
      readonly axis: string;
      readonly asked: number;
      /** On that axis, with all else as asked; absent where no value of that axis alone would do. */
      readonly nearest?: number;
    };

interface Found {
  readonly axis: TableAxis;
  readonly asked: number;
  readonly located: Located;
  readonly covered: boolean;
}

function find(
  axis: TableAxis,
  at: Readonly<Record<string, number>>,
  harmless: HarmlessEnd | undefined,
): Found {
  const asked = askedOn(axis, at);
  const located = locate(axis, asked);
  return {
    axis,
    asked,
    located,
    covered: located.kind === "on" || harmless === "both" || harmless === located.kind,
  };
}

const placeOf = (located: Located): Place =>
  located.kind === "on" ? located.place : { lower: located.edge, upper: located.edge, share_1: 0 };

/** The cells around a place that carry weight, or nothing when one of them has no figure. */
function cornersOf(table: Table, places: readonly Place[]): readonly TableCorner[] | undefined {
  const steps = requireSoundTable(table);
  let indexes = [0];
  let weights = [1];
  places.forEach(({ lower, upper, share_1 }, axis) => {
    const step = steps[axis] ?? Number.NaN;
    const nextIndexes: number[] = [];
    const nextWeights: number[] = [];
    indexes.forEach((index, at) => {
      const weight_1 = weights[at] ?? Number.NaN;
      nextIndexes.push(index + lower * step);
      nextWeights.push(lower === upper ? weight_1 : weight_1 * (1 - share_1));
      if (lower === upper) return;
      nextIndexes.push(index + upper * step);
      nextWeights.push(weight_1 * share_1);
    });
    indexes = nextIndexes;
    weights = nextWeights;
  });
  const corners: TableCorner[] = [];
  for (const [at, index] of indexes.entries()) {
    const cell = table.cells[index];
    if (cell === null || cell === undefined) return undefined;
    corners.push({ index, cell, weight_1: weights[at] ?? Number.NaN });
  }
  return corners;
}

/** The value of an axis nearest to the one asked for at which the table has a figure, all else being as it is. */
function nearestOn(table: Table, found: readonly Found[], dimension: number): number | undefined {
  const own = found[dimension];
  if (own === undefined) return undefined;
  const places = found.map(({ located }) => placeOf(located));
  const byDistance = own.axis.values
    .map((value, index) => ({ value, index, away: Math.abs(value - own.asked) }))
    .sort((a, b) => a.away - b.away);
  return byDistance.find(
    ({ index }) =>
      cornersOf(table, places.with(dimension, { lower: index, upper: index, share_1: 0 })) !== undefined,
  )?.value;
}

const spanOf = ({ values }: TableAxis): number => {
  const [first = 0, last = first] = [values[0], values.at(-1)];
  return last > first ? last - first : 1;
};

/** Names the axis on which the least change, as a share of the axis, would find a figure. */
function refusal(table: Table, found: readonly Found[]): TableAnswer {
  const off = found.findIndex(({ covered }) => !covered);
  const told = found[off];
  if (told !== undefined) {
    const nearest = nearestOn(table, found, off);
    const facts = { ok: false, why: "off-table", axis: told.axis.name, asked: told.asked } as const;
    return nearest === undefined ? facts : { ...facts, nearest };
  }
  const moves = found
    .map(({ axis, asked }, dimension) => ({ axis, asked, nearest: nearestOn(table, found, dimension) }))
    .map((move) => ({
      ...move,
      share_1:
        move.nearest === undefined ? Infinity : Math.abs(move.nearest - move.asked) / spanOf(move.axis),
    }))
    .sort((a, b) => a.share_1 - b.share_1);
  const [least] = moves;
  if (least === undefined) throw new RangeError("a table without axes has passed its check");
  const facts = { ok: false, why: "no-figure", axis: least.axis.name, asked: least.asked } as const;
  return least.nearest === undefined ? facts : { ...facts, nearest: least.nearest };
}

function combined(corners: readonly TableCorner[], { mode, worse = "more" }: TableReading): number {
  let [low, high, mean] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (const { cell, weight_1 } of corners) {
    low = Math.min(low, cell);
    high = Math.max(high, cell);
    mean += cell * weight_1;
  }
  if (mode === "next-worse") return worse === "more" ? high : low;
  return Math.min(high, Math.max(low, mean)); // rounding never leads outside the cells around
}

/**
 * Reads a printed table at a point: linearly between the cells around it, or the worst of those cells.
 *
 * Never extrapolates. A value beyond an end of an axis is refused unless the caller has said that this end is harmless
 * (then the edge cell stands, nothing beyond it). A cell without a figure among those that carry weight is refused too.
 *
 * @param at a value for each axis, by the axis's name; other names are not looked at
 * @returns the value in the unit of the cells with the cells it rests on, or why there is none
 * @throws {InputError} `missing`, `not-a-number` for a value; `out-of-range` for a table that is not one
 * @source common practice: linear between printed cells in every axis; checked against SciPy's RegularGridInterpolator
 */
export function interpolateTable(
  table: Table,
  at: Readonly<Record<string, number>>,
  reading: TableReading,
): TableAnswer {
  requireSoundTable(table);
  const found = table.axes.map((axis) => find(axis, at, reading.harmless?.[axis.name]));
  if (!found.every(({ covered }) => covered)) return refusal(table, found);
  const corners = cornersOf(
    table,
    found.map(({ located }) => placeOf(located)),
  );
  if (corners === undefined) return refusal(table, found);
  const edges = found.flatMap(({ axis, asked, located }) =>
    located.kind === "on" ? [] : [{ axis: axis.name, asked, used: valueAt(axis, located.edge) }],
  );
  return { ok: true, value: combined(corners, reading), corners, edges };
}
