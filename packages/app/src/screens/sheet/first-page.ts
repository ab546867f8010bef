import {
  type PartedNumbers,
  partNumbers,
  type Sheet,
  type SheetAlsoOpen,
  type SheetFigures,
  type SheetNote,
  type SheetNumber,
} from "@witnessmark/sheet";

/** Pixels of the page as it prints, 96 to an inch: what A4 and Letter both hold between margins of 12 mm. */
const PAGE = 960;
const HEAD = 89;
const PLAN = 270;
const HEADING = 29;
/** What stands in the place of the numbers of a flight that is not planned. */
const UNPLANNED = 28;
const CHART = 160;
const ROW = 22;
const LINE = 16.3;
const FOOT = 171;
const CUT_AND_SLIP = 102;
const FRAME_LINES = 4;
/**
 * Letters in a line of the notes, of a paragraph across the page, of a reason under a number, of a number's four columns
 * together, of a tipping point, of what the masses wait for.
 */
const LETTERS = { note: 84, across: 104, why: 60, number: 46, tip: 34, open: 46, holds: 40 };

const lines = (text: string, letters: number): number => Math.max(1, Math.ceil(text.length / letters));

const noteHeight = ({ title, says, reason, margin }: SheetNote): number => {
  const text = `${title}. ${says}. ${reason === undefined ? "" : `Why: ${reason}`}`;
  return 11 + Math.max(1.25, lines(text, LETTERS.note - margin.length)) * LINE;
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** How high everything but notes and numbers is. */
function otherHeight({ voidWhen, holds }: Sheet, figures: SheetFigures | null): number {
  const fixed = HEAD + FOOT + CUT_AND_SLIP + FRAME_LINES + HEADING;
  const foot =
    Math.max(0, Math.ceil((voidWhen.length - 6) / 2)) * 19 + (lines(holds, LETTERS.holds) - 1) * 17;
  return fixed + foot + Math.max(PLAN, figures === null ? 0 : massHeight(figures.mass));
}

function massHeight({ envelope, open, rows }: SheetFigures["mass"]): number {
  const isOpen = envelope === undefined || open.length > 0;
  const reasons = isOpen ? lines(open.join("; "), LETTERS.open) * LINE + 10 : 0;
  return HEADING + (envelope === undefined ? 0 : CHART) + reasons + rows.length * ROW;
}

const longest = (texts: readonly string[]): number =>
  texts.reduce((most, text) => Math.max(most, text.length), 0);

/** The name of a number breaks where its three figures leave it no room; one without needs and has takes their room. */
function numbersHeight(numbers: readonly SheetNumber[], follow: number, tips: SheetFigures["tips"]): number {
  const of = (column: "needs" | "has" | "left"): number => longest(numbers.map((number) => number[column]));
  const beside = of("left");
  const named = Math.max(8, LETTERS.number - beside - of("needs") - of("has"));
  const left = numbers.map(({ what, needs, has, why }) => {
    const room = needs === "" && has === "" ? LETTERS.number - beside : named;
    const reasons = why === undefined ? 0 : lines(why, LETTERS.why) * LINE + 4;
    return ROW + (lines(what, room) - 1) * LINE + reasons;
  });
  const right = tips.map(({ what }) => ROW + (lines(what, LETTERS.tip) - 1) * LINE);
  return HEADING + Math.max(sum(left) + (follow > 0 ? ROW : 0), sum(right));
}

/** How high the paragraphs are that name what else is open. */
export const alsoOpenHeight = (alsoOpen: readonly SheetAlsoOpen[]): number =>
  sum(
    alsoOpen.map(
      ({ titles, reason = "" }) =>
        11 + lines(`Also open: ${titles.join("; ")}. ${reason}`, LETTERS.across) * LINE,
    ),
  );

export interface FirstPage {
  readonly here: readonly SheetNote[];
  readonly overleaf: readonly SheetNote[];
  /** What of the numbers stands on the first page; undefined where none has room, and where there are none. */
  readonly numbers: PartedNumbers | undefined;
  /** What is left under the notes. */
  readonly room: number;
}

/** Numbers that are clear leave room for so many notes. */
const NOTES_FIRST = 2;

/** What of the numbers has room: beside the first notes, or the first of them, else beside a stop alone. */
function numbersIn(
  { numbers, tips }: SheetFigures,
  notes: readonly SheetNote[],
  left: number,
): PartedNumbers | undefined {
  const [worst] = notes;
  const stop = worst?.status === "stop" ? noteHeight(worst) : 0;
  const first = (most: number) => sum(notes.slice(0, most).map(noteHeight));
  const beside = (notes_px: number) =>
    partNumbers(numbers, (here, follow) => numbersHeight(here, follow, tips) <= left - notes_px);
  return beside(first(NOTES_FIRST)) ?? beside(first(1)) ?? beside(stop);
}

/**
 * What has room beside everything else on the first page: the numbers that are not clear, the first notes, then as much
 * more as there is. The rest goes on overleaf; nothing is left out, and nothing is shrunk.
 */
export function firstPage(sheet: Sheet): FirstPage {
  const { notes, why } = sheet;
  const figures = sheet.flight?.figures ?? null;
  const told = why === undefined ? 0 : 11 + lines(why, LETTERS.across) * LINE;
  const left = PAGE - otherHeight(sheet, figures) - told;
  const numbers = figures === null ? undefined : numbersIn(figures, notes, left);
  const taken =
    figures === null
      ? UNPLANNED
      : numbers === undefined
        ? HEADING
        : numbersHeight(numbers.here, numbers.overleaf.length, figures.tips);
  let room = left - taken;
  let count = 0;
  for (const note of notes) {
    const height = noteHeight(note);
    if (height > room) break;
    room -= height;
    count += 1;
  }
  return { here: notes.slice(0, count), overleaf: notes.slice(count), numbers, room };
}
