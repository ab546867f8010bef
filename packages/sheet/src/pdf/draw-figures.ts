import type { SheetMass, SheetMassRow } from "../flight/mass-and-balance.ts";
import type { SheetNumber } from "../flight/number-line.ts";
import { partNumbers } from "../flight/part-numbers.ts";
import type { SheetFigures } from "../flight/sheet-figures.ts";
import { drawEnvelope } from "./draw-envelope.ts";
import { drawMark } from "./mark.ts";
import { fitting, MM, type Origin, WIDTH } from "./measures.ts";
import type { Pen } from "./pen.ts";

const HEADING = 19;
const ROW = 15;
const SIZE = 9.5;
const WHY = 8.5;
const WHY_LEADING = 10.6;

const heading = (pen: Pen, text: string, { x, y }: Origin): void =>
  pen.line(text, x + 7, y + 13.5, { size: 10.5, weight: "black" });

/** What is left, bold, with its mark at the right edge. */
function leftWithMark(pen: Pen, row: Pick<SheetMassRow, "left" | "status">, right: number, y: number): void {
  drawMark(pen.document, row.status, right - 12, y + ROW / 2, 12);
  pen.line(row.left, right - 22, y + 10.8, { size: SIZE, weight: "black", align: "right" });
}

/** The reasons for which the masses are open stand where the chart would; each is told in the notes as well. */
const REASONS = 9;

function openReasons(pen: Pen, { open }: SheetMass, width: number): readonly string[] {
  const text = open.length === 0 ? "Not known where the load lies." : `Open. Not known: ${open.join("; ")}.`;
  const lines = pen.wrap(text, width - 14, { size: SIZE });
  return lines.length <= REASONS ? lines : [...lines.slice(0, REASONS - 1), "More of it in the notes."];
}

const CHART = 119;

/** How high mass and balance are; `drawMass` draws as much. */
export function massHeight(pen: Pen, mass: SheetMass, width: number): number {
  const isOpen = mass.envelope === undefined || mass.open.length > 0;
  const reasons = isOpen ? openReasons(pen, mass, width).length * 12.4 + 6 : 0;
  return HEADING + (mass.envelope === undefined ? 0 : CHART) + reasons + mass.rows.length * ROW;
}

/** Mass and balance: the envelope with the flight in it, and its masses of what they may be. */
export function drawMass(pen: Pen, mass: SheetMass, at: Origin, width: number): void {
  const { x } = at;
  heading(pen, "Mass and balance", at);
  let y = at.y + HEADING;
  if (mass.envelope !== undefined) {
    drawEnvelope(pen, mass.envelope, { x, y }, width);
    y += CHART;
  }
  if (mass.envelope === undefined || mass.open.length > 0) {
    for (const line of openReasons(pen, mass, width)) {
      y += 12.4;
      pen.line(line, x + 7, y - 3.5, { size: SIZE });
    }
    y += 6;
  }
  for (const row of mass.rows) {
    pen.rule(x, y, x + width, y, 0.5);
    pen.line(row.what, x + 7, y + 10.8, { size: SIZE });
    const room = width - 29 - pen.width(row.left, { size: SIZE, weight: "black" });
    pen.line(row.of, x + Math.min(room, width * 0.68), y + 10.8, { size: SIZE, align: "right" });
    leftWithMark(pen, row, x + width, y);
    y += ROW;
  }
}

const NUMBERS = 104 * MM;
const TIPS = WIDTH - NUMBERS;
const HAS = NUMBERS - 66;
const NEEDS = HAS - 50;

const whyLines = (pen: Pen, { why }: SheetNumber): readonly string[] =>
  why === undefined ? [] : pen.wrap(why, NUMBERS - 16, { size: WHY });

const numberHeight = (pen: Pen, number: SheetNumber): number =>
  ROW + whyLines(pen, number).length * WHY_LEADING + (number.why === undefined ? 0 : 2);

function drawNumber(pen: Pen, number: SheetNumber, { x, y }: Origin): void {
  const left = pen.width(number.left, { size: SIZE, weight: "black" });
  // a long answer takes the columns before it: its words are what counts
  const has = Math.min(x + HAS, x + NUMBERS - 28 - left);
  const needs = Math.min(x + NEEDS, has - pen.width(number.has, { size: SIZE }) - 8);
  const room = needs - x - 14 - pen.width(number.needs, { size: SIZE });
  pen.line(number.what, x + 7, y + 10.8, { size: fitting(pen, number.what, room * 1.06, SIZE) });
  pen.line(number.needs, needs, y + 10.8, { size: SIZE, align: "right" });
  pen.line(number.has, has, y + 10.8, { size: SIZE, align: "right" });
  leftWithMark(pen, number, x + NUMBERS, y);
  whyLines(pen, number).forEach((line, index) => {
    pen.line(line, x + 7, y + ROW + 7 + index * WHY_LEADING, { size: WHY });
  });
}

