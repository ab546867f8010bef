import type { Book } from "@witnessmark/book";
import type { Status } from "@witnessmark/ledger";
import type { Sheet, SheetNote, SheetReading } from "../sheet.ts";
import { drawAircraft } from "./draw-aircraft.ts";
import { drawMark } from "./mark.ts";
import type { Pen } from "./pen.ts";

const MM = 72 / 25.4;
/** The frame fits A4 and Letter alike. */
const FRAME = { width: 186 * MM, height: 252 * MM };
const HEAD = 27 * MM;
const MIDDLE = 88 * MM;
const FOOT = 53 * MM;
/** Between the two halves: room for a line on either side of the cut. */
const CUT = 36;
const GROUND = 12.5 * MM;
const ORDER: readonly Status[] = ["stop", "caution", "open", "clear"];

interface Origin {
  readonly x: number;
  readonly y: number;
}

function head(pen: Pen, sheet: Sheet, { x, y }: Origin): void {
  drawMark(pen.document, sheet.status, x + 14 * MM, y + HEAD / 2, 46);
  const left = x + 27 * MM;
  pen.line(sheet.title, left, y + 27, { size: fitting(pen, sheet.title, 96 * MM, 23), weight: "black" });
  pen.line(sheet.registration, left, y + 45, { size: 11.5, weight: "black" });
  const after = left + pen.width(`${sheet.registration}  `, { size: 11.5, weight: "black" });
  pen.line(`${sheet.type}, ${sheet.date}`, after, y + 45, { size: 11.5 });
  const flight =
    sheet.flight === null
      ? sheet.walk
      : `${sheet.flight.from} to ${sheet.flight.to}, off blocks ${sheet.flight.offBlocks}. ${sheet.walk}`;
  pen.line(flight, left, y + 61, { size: fitting(pen, flight, 96 * MM, 11) });
  if (sheet.remark !== undefined) {
    pen.line(sheet.remark, x, y - 5, { size: fitting(pen, sheet.remark, FRAME.width, 9.5), weight: "bold" });
  }
  const cell = 15.4 * MM;
  ORDER.forEach((status, index) => {
    const cx = x + FRAME.width - (4 - index) * cell;
    pen.rule(cx, y, cx, y + HEAD);
    drawMark(pen.document, status, cx + cell / 2, y + 20, 22);
    pen.line(String(sheet.counts[status]), cx + cell / 2, y + 50, {
      size: 15,
      weight: "black",
      align: "centre",
    });
    pen.line(status, cx + cell / 2, y + 65, { size: 9.5, align: "centre" });
  });
}

/** The size at which a text fits a width, never above the one asked for. */
const fitting = (pen: Pen, text: string, width: number, size: number) =>
  Math.min(size, (size * width) / Math.max(1, pen.width(text, { size, weight: "black" })));

const READING_ROW = 20;

function readingRow(pen: Pen, reading: SheetReading, x: number, y: number, width: number): void {
  drawMark(pen.document, reading.status, x + width - 9, y + READING_ROW / 2, 11);
  const margin = pen.width(reading.margin, { size: 9, weight: "bold" });
  pen.line(reading.margin, x + width - 19, y + 13, { size: 9, weight: "bold", align: "right" });
  const room = width - margin - 34;
  pen.line(reading.title, x + 6, y + 8.5, { size: fitting(pen, reading.title, room, 8.5), weight: "bold" });
  pen.line(reading.says, x + 6, y + 17, { size: Math.min(7.5, fitting(pen, reading.says, room, 8)) });
  pen.rule(x, y + READING_ROW, x + width, y + READING_ROW, 0.4);
}

/** Draws the rows that fit and returns those that do not. */
function readings(
  pen: Pen,
  rows: readonly SheetReading[],
  at: Origin,
  width: number,
  height: number,
): readonly SheetReading[] {
  pen.line("Readings", at.x + 6, at.y + 14, { size: 11, weight: "black" });
  pen.line("left", at.x + width - 19, at.y + 14, { size: 8.5, align: "right" });
  let y = at.y + 19;
  pen.rule(at.x, y, at.x + width, y, 0.75);
  const room = Math.floor((at.y + height - y) / READING_ROW);
  const shown = rows.length <= room ? rows : rows.slice(0, room - 1);
  for (const row of shown) {
    readingRow(pen, row, at.x, y, width);
    y += READING_ROW;
  }
  const rest = rows.slice(shown.length);
  if (rest.length > 0)
    pen.line(`${rest.length} more overleaf`, at.x + 6, y + 13, { size: 8.5, weight: "mid" });
  if (rows.length === 0) pen.line("None taken", at.x + 6, y + 13, { size: 9 });
  return rest;
}

