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

/** An axis on which a place lies between two values: how far on the upper one is in the cells, and its share. */
interface Between {
  readonly jump: number;
  readonly share_1: number;
}

/** The cells around a place that carry weight, or nothing when one of them has no figure. */
function cornersOf(table: Table, places: readonly Place[]): readonly TableCorner[] | undefined {
  const steps = requireSoundTable(table);
  const between: Between[] = [];
  let lowest = 0;
  places.forEach(({ lower, upper, share_1 }, axis) => {
    const step = steps[axis] ?? Number.NaN;
    lowest += lower * step;
    if (lower !== upper) between.push({ jump: (upper - lower) * step, share_1 });
  });
  const corners: TableCorner[] = [];
  // each bit of a corner's number, the first axis first, says whether it is at the upper value there
  for (let corner = 0; corner < 1 << between.length; corner += 1) {
    let index = lowest;
    let weight_1 = 1;
    let bit = 1 << between.length;
    for (const { jump, share_1 } of between) {
      bit >>= 1;
      const isUpper = (corner & bit) !== 0;
      if (isUpper) index += jump;
      weight_1 *= isUpper ? share_1 : 1 - share_1;
    }
    const cell = table.cells[index];
    if (cell === null || cell === undefined) return undefined;
    corners.push({ index, cell, weight_1 });
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
