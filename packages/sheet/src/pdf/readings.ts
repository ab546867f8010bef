import type { SheetReading } from "../sheet.ts";
import { drawMark } from "./mark.ts";
import { fitting, type Origin } from "./measures.ts";
import type { Pen } from "./pen.ts";

const ROW = 20;
const HEADING = 19;

function row(pen: Pen, reading: SheetReading, x: number, y: number, width: number): void {
  drawMark(pen.document, reading.status, x + width - 9, y + ROW / 2, 11);
  const margin = pen.width(reading.margin, { size: 9, weight: "bold" });
  pen.line(reading.margin, x + width - 19, y + 13, { size: 9, weight: "bold", align: "right" });
  const room = width - margin - 34;
  pen.line(reading.title, x + 6, y + 8.5, { size: fitting(pen, reading.title, room, 8.5), weight: "bold" });
  pen.line(reading.says, x + 6, y + 17, { size: Math.min(7.5, fitting(pen, reading.says, room, 8)) });
  pen.rule(x, y + ROW, x + width, y + ROW, 0.4);
}

/** How high all of them are in so many columns. */
export const readingsHeight = (rows: readonly SheetReading[], columns: number): number =>
  HEADING + Math.ceil(rows.length / columns) * ROW;

/** Draws the readings that fit, a column after the other, and returns those that do not. */
export function drawReadings(
  pen: Pen,
  rows: readonly SheetReading[],
  at: Origin,
  size: { readonly width: number; readonly height: number; readonly columns?: number },
): readonly SheetReading[] {
  const { width, height, columns = 1 } = size;
  pen.line("Readings", at.x + 6, at.y + 14, { size: 11, weight: "black" });
  pen.line("left", at.x + width - 19, at.y + 14, { size: 8.5, align: "right" });
  const top = at.y + HEADING;
  pen.rule(at.x, top, at.x + width, top, 0.75);
  if (rows.length === 0) pen.line("None taken", at.x + 6, top + 13, { size: 9 });
  const high = Math.floor((height - HEADING) / ROW);
  // the last row of a full block says how many more there are
  const room = high * columns;
  const shown = rows.length <= room ? rows : rows.slice(0, room - 1);
  const each = Math.ceil(shown.length / columns);
  const wide = width / columns;
  shown.forEach((reading, index) => {
    row(pen, reading, at.x + Math.floor(index / each) * wide, top + (index % each) * ROW, wide);
  });
  const bottom = top + Math.min(each, high) * ROW;
  for (let column = 1; column < columns; column += 1)
    pen.rule(at.x + column * wide, top, at.x + column * wide, bottom, 0.75);
  const rest = rows.slice(shown.length);
  if (rest.length > 0) {
    const y = top + (columns === 1 ? each : high - 1) * ROW;
    pen.line(`${rest.length} more overleaf`, at.x + width - wide + 6, y + 13, { size: 8.5, weight: "mid" });
  }
  return rest;
}