const NOTE_TEXT_WIDTH = FRAME.width - 118;

const noteText = (note: SheetNote) =>
  note.reason === undefined ? note.says : `${note.says} Why: ${note.reason}`;

const noteHeight = (pen: Pen, note: SheetNote): number =>
  Math.max(
    20,
    pen.leadBlock(
      `${note.title}.`,
      noteText(note),
      { x: 0, y: 0, width: NOTE_TEXT_WIDTH, size: 9.5 },
      false,
    ) + 10,
  );

function noteRow(pen: Pen, note: SheetNote, x: number, y: number, width: number): number {
  pen.document
    .circle(x + 12, y + 10, 6.2)
    .lineWidth(0.8)
    .stroke("black");
  pen.line(String(note.number), x + 12, y + 13, { size: 8, weight: "bold", align: "centre" });
  drawMark(pen.document, note.status, x + 31, y + 10, 13);
  pen.line(note.margin, x + width - 6, y + 13, { size: 9.5, weight: "bold", align: "right" });
  pen.leadBlock(`${note.title}.`, noteText(note), {
    x: x + 45,
    y: y + 3.5,
    width: NOTE_TEXT_WIDTH,
    size: 9.5,
  });
  const height = noteHeight(pen, note);
  pen.rule(x, y + height, x + width, y + height, 0.5);
  return height;
}

/** Draws the notes that fit and returns those that do not. */
function notes(
  pen: Pen,
  all: readonly SheetNote[],
  at: Origin,
  width: number,
  bottom: number,
): readonly SheetNote[] {
  pen.line("Not as the book says, close to a limit, or not known", at.x + 6, at.y + 14, {
    size: 11,
    weight: "black",
  });
  let y = at.y + 20;
  pen.rule(at.x, y, at.x + width, y, 0.75);
  if (all.length === 0) pen.line("Nothing", at.x + 6, y + 14, { size: 10 });
  for (const [index, note] of all.entries()) {
    const last = index === all.length - 1;
    if (y + noteHeight(pen, note) + (last ? 0 : 16) > bottom) {
      pen.line(`${all.length - index} more overleaf`, at.x + 6, y + 12, { size: 9.5, weight: "bold" });
      return all.slice(index);
    }
    y += noteRow(pen, note, at.x, y, width);
  }
  return [];
}

function field(pen: Pen, label: string, value: string, at: Origin, width: number): void {
  pen.line(label, at.x + 6, at.y + 11, { size: 8.5 });
  pen.line(value, at.x + 6, at.y + 25, { size: fitting(pen, value, width - 12, 11), weight: "black" });
}

function foot(pen: Pen, sheet: Sheet, { x, y }: Origin): void {
  const left = 96 * MM;
  const right = x + left;
  pen.rule(right, y, right, y + FOOT, 1.2);
  let below = pen.block(sheet.holds, x + 6, y + 6, left - 12, { size: 11, weight: "black" }, 1.2) + 4;
  pen.line("Void at once when", x + 6, below + 9, { size: 9, weight: "mid" });
  below += 14;
  sheet.voidWhen.forEach((when, index) => {
    const cx = x + 6 + (index % 2) * (left / 2);
    const cy = below + Math.floor(index / 2) * 14;
    pen.box(cx, cy, 8, 8, 0.8);
    pen.line(when, cx + 13, cy + 7.5, { size: 9.5 });
  });
  const caution = below + Math.ceil(sheet.voidWhen.length / 2) * 14 + 3;
  const height = pen.wrap(sheet.caution, left - 28, { size: 9.5, weight: "bold" }).length * 12.4 + 8;
  pen.box(x + 6, caution, left - 12, height, 1.4);
  pen.block(sheet.caution, x + 14, caution + 4, left - 28, { size: 9.5, weight: "bold" });
  signature(pen, sheet, { x: right, y }, FRAME.width - left);
}

function signature(pen: Pen, sheet: Sheet, { x, y }: Origin, width: number): void {
  const signed = sheet.signature;
  const row = FOOT / 4;
  for (const index of [1, 2, 3]) pen.rule(x, y + index * row, x + width, y + index * row);
  if (signed === null) field(pen, "Pilot in command", "Not signed", { x, y }, width);
  else {
    field(pen, `Signed by, ${signed.role}`, signed.by, { x, y }, width);
    pen.rule(x + width * 0.55, y + row, x + width * 0.55, y + 2 * row);
    field(pen, "Signed", signed.at, { x, y: y + row }, width * 0.55);
    field(
      pen,
      signed.keySigned ? "Decision" : "Decision, no key on this phone",
      signed.hash,
      { x: x + width * 0.55, y: y + row },
      width * 0.45,
    );
  }
  field(pen, "Rests on", sheet.restsOn, { x, y: y + 2 * row }, width);
  pen.block(sheet.notice, x + 6, y + 3 * row + 4, width - 12, { size: 8.5 }, 1.2);
}