const NO_TIPS = "No single value, as far as it could plausibly be off, changes the answer.";

const tipLines = (pen: Pen, what: string, value: string): readonly string[] =>
  pen.wrap(what, TIPS - 22 - pen.width(value, { size: SIZE, weight: "black" }), { size: SIZE });

const TIP_LEADING = 11.5;
const tipHeight = (pen: Pen, what: string, value: string): number =>
  ROW + (tipLines(pen, what, value).length - 1) * TIP_LEADING;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** The tables of the numbers, or what of them stands on one page. */
export interface NumbersPart {
  readonly title: string;
  readonly numbers: readonly SheetNumber[];
  /** Null where they stand on another page. */
  readonly tips: SheetFigures["tips"] | null;
  /** How many of the numbers follow overleaf. */
  readonly follow: number;
}

/** All of them together. */
export const wholeNumbers = ({ numbers, tips }: SheetFigures): NumbersPart => ({
  title: "The numbers",
  numbers,
  tips,
  follow: 0,
});

/** The numbers in two parts, for a page that has no room for all. Undefined where not even what is not clear has room. */
export function partedNumbers(
  pen: Pen,
  figures: SheetFigures,
  room: number,
): { readonly here: NumbersPart; readonly overleaf: NumbersPart } | undefined {
  const whole = wholeNumbers(figures);
  const parted = partNumbers(
    figures.numbers,
    (numbers, follow) => numbersHeight(pen, { ...whole, numbers, follow }) <= room,
  );
  if (parted === undefined) return undefined;
  const { here, overleaf } = parted;
  return {
    here: { ...whole, numbers: here, follow: overleaf.length },
    overleaf: { title: "The numbers, continued", numbers: overleaf, tips: null, follow: 0 },
  };
}

function tipsHeight(pen: Pen, tips: SheetFigures["tips"]): number {
  return tips.length === 0
    ? pen.wrap(NO_TIPS, TIPS - 14, { size: SIZE }).length * 12.4
    : sum(tips.map(({ what, value }) => tipHeight(pen, what, value)));
}

/** How high the two tables are; `drawNumbers` draws as much. */
export function numbersHeight(pen: Pen, { numbers, tips, follow }: NumbersPart): number {
  const left = sum(numbers.map((number) => numberHeight(pen, number))) + (follow > 0 ? ROW : 0);
  return HEADING + Math.max(left, tips === null ? 0 : tipsHeight(pen, tips));
}

/** What the flight needs, has and has left; beside it where the answer tips over. */
export function drawNumbers(pen: Pen, part: NumbersPart, at: Origin): void {
  const { x } = at;
  const height = numbersHeight(pen, part);
  heading(pen, part.title, at);
  for (const [word, right] of [
    ["needs", NEEDS],
    ["has", HAS],
    ["left", NUMBERS - 22],
  ] as const) {
    pen.line(word, x + right, at.y + 13, { size: 8.5, align: "right" });
  }
  let y = at.y + HEADING;
  for (const number of part.numbers) {
    pen.rule(x, y, x + NUMBERS, y, 0.5);
    drawNumber(pen, number, { x, y });
    y += numberHeight(pen, number);
  }
  if (part.follow > 0) {
    pen.rule(x, y, x + NUMBERS, y, 0.5);
    pen.line(`${part.follow} more overleaf`, x + 7, y + 10.8, { size: SIZE, weight: "bold" });
  }
  pen.rule(x + NUMBERS, at.y, x + NUMBERS, at.y + height);
  if (part.tips !== null) drawTips(pen, part.tips, { x: x + NUMBERS, y: at.y });
}

function drawTips(pen: Pen, tips: SheetFigures["tips"], at: Origin): void {
  const { x } = at;
  heading(pen, "Where it tips over", at);
  let y = at.y + HEADING;
  if (tips.length === 0) {
    pen.block(NO_TIPS, x + 7, y, TIPS - 14, { size: SIZE });
    return;
  }
  for (const { what, value } of tips) {
    pen.rule(x, y, x + TIPS, y, 0.5);
    tipLines(pen, what, value).forEach((line, index) => {
      pen.line(line, x + 7, y + 10.8 + index * TIP_LEADING, { size: SIZE });
    });
    pen.line(value, x + TIPS - 7, y + 10.8, { size: SIZE, weight: "black", align: "right" });
    y += tipHeight(pen, what, value);
  }
}
