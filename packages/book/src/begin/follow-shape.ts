import { InputError } from "@witnessmark/engine";
import { isList, isSame } from "../edit/differences.ts";
import type { BookEdit, Plain } from "../edit/edit-text.ts";
import { editPlain } from "../edit/merge.ts";
import { valueAt } from "../edit/plain-of.ts";
import type { Geometry } from "../schema/geometry.ts";
import { firstFiguresOf } from "./first-figures.ts";
import { withMirrored } from "./mirrored-part.ts";
import { drawnAs, shapeIn } from "./shaped.ts";
import { strutsAlong } from "./struts-along.ts";

export interface Followed {
  /** What was asked, and with it what follows. */
  readonly edits: readonly BookEdit[];
  /** Whether the mirror image of a part is changed with it. */
  readonly hasPair: boolean;
  /** How many points and stances follow. */
  readonly count: number;
  /** The names of those that would, and were put elsewhere by hand. */
  readonly stays: readonly string[];
}

/**
 * A change of the shape with what goes with it: a wheel, a propeller or a nacelle takes its mirror image along, a wing
 * its struts; points and stances that still stand where they were put on it are put where they belong on the changed
 * one; those that a hand has moved stay. Of a book that was not begun from first figures nobody knows where they
 * belong, and nothing follows.
 *
 * @param readBefore the shape as it could be read last, for a book in which a figure of it is none
 * @throws {EditError} a place that is not there
 */
export function followShape(plain: Plain, asked: readonly BookEdit[], readBefore: Geometry | null): Followed {
  const mirrored = withMirrored(plain, asked);
  const hasPair = mirrored.length > asked.length;
  const figures = firstFiguresOf(plain);
  const [before, put] = [shapeIn(plain) ?? readBefore, shapeIn(mirrored.reduce(editPlain, plain))];
  const edits =
    before === null || put === undefined ? mirrored : [...mirrored, ...strutsAlong(before, put, asked)];
  const changed = edits.reduce(editPlain, plain);
  const after = shapeIn(changed);
  const nothing: Followed = { edits, hasPair, count: 0, stays: [] };
  if (figures === undefined || before === null || after === undefined) return nothing;
  try {
    const [was, now] = [drawnAs(plain, figures, before), drawnAs(plain, figures, after)];
    const moves = ["points", "stances"].flatMap((list) => movesOf(list, was, now, changed));
    const follows = moves.filter(({ isHand }) => !isHand);
    return {
      hasPair,
      edits: [...edits, ...follows.map(({ edit }) => edit)],
      count: follows.length,
      stays: moves.filter(({ isHand }) => isHand).map(({ name }) => name),
    };
  } catch (error) {
    if (error instanceof InputError) return nothing; // figures that no aircraft has: told at the field
    throw error;
  }
}

interface Move {
  readonly name: string;
  readonly edit: BookEdit;
  /** It was put elsewhere by hand. */
  readonly isHand: boolean;
}

function movesOf(list: string, was: Plain, now: Plain, plain: Plain): readonly Move[] {
  const [from, to] = [placesIn(was, list), placesIn(now, list)];
  const items = valueAt(plain, [list]);
  if (!isList(items)) return [];
  return items.flatMap((item, index): readonly Move[] => {
    const [id, name, place] = ["id", "name", "place"].map((key) => valueAt(item, [key]));
    const [put, goes] = [from.get(String(id)), to.get(String(id))];
    if (put === undefined || goes === undefined || isSame(put, goes) || isSame(place, goes)) return [];
    return [
      {
        name: typeof name === "string" ? name : String(id),
        edit: { set: [list, index, "place"], to: goes },
        isHand: !isSame(place, put),
      },
    ];
  });
}

function placesIn(plain: Plain, list: string): ReadonlyMap<string, Plain> {
  const items = valueAt(plain, [list]);
  return new Map(
    (isList(items) ? items : []).flatMap((item) => {
      const [id, place] = [valueAt(item, ["id"]), valueAt(item, ["place"])];
      return typeof id !== "string" || place === undefined ? [] : [[id, place]];
    }),
  );
}
