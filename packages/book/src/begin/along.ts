import type { BookEdit, BookPath, Plain } from "../edit/edit-text.ts";
import { editPlain } from "../edit/merge.ts";
import { valueAt } from "../edit/plain-of.ts";

/** Any place of a list. */
const EACH = Symbol("each");
type Way = readonly (string | number | typeof EACH)[];

const SURFACES = ["wing", "tailplane"] as const;
const ENDS = ["root", "tip"] as const;

/** Where a book says how far aft of its datum something is drawn. Arms are not among them: they are the handbook's. */
const ALONG: readonly Way[] = [
  ["geometry", "fuselage", EACH, 0],
  ...SURFACES.flatMap((surface) => ENDS.map((end): Way => ["geometry", surface, end, "leadingEdge"])),
  ["geometry", "wing", "kinks", EACH, "leadingEdge"],
  ["geometry", "wing", "struts", EACH, "foot", 0],
  ["geometry", "wing", "struts", EACH, "head", 0],
  ["geometry", "fin", "span", EACH],
  ["geometry", "fin", "outline", EACH, 0],
  ["geometry", "fin", "hinge", EACH, 0],
  ["geometry", "nacelles", EACH, "stations", EACH, 0],
  ["geometry", "propellers", EACH, "x"],
  ["geometry", "wheels", EACH, "x"],
  ["geometry", "frames", EACH],
  ["geometry", "exhaust"],
  ["geometry", "windscreen", "x", EACH],
  ["geometry", "windscreen", "side", EACH, 0],
  ["geometry", "windows", EACH, EACH],
  ["geometry", "sideWindows", EACH, "x", EACH],
  ["geometry", "door", "x", EACH],
  ["geometry", "hatch", "x", EACH],
  ["points", EACH, "place", 0],
  ["stances", EACH, "place", 0],
  ["hazards", EACH, "place", 0],
  ["loading", "stations", EACH, "place", 0],
  ["loading", "tanks", EACH, "place", 0],
];

/** What is written closer than this is the noise of the arithmetic. */
const PER_METRE = 1e6;

/**
 * What has to be changed for everything that is drawn to stand so much further aft of the datum.
 *
 * @param by_m metres; what is no figure stays as it is
 */
export const alongEdits = (plain: Plain, by_m: number): readonly BookEdit[] =>
  by_m === 0
    ? []
    : ALONG.flatMap((way) => placesOf(plain, way)).flatMap((path): readonly BookEdit[] => {
        const x_m = valueAt(plain, path);
        if (typeof x_m !== "number") return [];
        return [{ set: path, to: Math.round((x_m + by_m) * PER_METRE) / PER_METRE + 0 }];
      });

/** The same done to keys and values. */
export function movedAlong<Drawn extends object>(drawn: Drawn, by_m: number): Drawn {
  const plain = drawn as Plain; // keys and values, where one that is not there may be `undefined`
  return alongEdits(plain, by_m).reduce(editPlain, plain) as Drawn; // figures in place of figures
}

function placesOf(plain: Plain, way: Way, from: BookPath = []): readonly BookPath[] {
  const [step, ...rest] = way;
  if (step === undefined) return [from];
  if (step !== EACH) return placesOf(plain, rest, [...from, step]);
  const list = valueAt(plain, from);
  return Array.isArray(list) ? list.flatMap((_, index) => placesOf(plain, rest, [...from, index])) : [];
}
