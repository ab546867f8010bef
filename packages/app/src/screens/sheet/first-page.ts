import type { Sheet, SheetFigures, SheetNote } from "@witnessmark/sheet";

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
/** Letters in a line of the notes, of a reason under a number, of a tipping point, of what the masses wait for. */
const LETTERS = { note: 84, why: 66, tip: 38, open: 46, holds: 40 };

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

function numbersHeight({ numbers, tips }: SheetFigures): number {
  const left = numbers.map(({ why }) => ROW + (why === undefined ? 0 : lines(why, LETTERS.why) * LINE + 4));
  const right = tips.map(({ what }) => ROW + (lines(what, LETTERS.tip) - 1) * LINE);
  return HEADING + Math.max(sum(left), sum(right));
}

export interface FirstPage {
  readonly here: readonly SheetNote[];
  readonly overleaf: readonly SheetNote[];
  /** Whether the numbers stand on the first page. */
  readonly numbersFit: boolean;
  /** What is left under the notes. */
  readonly room: number;
}

/**
 * What has room beside everything else on the first page: the numbers before the notes. The rest goes on overleaf;
 * nothing is left out, and nothing is shrunk.
 */
export function firstPage(sheet: Sheet, notes: readonly SheetNote[]): FirstPage {
  const figures = sheet.flight?.figures ?? null;
  const left = PAGE - otherHeight(sheet, figures);
  const wanted = figures === null ? UNPLANNED : numbersHeight(figures);
  const [worst] = notes;
  // what stops the flight stands on the first page before any number
  const stop = worst?.status === "stop" ? noteHeight(worst) : 0;
  const numbersFit = figures === null || wanted + stop <= left;
  let room = left - (numbersFit ? wanted : HEADING);
  let count = 0;
  for (const note of notes) {
    const height = noteHeight(note);
    if (height > room) break;
    room -= height;
    count += 1;
  }
  return { here: notes.slice(0, count), overleaf: notes.slice(count), numbersFit, room };
}