/** The half that stays behind; the stripe crosses the cut, so the two show that they belong together. */
function groundHalf(pen: Pen, sheet: Sheet, { x, y }: Origin): void {
  const cut = y + CUT / 2;
  pen.document.rect(x + 22 * MM, y, 11, CUT).fill("black");
  pen.line("Take this half with you.", x + 29 * MM, cut - 6, { size: 8.5 });
  pen.rule(x, cut, x + FRAME.width, cut, 0.6, 3);
  pen.line(
    "Leave this half on the ground. The stripe shows that the two belong together.",
    x + 29 * MM,
    cut + 13,
    { size: 8.5 },
  );
  const top = y + CUT;
  const height = GROUND;
  pen.box(x, top, FRAME.width, height, 1.5);
  const cells: readonly [string, string, number][] = [
    ["Aircraft", `${sheet.registration} ${sheet.type}`, 0.26],
    ["To", sheet.flight?.to ?? "not said", 0.14],
    ["Off blocks", sheet.flight?.offBlocks ?? "not said", 0.22],
    ["Pilot", sheet.signature?.by ?? "not signed", 0.2],
    ["Decision", sheet.signature?.hash ?? "not signed", 0.18],
  ];
  let at = x;
  for (const [label, value, share] of cells) {
    const width = share * FRAME.width;
    if (at > x) pen.rule(at, top, at, top + height);
    field(pen, label, value, { x: at, y: top + 2 }, width);
    at += width;
  }
}

/** Draws the sheet on as many pages as it needs: nothing that it says is left out, nothing is shrunk to fit. */
export function drawSheet(pen: Pen, sheet: Sheet, book: Book, addPage: () => void): void {
  const { page } = pen.document;
  const x = (page.width - FRAME.width) / 2;
  const y = Math.min(12 * MM, (page.height - FRAME.height) / 2);
  const frameHeight = FRAME.height - CUT - GROUND;
  head(pen, sheet, { x, y });
  const middle = y + HEAD;
  pen.rule(x, middle, x + FRAME.width, middle, 1.2);
  const drawingWidth = 98 * MM;
  drawAircraft(pen, book, sheet.marks, { x, y: middle, width: drawingWidth, height: MIDDLE });
  pen.rule(x + drawingWidth, middle, x + drawingWidth, middle + MIDDLE);
  const moreReadings = readings(
    pen,
    sheet.readings,
    { x: x + drawingWidth, y: middle },
    FRAME.width - drawingWidth,
    MIDDLE,
  );
  const notesTop = middle + MIDDLE;
  pen.rule(x, notesTop, x + FRAME.width, notesTop, 1.2);
  const footTop = y + frameHeight - FOOT;
  const moreNotes = notes(pen, sheet.notes, { x, y: notesTop }, FRAME.width, footTop);
  pen.rule(x, footTop, x + FRAME.width, footTop, 1.2);
  foot(pen, sheet, { x, y: footTop });
  pen.box(x, y, FRAME.width, frameHeight);
  groundHalf(pen, sheet, { x, y: y + frameHeight });
  drawOverleaf(pen, sheet, moreNotes, moreReadings, addPage, { x, y });
}

function drawOverleaf(
  pen: Pen,
  sheet: Sheet,
  moreNotes: readonly SheetNote[],
  moreReadings: readonly SheetReading[],
  addPage: () => void,
  { x, y }: Origin,
): void {
  let restOfNotes = moreNotes;
  let restOfReadings = moreReadings;
  while (restOfNotes.length > 0 || restOfReadings.length > 0) {
    addPage();
    const title = `${sheet.registration}, ${sheet.date}, decision ${sheet.signature?.hash ?? "not signed"}, continued`;
    pen.line(title, x + 6, y + 15, { size: 10, weight: "bold" });
    const top = y + 22;
    const height = FRAME.height - 22;
    pen.box(x, top, FRAME.width, height);
    if (restOfNotes.length > 0)
      restOfNotes = notes(pen, restOfNotes, { x, y: top }, FRAME.width, top + height);
    else restOfReadings = readings(pen, restOfReadings, { x, y: top }, FRAME.width, height);
  }
}
