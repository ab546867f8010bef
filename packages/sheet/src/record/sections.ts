import { drawMark } from "../pdf/mark.ts";
import type { Pen } from "../pdf/pen.ts";
import type {
  AircraftRecord,
  RecordDecision,
  RecordDiscrepancy,
  RecordDone,
  RecordEntry,
  RecordWalk,
  SignedEntry,
} from "./aircraft-record.ts";
import { dayOf, dayWords, momentWords } from "./day-words.ts";
import {
  type Block,
  type Cell,
  type Columns,
  FOUR,
  headingBlock,
  rowBlocks,
  type Section,
  THREE,
} from "./page-rows.ts";

export const NOTHING = "Nothing in this period";
const THIN = 0.4;

const plain = (...texts: readonly string[]): Cell => texts.map((text) => ({ text }));
const bold = (text: string) => ({ text, weight: "bold" as const });

/** The last eight figures of an id: enough to find its line in the ledger. */
const entryWords = (entry: string): string => `Entry ${entry.slice(-8)}`;

const signedWords = (signed: boolean | undefined): readonly string[] =>
  signed === undefined ? [] : [signed ? "Signed with the device's key" : "No key signed it"];

const byCell = (entry: SignedEntry): Cell =>
  plain(entry.by, ...signedWords(entry.signed), entryWords(entry.entry));

/** When it was written down, where that was another day than it was done. */
const writtenOn = ({ at, on }: RecordDone): Cell =>
  dayOf(at) === on ? [] : plain(`On ${dayWords(dayOf(at))}`);

const atCell = ({ at }: RecordEntry): Cell => plain(...momentWords(at).split(/, /));

function section(
  pen: Pen,
  title: string,
  columns: Columns,
  heads: readonly string[],
  rows: readonly Block[],
): Section {
  const isEmpty = rows.length === 0;
  return {
    heading: headingBlock(title, columns, isEmpty ? [] : heads, 10),
    continued: headingBlock(`${title}, continued`, columns, heads),
    rows: isEmpty ? rowBlocks(pen, [0], [plain(NOTHING)]) : rows,
  };
}

function discrepancyRows(pen: Pen, found: RecordDiscrepancy): readonly Block[] {
  const { steps, words, where, disposition, isCarriedIn } = found;
  const last = steps.length - 1;
  return [
    ...rowBlocks(
      pen,
      [0, ...THREE.slice(1, 2)],
      [
        [bold(disposition), ...(isCarriedIn ? plain("Carried in") : [])],
        [bold(words), ...(where === "" ? [] : plain(where))],
      ],
      { keepsWithNext: steps.length > 0 },
    ),
    ...steps.flatMap((step, index) =>
      rowBlocks(pen, THREE, [atCell(step), [bold(step.title), ...plain(...step.says)], byCell(step)], {
        rule: index === last ? 1 : THIN,
      }),
    ),
  ];
}

/** The mark of the worst that a decision rests on stands left of its title. */
function decisionRows(pen: Pen, decision: RecordDecision): readonly Block[] {
  const { title, flight, counts, reasons, hash, status } = decision;
  const said = `${counts.stop} stop, ${counts.caution} caution, ${counts.open} open, ${counts.clear} clear`;
  const [first, ...more] = rowBlocks(
    pen,
    THREE,
    [
      atCell(decision),
      [bold(title), ...plain(flight, said, ...reasons.map((reason) => `Reason. ${reason}`), `Hash ${hash}`)],
      byCell(decision),
    ],
    { rule: THIN },
  );
  if (first === undefined) return [];
  const marked: Block = {
    ...first,
    draw(on, x, y) {
      first.draw(on, x, y);
      drawMark(on.document, status, x + (THREE[1] ?? 0) - 10, y + 11, 15);
    },
  };
  return [marked, ...more];
}

function walkRows(pen: Pen, walk: RecordWalk): readonly Block[] {
  const { answers, readings, exceptions, kind, ended } = walk;
  const counted = `${answers["as-it-should-be"]} as it should be, ${answers["not-right"]} not right, ${answers["could-not-check"]} could not be checked; ${readings} ${readings === 1 ? "reading" : "readings"}`;
  return rowBlocks(
    pen,
    THREE,
    [atCell(walk), [bold(kind), ...plain(ended, counted, ...exceptions)], byCell(walk)],
    { rule: THIN },
  );
}

/** The sections in the order of a reviewer: what is wrong, what runs out, what was decided, what was looked at, who wrote. */
export function sectionsOf(pen: Pen, record: AircraftRecord): readonly Section[] {
  const heads = ["When", "What", "Who"];
  return [
    section(
      pen,
      "Discrepancies, and what became of them",
      THREE,
      heads,
      record.discrepancies.flatMap((found) => discrepancyRows(pen, found)),
    ),
    section(
      pen,
      `What runs out, as it stood on ${dayWords(record.standsOn)}`,
      FOUR,
      ["Item", "Last done", "Next due", "Left"],
      record.timed.flatMap(({ item, rule, state, lastDone, nextDue, left }) =>
        rowBlocks(
          pen,
          FOUR,
          [
            [bold(item), ...(rule === undefined ? [] : plain(rule))],
            plain(lastDone),
            plain(...nextDue),
            [bold(state), ...plain(left)],
          ],
          { rule: THIN },
        ),
      ),
    ),
    section(
      pen,
      "What was done about it",
      THREE,
      ["Done on", "What", "Written down by"],
      record.timedDone.flatMap((done) =>
        rowBlocks(
          pen,
          THREE,
          [
            plain(dayWords(done.on)),
            [bold(done.item), ...plain(...done.says)],
            [...writtenOn(done), ...byCell(done)],
          ],
          { rule: THIN },
        ),
      ),
    ),
    section(
      pen,
      "Decisions",
      THREE,
      heads,
      record.decisions.flatMap((decision) => decisionRows(pen, decision)),
    ),
    section(
      pen,
      "Walks",
      THREE,
      heads,
      record.walks.flatMap((walk) => walkRows(pen, walk)),
    ),
    section(
      pen,
      "Corrections: what was taken back",
      THREE,
      heads,
      record.corrections.flatMap((each) =>
        rowBlocks(
          pen,
          THREE,
          [
            atCell(each),
            [bold(each.what), ...plain(entryWords(each.taken), `Why: ${each.why}`)],
            byCell(each),
          ],
          {
            rule: THIN,
          },
        ),
      ),
    ),
    section(
      pen,
      "Who wrote, and with what",
      THREE,
      ["Who", "Device, and its key", "Entries"],
      record.writers.flatMap(({ name, device, key, entries }) =>
        rowBlocks(pen, THREE, [[bold(name)], plain(device, key), plain(String(entries))], { rule: THIN }),
      ),
    ),
  ];
}
