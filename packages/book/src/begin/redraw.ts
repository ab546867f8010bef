import { InputError } from "@witnessmark/engine";
import { type Difference, isList, isMap, isSame, own, placeOf } from "../edit/differences.ts";
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
    return { points: movedPoints(plain, drawn), parts: shapedParts(plain, drawn) };
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

const KIND = /\b(piston|turboprop) (single|twin)\b|\b(single|twin)-engine (piston|turboprop)\b|\bglider\b/;

/** What it is called, with the wheel and the engines that it has now. */
function described(words: string, { gear, engine, engines }: FirstFigures): string {
  const count = engines === 2 ? "twin" : "single";
  return words.replace(/nose wheel|tail wheel|mono-wheel/, WHEELS[gear]).replace(KIND, (kind) => {
    if (engine === "none") return "glider";
    return kind.includes("-engine ") ? `${count}-engine ${engine}` : `${engine} ${count}`;
  });
}
