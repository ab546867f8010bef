import type { Status } from "@witnessmark/ledger";
import type { Sheet } from "../sheet.ts";
import { drawMark } from "./mark.ts";
import { fitting, MM, type Origin, WIDTH } from "./measures.ts";
import type { Pen } from "./pen.ts";

export const HEAD = 73;
const ORDER: readonly Status[] = ["stop", "caution", "open", "clear"];
const CELL = 14.2 * MM;
const LEFT = 26 * MM;
const ROOM = WIDTH - LEFT - 4 * CELL - 6;

/** What is decided, of what aircraft and flight, and how many of each status there are. */
export function drawHead(pen: Pen, sheet: Sheet, { x, y }: Origin): void {
  const { flight, registration } = sheet;
  drawMark(pen.document, sheet.status, x + 13 * MM, y + HEAD / 2, 51);
  const left = x + LEFT;
  pen.line(sheet.title, left, y + 28, { size: fitting(pen, sheet.title, ROOM, 23), weight: "black" });
  const aircraft = `${registration}  ${sheet.type}, ${sheet.date}`;
  const size = fitting(pen, aircraft, ROOM, 10.5);
  pen.line(registration, left, y + 43, { size, weight: "black" });
  const after = left + pen.width(`${registration}  `, { size, weight: "black" });
  pen.line(`${sheet.type}, ${sheet.date}`, after, y + 43, { size });
  const rules = flight?.figures == null ? "" : `, ${flight.figures.rules}`;
  const said =
    flight === null
      ? "No flight named"
      : `${flight.from} to ${flight.to}, off blocks ${flight.offBlocks}${rules}`;
  pen.line(said, left, y + 57, { size: fitting(pen, said, ROOM * 1.06, 10.5) });
  if (sheet.remark !== undefined) {
    pen.line(sheet.remark, x, y - 5, { size: fitting(pen, sheet.remark, WIDTH, 9.5), weight: "bold" });
  }
  ORDER.forEach((status, index) => {
    const cx = x + WIDTH - (4 - index) * CELL;
    pen.rule(cx, y, cx, y + HEAD);
    drawMark(pen.document, status, cx + CELL / 2, y + 18, 20);
    const count = String(sheet.counts[status]);
    pen.line(count, cx + CELL / 2, y + 46, { size: 15, weight: "black", align: "centre" });
    pen.line(status, cx + CELL / 2, y + 60, { size: 9.5, align: "centre" });
  });
}
