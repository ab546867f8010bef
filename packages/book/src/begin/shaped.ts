import type { Plain } from "../edit/edit-text.ts";
import { valueAt } from "../edit/plain-of.ts";
import { Geometry } from "../schema/geometry.ts";
import { keysOf } from "./begin-book.ts";
import type { FirstFigures } from "./first-figures.ts";

/** The shape that a book has; nothing while a figure of it is none. */
export function shapeIn(plain: Plain): Geometry | undefined {
  const read = Geometry.safeParse(valueAt(plain, ["geometry"]));
  return read.success ? read.data : undefined;
}

/**
 * The book that these figures alone would give, named as this one is.
 *
 * @param shaped the shape that points and stances are put on; left out, the one that the figures draw
 * @throws {InputError} figures that no aircraft has
 */
export function drawnAs(plain: Plain, figures: FirstFigures, shaped?: Geometry): Plain {
  const text = (...path: readonly string[]) => {
    const value = valueAt(plain, path);
    return typeof value === "string" ? value : "";
  };
  const basis = valueAt(plain, ["aircraft", "certification", "basis"]);
  return keysOf(
    {
      archetype: {
        description: described(text("aircraft", "description"), figures),
        basis: basis === "amateur-built" ? basis : "type-certified",
      },
      figures: { ...figures, registration: text("aircraft", "registration"), type: text("aircraft", "type") },
      by: text("issued", "by"),
      on: text("issued", "on"),
    },
    shaped,
  );
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
