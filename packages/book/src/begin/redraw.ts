import { InputError } from "@witnessmark/engine";
import { type Difference, isList, isMap, isSame, own, placeOf } from "../edit/differences.ts";
import type { BookEdit, Plain } from "../edit/edit-text.ts";
import { editPlain, mergeEdits } from "../edit/merge.ts";
import { valueAt } from "../edit/plain-of.ts";
import type { Geometry } from "../schema/geometry.ts";
import { alongEdits } from "./along.ts";
import { mustBeAnAircraft } from "./figures.ts";
import { type FirstFigures, firstFiguresOf } from "./first-figures.ts";
import { drawnAs, shapeIn } from "./shaped.ts";

export interface Redrawn {
  /** What has to be changed in the text. */
  readonly edits: readonly BookEdit[];
  /** What would have changed too, and was changed by hand before: it stays as it is. */
  readonly stays: readonly Difference["path"][];
}

/**
 * The book drawn anew from other first figures: shape, points, stances and what is looked at follow, but for what
 * was changed by hand since; points on a part that was shaped by hand stand on it as it is. With another datum all
 * that is drawn moves, by whomever it was put there. A book that does not say what it was drawn from keeps all it
 * has, and says the figures.
 *
 * @throws {InputError} figures that no aircraft has
 */
export function redraw(plain: Plain, next: FirstFigures): Redrawn {
  const before = firstFiguresOf(plain);
  if (before === undefined) {
    const figures = valueAt(drawnAs(plain, next), ["drawnFrom"]) ?? null;
    return { edits: [{ set: ["drawnFrom"], to: figures }], stays: [] };
  }
  mustBeAnAircraft({ ...next, registration: "", type: "" });
  const along = alongEdits(plain, before.datumAft_m - next.datumAft_m);
  const moved = along.reduce(editPlain, plain);
  const from = { ...before, datumAft_m: next.datumAft_m };
  const { edits, questions } = mergeEdits(
    // what the book says of its datum is a figure like the others
    withDatum(drawnAs(moved, from, shapeIn(moved)), before),
    drawnAs(moved, next, shapeAfter(moved, from, next)),
    moved,
  );
  return { edits: [...along, ...edits], stays: questions.map(({ path }) => path) };
}

/** The shape with what of it follows the figures. */
function shapeAfter(plain: Plain, from: FirstFigures, next: FirstFigures): Geometry | undefined {
  const { edits } = mergeEdits(
    geometryOf(drawnAs(plain, from)),
    geometryOf(drawnAs(plain, next)),
    geometryOf(plain),
  );
  return shapeIn(edits.reduce(editPlain, geometryOf(plain)));
}

const geometryOf = (plain: Plain): Plain => ({ geometry: valueAt(plain, ["geometry"]) ?? {} });

const withDatum = (drawn: Plain, { datumAft_m }: FirstFigures): Plain =>
  datumAft_m === 0
    ? editPlain(drawn, { remove: ["drawnFrom", "datum"] })
    : editPlain(drawn, { set: ["drawnFrom", "datum"], to: datumAft_m });

/** A point that does not stand where it would be put on the shape. */
export interface MovedPoint {
  readonly id: string;
  readonly name: string;
  readonly index: number;
  /** Where it would stand. */
  readonly drawn: Plain;
}

/** A part of the shape that is not as the first figures draw it: `wing`, `fuselage`. */
export interface ShapedPart {
  readonly key: string;
  /** As they would draw it; nothing where they would draw none. */
  readonly drawn: Plain | undefined;
}

export interface ByHand {
  /** In the order of the book. */
  readonly points: readonly MovedPoint[];
  readonly parts: readonly ShapedPart[];
}

const NOTHING: ByHand = { points: [], parts: [] };

/** What was moved or shaped by hand since the book was drawn; nothing where it does not say what from. */
export function changedByHand(plain: Plain): ByHand {
  const figures = firstFiguresOf(plain);
  if (figures === undefined) return NOTHING;
  try {
    const drawn = drawnAs(plain, figures);
    const onShape = drawnAs(plain, figures, shapeIn(plain));
    return { points: movedPoints(plain, onShape), parts: shapedParts(plain, drawn) };
  } catch (error) {
    if (error instanceof InputError) return NOTHING; // figures that no aircraft has: told at the field
    throw error;
  }
}

function movedPoints(plain: Plain, drawn: Plain): readonly MovedPoint[] {
  const points = valueAt(plain, ["points"]);
  if (!isList(points)) return [];
  return points.flatMap((point, index): MovedPoint[] => {
    const [id, name, place] = [valueAt(point, ["id"]), valueAt(point, ["name"]), valueAt(point, ["place"])];
    if (typeof id !== "string") return [];
    const at = placeOf(drawn, ["points", { id }, "place"]);
    const was = at === undefined ? undefined : valueAt(drawn, at);
    if (was === undefined || isSame(was, place)) return [];
    return [{ id, index, name: typeof name === "string" ? name : id, drawn: was }];
  });
}

function shapedParts(plain: Plain, drawn: Plain): readonly ShapedPart[] {
  const [here, there] = [valueAt(plain, ["geometry"]), valueAt(drawn, ["geometry"])];
  if (!isMap(here) || !isMap(there)) return [];
  return [...new Set([...Object.keys(there), ...Object.keys(here)])]
    .filter((key) => !isSame(own(here, key), own(there, key)))
    .map((key) => ({ key, drawn: own(there, key) }));
}
