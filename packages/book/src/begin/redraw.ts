import { type Difference, isSame, placeOf } from "../edit/differences.ts";
import type { BookEdit, Plain } from "../edit/edit-text.ts";
import { mergeEdits } from "../edit/merge.ts";
import { valueAt } from "../edit/plain-of.ts";
import { keysOf } from "./begin-book.ts";
import { type FirstFigures, firstFiguresOf } from "./first-figures.ts";

export interface Redrawn {
  /** What has to be changed in the text. */
  readonly edits: readonly BookEdit[];
  /** What would have changed too, and was changed by hand before: it stays as it is. */
  readonly stays: readonly Difference["path"][];
}

/**
 * The book drawn anew from other first figures: shape, points, stances and what is looked at follow, but for what
 * was changed by hand since. A book that does not say what it was drawn from keeps all it has, and says the figures.
 *
 * @throws {InputError} figures that no aircraft has
 */
export function redraw(plain: Plain, next: FirstFigures): Redrawn {
  const drawn = drawnAs(plain, next);
  const before = firstFiguresOf(plain);
  if (before === undefined) {
    const figures = valueAt(drawn, ["drawnFrom"]) ?? null;
    return { edits: [{ set: ["drawnFrom"], to: figures }], stays: [] };
  }
  const { edits, questions } = mergeEdits(drawnAs(plain, before), drawn, plain);
  return { edits, stays: questions.map(({ path }) => path) };
}

/** A point that does not stand where the first figures put it. */
export interface MovedPoint {
  readonly id: string;
  readonly name: string;
  readonly index: number;
  /** Where it would stand. */
  readonly drawn: Plain;
}

/** The points that were moved by hand, in the order of the book; none where it does not say what it was drawn from. */
export function movedByHand(plain: Plain): readonly MovedPoint[] {
  const figures = firstFiguresOf(plain);
  if (figures === undefined) return [];
  let drawn: Plain;
  try {
    drawn = drawnAs(plain, figures);
  } catch {
    return []; // figures that no aircraft has: told at the field
  }
  const points = valueAt(plain, ["points"]);
  if (!Array.isArray(points)) return [];
  return points.flatMap((point: Plain, index): MovedPoint[] => {
    const [id, name, place] = [valueAt(point, ["id"]), valueAt(point, ["name"]), valueAt(point, ["place"])];
    if (typeof id !== "string") return [];
    const at = placeOf(drawn, ["points", { id }, "place"]);
    const was = at === undefined ? undefined : valueAt(drawn, at);
    if (was === undefined || isSame(was, place)) return [];
    return [{ id, index, name: typeof name === "string" ? name : id, drawn: was }];
  });
}

/** The book that these figures alone would give, named as this one is. */
function drawnAs(plain: Plain, figures: FirstFigures): Plain {
  const text = (...path: readonly string[]) => {
    const value = valueAt(plain, path);
    return typeof value === "string" ? value : "";
  };
  const basis = valueAt(plain, ["aircraft", "certification", "basis"]);
  const keys = keysOf({
    archetype: {
      description: described(text("aircraft", "description"), figures),
      basis: basis === "amateur-built" ? basis : "type-certified",
    },
    figures: { ...figures, registration: text("aircraft", "registration"), type: text("aircraft", "type") },
    by: text("issued", "by"),
    on: text("issued", "on"),
  });
  return JSON.parse(JSON.stringify(keys)) as Plain; // plain data, without what is undefined
}

const WHEELS = {
  "nose-wheel": "nose wheel",
  "tail-wheel": "tail wheel",
  "mono-wheel": "mono-wheel",
} as const;

/** What it is called, with the wheel that it has now. */
const described = (words: string, { gear }: FirstFigures): string =>
  words.replace(/nose wheel|tail wheel|mono-wheel/, WHEELS[gear]);
