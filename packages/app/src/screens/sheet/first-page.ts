import type { Sheet, SheetNote } from "@witnessmark/sheet";

/** Pixels of the page as it prints, 96 to an inch: what A4 and Letter both hold between margins of 12 mm. */
const PAGE = 952;
const HEAD = 98;
const PLAN = 270;
const HEADING = 27;
const ROW = 21.5;
const LINE = 16.3;
const FOOT = 176;
const CUT_AND_SLIP = 102;
const FRAME_LINES = 10;
/** Letters in a line of the notes, of a reason under a number, of a tipping point, of what the masses wait for. */
const LETTERS = { note: 84, why: 66, tip: 38, open: 46 };

const lines = (text: string, letters: number): number => Math.max(1, Math.ceil(text.length / letters));

const noteHeight = ({ title, says, reason, margin }: SheetNote): number => {
  const text = `${title}. ${says}. ${reason === undefined ? "" : `Why: ${reason}`}`;
  return 11 + Math.max(1.25, lines(text, LETTERS.note - margin.length)) * LINE;
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** How high everything but the notes is. */
function besideNotes({ flight, voidWhen, holds }: Sheet): number {
  const figures = flight?.figures ?? null;
  const fixed = HEAD + FOOT + CUT_AND_SLIP + FRAME_LINES + HEADING;
  const foot = Math.max(0, Math.ceil((voidWhen.length - 5) / 2)) * 19 + (lines(holds, 40) - 1) * 17;
  if (figures === null) return fixed + foot + PLAN + HEADING;
  const { mass, numbers, tips } = figures;
  const isOpen = mass.envelope === undefined || mass.open.length > 0;
  const massHeight =
    HEADING +
    (mass.envelope === undefined ? 0 : 160) +
    (isOpen ? lines(mass.open.join("; "), LETTERS.open) * LINE + 10 : 0) +
    mass.rows.length * ROW;
  const left = sum(numbers.map(({ why }) => ROW + (why === undefined ? 0 : lines(why, LETTERS.why) * LINE)));
  const right = sum(tips.map(({ what }) => ROW + (lines(what, LETTERS.tip) - 1) * LINE));
  return fixed + foot + Math.max(PLAN, massHeight) + HEADING + Math.max(left, right);
}

/** What of the notes has room beside everything else on the first page; the rest goes on overleaf, none is left out. */
export function firstPage(
  sheet: Sheet,
  notes: readonly SheetNote[],
): { readonly here: readonly SheetNote[]; readonly overleaf: readonly SheetNote[]; readonly room: number } {
  let room = PAGE - besideNotes(sheet);
  let count = 0;
  for (const note of notes) {
    const height = noteHeight(note);
    if (height > room) break;
    room -= height;
    count += 1;
  }
  return { here: notes.slice(0, count), overleaf: notes.slice(count), room };
}
