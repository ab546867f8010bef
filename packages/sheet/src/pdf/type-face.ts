import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

/** The sheet's one family in the weights it uses; each has a latin file and one for the rest of Europe's letters. */
export type Weight = "text" | "mid" | "bold" | "black";
const FILES: Readonly<Record<Weight, number>> = { text: 400, mid: 500, bold: 700, black: 800 };

const require = createRequire(import.meta.url);
const folder = join(dirname(require.resolve("@fontsource/atkinson-hyperlegible-next/package.json")), "files");
const fileOf = (weight: Weight, subset: "latin" | "latin-ext") =>
  readFileSync(join(folder, `atkinson-hyperlegible-next-${subset}-${FILES[weight]}-normal.woff`));

/** Registers every weight in a document; names are `text` and `text+` for the second file. */
export function registerTypeFace(document: PDFKit.PDFDocument): void {
  for (const weight of ["text", "mid", "bold", "black"] as const) {
    document.registerFont(weight, fileOf(weight, "latin"));
    document.registerFont(`${weight}+`, fileOf(weight, "latin-ext"));
  }
}

/** A stretch of text that one file can draw. */
export interface Run {
  readonly text: string;
  readonly font: string;
}

const IN_LATIN =
  /[\u0020-\u007e\u00a0-\u00ff\u0131\u0152\u0153\u02bb\u02bc\u02c6\u02da\u02dc\u2013\u2014\u2018-\u201a\u201c-\u201e\u2020-\u2022\u2026\u2030\u20ac\u2122\u2212]/u;
const IN_LATIN_EXT = /[\u0100-\u02af\u1e00-\u1eff\u20a0-\u20c0]/u;
// letters of formulas that the family does not have, as plain ones
const PLAIN: Readonly<Record<string, string>> = {
  "₀": "0",
  "₁": "1",
  "₂": "2",
  "≥": ">=",
  "≤": "<=",
  "·": "x",
  "\t": " ",
  "\n": " ",
};

/** Splits a text by the file that has its letters; what neither has is drawn as a question mark, never left out. */
export function runsOf(text: string, weight: Weight): Run[] {
  const runs: { text: string; font: string }[] = [];
  for (const written of text) {
    const letter = PLAIN[written] ?? written;
    const known = IN_LATIN.test(letter);
    const font = known || !IN_LATIN_EXT.test(letter) ? weight : `${weight}+`;
    const drawn = known || font !== weight ? letter : "?";
    const last = runs.at(-1);
    if (last?.font === font) last.text += drawn;
    else runs.push({ text: drawn, font });
  }
  return runs;
}
