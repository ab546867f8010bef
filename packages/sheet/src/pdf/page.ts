import type { Book } from "@witnessmark/book";
import type { SheetFigures } from "../flight/sheet-figures.ts";
import type { Sheet, SheetNote, SheetReading } from "../sheet.ts";
import { drawAircraft } from "./draw-aircraft.ts";
import {
  drawMass,
  drawNumbers,
  massHeight,
  type NumbersPart,
  numbersHeight,
  partedNumbers,
  wholeNumbers,
} from "./draw-figures.ts";
import { CUT, drawFoot, drawGroundHalf, footHeight, GROUND } from "./foot.ts";
import { drawHead, HEAD } from "./head.ts";
import { MARGIN, MM, type Origin, WIDTH } from "./measures.ts";
import { drawNotes, leastNotesHeight, notesHeight } from "./notes.ts";
import type { Pen } from "./pen.ts";
import { drawReadings, readingsHeight } from "./readings.ts";

const DRAWING = 102 * MM;
const BESIDE = WIDTH - DRAWING;
/** The drawing is at least so high; without numbers, readings stand beside it. */
const MIDDLE = 198;
const MIDDLE_WITHOUT_CHART = 166;
const MIDDLE_WITHOUT = 88 * MM;
const UNPLANNED = 18;
const COLUMNS = 3;

/** What did not fit on the first page. */
interface Rest {
  readonly numbers: NumbersPart | null;
  readonly notes: readonly SheetNote[];
  readonly readings: readonly SheetReading[];
}

/** Draws the sheet on as many pages as it needs: nothing that it says is left out, nothing is shrunk to fit. */
export function drawSheet(pen: Pen, sheet: Sheet, book: Book, addPage: () => void): void {
  const { page } = pen.document;
  const x = (page.width - WIDTH) / 2;
  const at = { x, y: MARGIN };
  const height = page.height - 2 * MARGIN;
  const rest = firstPage(pen, sheet, book, at, height - CUT - GROUND);
  drawGroundHalf(pen, sheet, { x, y: MARGIN + height - CUT - GROUND });
  drawOverleaf(pen, sheet, rest, addPage, at, height);
}

const acrossAt = (pen: Pen, { x }: Origin, y: number): void => pen.rule(x, y, x + WIDTH, y, 1.5);

function firstPage(pen: Pen, sheet: Sheet, book: Book, at: Origin, height: number): Rest {
  const { x, y } = at;
  const figures = sheet.flight?.figures ?? null;
  drawHead(pen, sheet, at);
  const middle = y + HEAD;
  const middleHeight =
    figures === null
      ? MIDDLE_WITHOUT
      : Math.max(
          figures.mass.envelope === undefined ? MIDDLE_WITHOUT_CHART : MIDDLE,
          massHeight(pen, figures.mass, BESIDE),
        );
  acrossAt(pen, at, middle);
  drawAircraft(pen, book, sheet.marks, { x, y: middle, width: DRAWING, height: middleHeight });
  pen.rule(x + DRAWING, middle, x + DRAWING, middle + middleHeight);
  const beside = { x: x + DRAWING, y: middle };
  if (figures !== null) drawMass(pen, figures.mass, beside, BESIDE);
  const moreReadings =
    figures === null
      ? drawReadings(pen, sheet.readings, beside, { width: BESIDE, height: middleHeight })
      : sheet.readings;
  const notesTop = middle + middleHeight;
  acrossAt(pen, at, notesTop);
  const footTop = y + height - footHeight(pen, sheet);
  const split = figures === null ? null : numbersIn(pen, sheet, figures, footTop - notesTop);
  const here = split?.here ?? null;
  const numbersTop = footTop - (here === null ? UNPLANNED : numbersHeight(pen, here));
  const notes = drawNotes(pen, sheet.notes, { x, y: notesTop }, numbersTop);
  acrossAt(pen, at, numbersTop);
  if (figures === null) unplanned(pen, sheet, { x, y: numbersTop });
  else if (here !== null) drawNumbers(pen, here, { x, y: numbersTop });
  else
    pen.line("The numbers, and where it tips over: overleaf", x + 7, numbersTop + 12.5, {
      size: 10.5,
      weight: "black",
    });
  acrossAt(pen, at, footTop);
  drawFoot(pen, sheet, { x, y: footTop });
  pen.box(x, y, WIDTH, height);
  const rest = { numbers: split?.overleaf ?? null, notes: notes.rest };
  const room = numbersTop - notes.bottom;
  const isRoom = figures !== null && notes.rest.length === 0 && readingsHeight(moreReadings, COLUMNS) <= room;
  if (!isRoom || moreReadings.length === 0) return { ...rest, readings: moreReadings };
  const readingsTop = { x, y: notes.bottom };
  acrossAt(pen, at, notes.bottom);
  return {
    ...rest,
    readings: drawReadings(pen, moreReadings, readingsTop, { width: WIDTH, height: room, columns: COLUMNS }),
  };
}

/** Numbers that are clear leave room for so many notes. */
const NOTES_FIRST = 2;

/** What of the numbers stands on the first page, of what notes and numbers have together, and what follows. */
function numbersIn(
  pen: Pen,
  { notes }: Sheet,
  figures: SheetFigures,
  height: number,
): { readonly here: NumbersPart | null; readonly overleaf: NumbersPart | null } {
  const whole = wholeNumbers(figures);
  const least = leastNotesHeight(pen, notes);
  const wanted = Math.max(least, notesHeight(pen, notes, NOTES_FIRST));
  if (wanted + numbersHeight(pen, whole) <= height) return { here: whole, overleaf: null };
  return (
    partedNumbers(pen, figures, height - wanted) ??
    partedNumbers(pen, figures, height - least) ?? { here: null, overleaf: whole }
  );
}

/** Nothing planned is nothing known: the sheet says so where its numbers would be. */
function unplanned(pen: Pen, sheet: Sheet, { x, y }: Origin): void {
  const why = sheet.flight === null ? "no flight is named" : "the flight is named and not planned";
  const lead = "The numbers: open.";
  pen.line(lead, x + 7, y + 12.5, { size: 10, weight: "black" });
  const after = x + 7 + pen.width(`${lead} `, { size: 10, weight: "black" });
  pen.line(`Load, fuel, runways and weather were not worked out, ${why}.`, after, y + 12.5, { size: 9.5 });
}

function drawOverleaf(
  pen: Pen,
  sheet: Sheet,
  first: Rest,
  addPage: () => void,
  { x, y }: Origin,
  height: number,
): void {
  let { numbers, notes, readings } = first;
  while (numbers !== null || notes.length > 0 || readings.length > 0) {
    addPage();
    const title = `${sheet.registration}, ${sheet.date}, decision ${sheet.signature?.hash ?? "not signed"}, continued`;
    pen.line(title, x + 6, y + 15, { size: 10, weight: "bold" });
    const bottom = y + height;
    let top = y + 22;
    pen.box(x, top, WIDTH, height - 22);
    if (numbers !== null) {
      drawNumbers(pen, numbers, { x, y: top });
      top += numbersHeight(pen, numbers);
      acrossAt(pen, { x, y }, top);
      numbers = null;
    }
    if (notes.length > 0) {
      const drawn = drawNotes(pen, notes, { x, y: top }, bottom);
      notes = drawn.rest;
      top = drawn.bottom;
    }
    if (notes.length > 0 || readings.length === 0 || bottom - top < 80) continue;
    if (top > y + 22) acrossAt(pen, { x, y }, top);
    readings = drawReadings(pen, readings, { x, y: top }, { width: WIDTH, height: bottom - top, columns: 2 });
  }
}
