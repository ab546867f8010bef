import { ended } from "../ended.ts";
import type { SheetNote } from "../sheet.ts";
import { drawMark } from "./mark.ts";
import { type Origin, WIDTH } from "./measures.ts";
import type { Pen } from "./pen.ts";

/** Beside the note's margin, which stands at the right. */
const textWidth = (pen: Pen, { margin }: SheetNote): number =>
  WIDTH - 45 - 20 - pen.width(margin, { size: 9.5, weight: "bold" });
const HEADING = 20;

const textOf = ({ says, reason }: SheetNote) =>
  reason === undefined ? ended(says) : `${ended(says)} Why: ${ended(reason)}`;

const noteHeight = (pen: Pen, note: SheetNote): number =>
  Math.max(
    20,
    pen.leadBlock(
      ended(note.title),
      textOf(note),
      { x: 0, y: 0, width: textWidth(pen, note), size: 9.5 },
      false,
    ) + 10,
  );

function noteRow(pen: Pen, note: SheetNote, { x, y }: Origin): number {
  pen.document
    .circle(x + 12, y + 10, 6.2)
    .lineWidth(0.8)
    .stroke("black");
  pen.line(String(note.number), x + 12, y + 13, { size: 8, weight: "bold", align: "centre" });
  drawMark(pen.document, note.status, x + 31, y + 10, 13);
  pen.line(note.margin, x + WIDTH - 6, y + 13, { size: 9.5, weight: "bold", align: "right" });
  pen.leadBlock(ended(note.title), textOf(note), {
    x: x + 45,
    y: y + 3.5,
    width: textWidth(pen, note),
    size: 9.5,
  });
  const height = noteHeight(pen, note);
  pen.rule(x, y + height, x + WIDTH, y + height, 0.5);
  return height;
}

/** The heading, and the worst note where it stops the flight: so much must stand on the first page. */
export const leastNotesHeight = (pen: Pen, [worst]: readonly SheetNote[]): number =>
  HEADING + 17 + (worst?.status === "stop" ? noteHeight(pen, worst) : 0);

/** The heading, and so many notes at most; what follows of them is told below. */
export const notesHeight = (pen: Pen, notes: readonly SheetNote[], most: number): number =>
  HEADING +
  (notes.length > most ? 17 : 0) +
  notes.slice(0, most).reduce((height, note) => height + noteHeight(pen, note), 0);

export interface NotesDrawn {
  readonly rest: readonly SheetNote[];
  /** Below the last that was drawn. */
  readonly bottom: number;
}

/** Draws the notes that fit above a bottom and returns those that do not. */
export function drawNotes(pen: Pen, all: readonly SheetNote[], at: Origin, bottom: number): NotesDrawn {
  const { x } = at;
  pen.line("Not as the book says, close to a limit, or not known", x + 6, at.y + 14, {
    size: 11,
    weight: "black",
  });
  let y = at.y + HEADING;
  if (all.length === 0) {
    pen.line("Nothing", x + 330, at.y + 14, { size: 10 });
    return { rest: [], bottom: y };
  }
  if (y + 16 > bottom) {
    pen.line(`${all.length} overleaf`, x + WIDTH - 6, at.y + 14, {
      size: 9.5,
      weight: "bold",
      align: "right",
    });
    return { rest: all, bottom: y };
  }
  pen.rule(x, y, x + WIDTH, y, 0.75);
  for (const [index, note] of all.entries()) {
    const last = index === all.length - 1;
    if (y + noteHeight(pen, note) + (last ? 0 : 16) > bottom) {
      pen.line(`${all.length - index} more overleaf`, x + 6, y + 12, { size: 9.5, weight: "bold" });
      return { rest: all.slice(index), bottom: y + 16 };
    }
    y += noteRow(pen, note, { x, y });
  }
  return { rest: [], bottom: y };
}
