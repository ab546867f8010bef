import { ended } from "../ended.ts";
import type { SheetAlsoOpen } from "../sheet.ts";
import type { Block } from "./block.ts";
import { WIDTH } from "./measures.ts";
import type { Pen } from "./pen.ts";

const SIZE = 9.5;
const AROUND = 5;
/** So many names at once: however long they are, a page has room for them. */
const PER_PIECE = 20;

/** A paragraph across the page that begins bold, under a rule. */
export function paragraph(pen: Pen, lead: string, text: string, size = SIZE): Block {
  const set = (x: number, y: number, draw: boolean): number =>
    pen.leadBlock(lead, text, { x: x + 7, y: y + AROUND - 1, width: WIDTH - 14, size }, draw);
  return {
    height: set(0, 0, false) + 2 * AROUND,
    draw: ({ x, y }) => {
      pen.rule(x, y, x + WIDTH, y, 0.5);
      set(x, y, true);
    },
  };
}

/** What else is open by name, in pieces that any page has room for. */
export const alsoOpenBlocks = (pen: Pen, alsoOpen: readonly SheetAlsoOpen[]): readonly Block[] =>
  alsoOpen.flatMap(({ titles, reason }) => {
    const pieces = Array.from({ length: Math.ceil(titles.length / PER_PIECE) }, (_, piece) =>
      titles.slice(piece * PER_PIECE, (piece + 1) * PER_PIECE),
    );
    return [
      ...pieces.map((piece) => paragraph(pen, "Also open:", ended(piece.join("; ")))),
      ...(reason === undefined ? [] : [paragraph(pen, "Why, for all of these:", ended(reason))]),
    ];
  });
