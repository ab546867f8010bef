import type { Book } from "@witnessmark/book";
import { ended } from "../ended.ts";
import type { SheetFigures } from "../flight/sheet-figures.ts";
import type { Sheet, SheetNote, SheetReading } from "../sheet.ts";
import { type Block, drawBlocks, heightOf } from "./block.ts";
import { drawAircraft } from "./draw-aircraft.ts";
import { briefBlocks } from "./draw-brief.ts";
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
import { alsoOpenBlocks, paragraph } from "./paragraph.ts";
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
  /** What else is open by name. */
  readonly alsoOpen: readonly Block[];
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
  const why = sheet.why === undefined ? [] : [paragraph(pen, "Why:", ended(sheet.why))];
  drawBlocks(why, { x, y: middle + middleHeight }, y + height);
  const notesTop = middle + middleHeight + heightOf(why);
  acrossAt(pen, at, middle + middleHeight);
  if (why.length > 0) pen.rule(x, notesTop, x + WIDTH, notesTop, 0.5);
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
  const also = alsoOpenBlocks(pen, sheet.alsoOpen);
  const isAlsoHere = notes.rest.length === 0 && notes.bottom + heightOf(also) <= numbersTop;
  const { bottom } = isAlsoHere ? drawBlocks(also, { x, y: notes.bottom }, numbersTop) : notes;
  if (!isAlsoHere && also.length > 0)
    pen.line("More of what is open overleaf", x + WIDTH - 6, notesTop + 14, { size: 9.5, align: "right" });
  const rest = {
    numbers: split?.overleaf ?? null,
    notes: notes.rest,
    alsoOpen: isAlsoHere ? [] : also,
  };
  const room = numbersTop - bottom;
  const isRoom =
    figures !== null &&
    notes.rest.length === 0 &&
    isAlsoHere &&
    readingsHeight(moreReadings, COLUMNS) <= room;
  if (!isRoom || moreReadings.length === 0) return { ...rest, readings: moreReadings };
  const readingsTop = { x, y: bottom };
  acrossAt(pen, at, bottom);
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
    partedNumbers(pen, figures, height - Math.max(least, notesHeight(pen, notes, 1))) ??
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

/** Less room than this is left to the next page. */
const LEAST_OVERLEAF = 80;

function drawOverleaf(
  pen: Pen,
  sheet: Sheet,
  first: Rest,
  addPage: () => void,
  { x, y }: Origin,
  height: number,
): void {
  let { numbers, notes, alsoOpen, readings } = first;
  const figures = sheet.flight?.figures ?? null;
  let brief = figures === null ? [] : briefBlocks(pen, figures.brief);
  while (
    numbers !== null ||
    brief.length > 0 ||
    notes.length > 0 ||
    alsoOpen.length > 0 ||
    readings.length > 0
  ) {
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
    const drawnBrief = drawBlocks(brief, { x, y: top }, bottom);
    if (drawnBrief.bottom > top) acrossAt(pen, { x, y }, drawnBrief.bottom);
    ({ rest: brief, bottom: top } = drawnBrief);
    if (brief.length > 0) continue;
    if (notes.length > 0 && bottom - top >= LEAST_OVERLEAF) {
      const drawn = drawNotes(pen, notes, { x, y: top }, bottom);
      notes = drawn.rest;
      top = drawn.bottom;
    }
    if (notes.length > 0) continue;
    ({ rest: alsoOpen, bottom: top } = drawBlocks(alsoOpen, { x, y: top }, bottom));
    if (alsoOpen.length > 0 || readings.length === 0 || bottom - top < LEAST_OVERLEAF) continue;
    if (top > y + 22) acrossAt(pen, { x, y }, top);
    readings = drawReadings(pen, readings, { x, y: top }, { width: WIDTH, height: bottom - top, columns: 2 });
  }
}
