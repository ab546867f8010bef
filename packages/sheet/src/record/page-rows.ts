import { MM, WIDTH } from "../pdf/measures.ts";
import type { Lettering, Pen } from "../pdf/pen.ts";
import type { Weight } from "../pdf/type-face.ts";

/** One paragraph of a cell. */
export interface Said {
  readonly text: string;
  readonly weight?: Weight;
}

export type Cell = readonly Said[];

/** Something of a known height that stands on one page. */
export interface Block {
  readonly height: number;
  /** Not the last on a page while something follows it. */
  readonly keepsWithNext?: boolean;
  draw(pen: Pen, x: number, y: number): void;
}

/** A heading, and what stands under it; said again at the top of each page that it goes on to. */
export interface Section {
  readonly heading: Block;
  readonly continued: Block;
  readonly rows: readonly Block[];
}

export const TEXT_SIZE = 9;
const LEADING = TEXT_SIZE * 1.3;
const PAD = 6;
const GAP = 8;
/** Rows of more lines are cut into blocks, so that no text is longer than a page, or leaves much of one empty. */
const MOST_LINES = 12;

/** Left edges of the columns of a row; the last ends at the right edge. */
export type Columns = readonly number[];
export const THREE: Columns = [0, 40 * MM, 140 * MM];
export const FOUR: Columns = [0, 52 * MM, 100 * MM, 156 * MM];

interface Line extends Said {
  readonly how: Lettering;
}

const linesOf = (pen: Pen, cell: Cell, width: number): readonly Line[] =>
  cell.flatMap(({ text, weight = "text" }) => {
    const how = { size: TEXT_SIZE, weight };
    return pen.wrap(text, width, how).map((line) => ({ text: line, weight, how }));
  });

/** A row of cells, each wrapped to its column; cut into several blocks where it is very long. */
export function rowBlocks(
  pen: Pen,
  columns: Columns,
  cells: readonly Cell[],
  how: { readonly keepsWithNext?: boolean; readonly rule?: number } = {},
): readonly Block[] {
  const wrapped = cells.map((cell, index) => {
    const left = columns[index] ?? 0;
    return linesOf(
      pen,
      cell,
      (columns[index + 1] ?? WIDTH) - left - (index + 1 < columns.length ? GAP : 0) - PAD,
    );
  });
  const most = Math.max(1, ...wrapped.map(({ length }) => length));
  const blocks: Block[] = [];
  for (let from = 0; from < most; from += MOST_LINES) {
    const isLast = from + MOST_LINES >= most;
    const count = Math.min(MOST_LINES, most - from);
    const height = count * LEADING + (isLast ? 5 : 0);
    blocks.push({
      height,
      keepsWithNext: isLast && how.keepsWithNext === true,
      draw(on, x, y) {
        wrapped.forEach((lines, index) => {
          lines.slice(from, from + count).forEach((line, nth) => {
            on.line(
              line.text,
              x + (columns[index] ?? 0) + PAD,
              y + TEXT_SIZE + 1.5 + nth * LEADING,
              line.how,
            );
          });
        });
        if (isLast && how.rule !== undefined) on.rule(x, y + height, x + WIDTH, y + height, how.rule);
      },
    });
  }
  return blocks;
}

/** A section's title on a line of its own, with room above it, and the heads of its columns under it. */
export function headingBlock(title: string, columns: Columns, heads: readonly string[], above = 0): Block {
  const top = above + 23;
  const height = top + (heads.length === 0 ? 0 : 13);
  return {
    height,
    keepsWithNext: true,
    draw(pen, x, y) {
      pen.line(title, x + PAD, y + top - 6, { size: 12.5, weight: "black" });
      pen.rule(x, y + top, x + WIDTH, y + top, 1.5);
      heads.forEach((head, index) => {
        pen.line(head, x + (columns[index] ?? 0) + PAD, y + top + 10, { size: 8 });
      });
      if (heads.length > 0) pen.rule(x, y + height, x + WIDTH, y + height, 0.5);
    },
  };
}

/** Rows that stand together: each that keeps with the next, and the one after it. */
function clumpsOf(rows: readonly Block[]): readonly (readonly Block[])[] {
  const clumps: Block[][] = [];
  let isOpen = false;
  for (const row of rows) {
    if (isOpen) clumps.at(-1)?.push(row);
    else clumps.push([row]);
    isOpen = row.keepsWithNext === true;
  }
  return clumps;
}

const heightOf = (blocks: readonly Block[]): number => blocks.reduce((sum, { height }) => sum + height, 0);

/** Blocks page by page: nothing is left out, and what belongs together is torn only where no page holds it. */
export function paginate(
  sections: readonly Section[],
  rooms: { readonly first: number; readonly next: number },
): readonly (readonly Block[])[] {
  const pages: Block[][] = [[]];
  let left = rooms.first;
  const place = (block: Block) => {
    pages.at(-1)?.push(block);
    left -= block.height;
  };
  const turn = () => {
    pages.push([]);
    left = rooms.next;
  };
  for (const { heading, continued, rows } of sections) {
    for (const [index, clump] of clumpsOf(rows).entries()) {
      const lead = index === 0 ? [heading] : [];
      const isUsed = left < rooms.next;
      if (isUsed && heightOf([...lead, ...clump]) > left) turn();
      if (index === 0) place(heading);
      else if (pages.at(-1)?.length === 0) place(continued);
      for (const [nth, row] of clump.entries()) {
        // nth 0 has its heading above it, and fits: no block is as high as a page
        if (nth > 0 && row.height > left) {
          turn();
          place(continued);
        }
        place(row);
      }
    }
  }
  return pages;
}
