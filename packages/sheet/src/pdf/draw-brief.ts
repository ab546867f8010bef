import type { SheetAboard, SheetBrief, SheetField, SheetSaid } from "../flight/brief.ts";
import type { Block } from "./block.ts";
import { WIDTH } from "./measures.ts";
import { paragraph } from "./paragraph.ts";
import type { Pen } from "./pen.ts";

const SIZE = 9.5;
const HEADING = 19;
const ROW = 14;
const LEADING = 12.4;
const BETWEEN = 14;
const WHERE = 0.3;

/** Names and what was said of each, one after the other over the width; returns how high they are. */
function said(pen: Pen, all: readonly SheetSaid[], x: number, y: number, isDrawn: boolean): number {
  const right = x + WIDTH - 7;
  let at = x + 7;
  let base = y + 10;
  for (const { label, value } of all) {
    const wide = pen.width(`${label} `, { size: SIZE }) + pen.width(value, { size: SIZE, weight: "bold" });
    if (at > x + 7 && at + wide > right) {
      at = x + 7;
      base += LEADING;
    }
    if (isDrawn) {
      pen.line(label, at, base, { size: SIZE });
      const after = at + pen.width(`${label} `, { size: SIZE });
      pen.line(value, after, base, { size: SIZE, weight: "bold" });
    }
    at += wide + BETWEEN;
  }
  return base - y + 4;
}

const heading = (pen: Pen, text: string, x: number, y: number): void =>
  pen.line(text, x + 7, y + 13, { size: 10.5, weight: "black" });

function tripBlock(pen: Pen, trip: readonly SheetSaid[]): Block {
  return {
    height: HEADING + said(pen, trip, 0, 0, false) + 3,
    draw: ({ x, y }) => {
      heading(pen, "The flight", x, y);
      said(pen, trip, x, y + HEADING - 2, true);
    },
  };
}

function aboardBlock(pen: Pen, { where, what, much }: SheetAboard): Block {
  const whereWidth = WIDTH * WHERE - 14;
  const muchWidth = pen.width(much, { size: SIZE, weight: "bold" });
  const wheres = pen.wrap(where, whereWidth, { size: SIZE });
  const whats = pen.wrap(what, WIDTH * (1 - WHERE) - muchWidth - 21, { size: SIZE });
  return {
    height: ROW + (Math.max(wheres.length, whats.length) - 1) * LEADING,
    draw: ({ x, y }) => {
      pen.rule(x, y, x + WIDTH, y, 0.5);
      const column = (lines: readonly string[], left: number): void =>
        lines.forEach((line, index) => {
          pen.line(line, left, y + 10.3 + index * LEADING, { size: SIZE });
        });
      column(wheres, x + 7);
      column(whats, x + WIDTH * WHERE);
      pen.line(much, x + WIDTH - 7, y + 10.3, { size: SIZE, weight: "bold", align: "right" });
    },
  };
}

function aboardBlocks(pen: Pen, aboard: readonly SheetAboard[]): readonly Block[] {
  if (aboard.length === 0) return [paragraph(pen, "Aboard.", "Nobody said who and what is aboard.")];
  const head: Block = {
    height: HEADING,
    draw: ({ x, y }) => {
      pen.rule(x, y, x + WIDTH, y, 0.75);
      heading(pen, "Aboard", x, y);
      pen.line("who or what", x + WIDTH * WHERE, y + 13, { size: 8.5 });
      pen.line("how much", x + WIDTH - 7, y + 13, { size: 8.5, align: "right" });
    },
  };
  return [head, ...aboard.map((one) => aboardBlock(pen, one))];
}

/** A report may be as long as it likes: so many lines of it stay together. */
const TOGETHER = 20;

function reportBlocks(pen: Pen, texts: readonly string[]): readonly Block[] {
  const lines = texts.flatMap((text) => pen.wrap(text, WIDTH - 14, { size: SIZE }));
  return Array.from({ length: Math.ceil(lines.length / TOGETHER) }, (_, part): Block => {
    const here = lines.slice(part * TOGETHER, (part + 1) * TOGETHER);
    return {
      height: here.length * LEADING + 3,
      draw: ({ x, y }) =>
        here.forEach((line, index) => {
          pen.line(line, x + 7, y + 9 + index * LEADING, { size: SIZE });
        }),
    };
  });
}

function fieldBlocks(pen: Pen, { title, used, reports }: SheetField): readonly Block[] {
  const texts =
    reports.length === 0
      ? ["No report, and nothing was read or told."]
      : reports.map(({ text, taken }) => `${text} Taken ${taken}.`);
  const air: Block = {
    height: HEADING + said(pen, used, 0, 0, false),
    draw: ({ x, y }) => {
      pen.rule(x, y, x + WIDTH, y, 0.75);
      heading(pen, title, x, y);
      said(pen, used, x, y + HEADING - 2, true);
    },
  };
  return [air, ...reportBlocks(pen, texts)];
}

/** What was planned and counted with: the trip, who and what is aboard, the air at each field and its reports. */
export const briefBlocks = (pen: Pen, { trip, aboard, fields, units }: SheetBrief): readonly Block[] => [
  tripBlock(pen, trip),
  ...aboardBlocks(pen, aboard),
  ...fields.flatMap((field) => fieldBlocks(pen, field)),
  paragraph(pen, "Units.", units),
];
