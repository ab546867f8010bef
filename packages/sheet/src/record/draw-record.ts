import { fitting, MARGIN, MM, type Origin, WIDTH } from "../pdf/measures.ts";
import type { Pen } from "../pdf/pen.ts";
import type { AircraftRecord } from "./aircraft-record.ts";
import { dayWords, momentWords } from "./day-words.ts";
import { type Block, paginate } from "./page-rows.ts";
import { sectionsOf } from "./sections.ts";

const TOP = 22;
const CAUTION = { size: 9.5, weight: "bold" } as const;
const LABEL = 32 * MM;
const SMALL = 8.5;

const plural = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

const periodWords = ({ period }: AircraftRecord): string =>
  `${dayWords(period.from)} to ${dayWords(period.to)}`;

const cautionHeight = (pen: Pen, caution: string): number =>
  pen.wrap(caution, WIDTH - 30, CAUTION).length * 12.35 + 8;

const footHeight = (pen: Pen, record: AircraftRecord): number => cautionHeight(pen, record.caution) + 24;

/** On every page: whose record of what period, and which page of how many. */
function drawTop(pen: Pen, record: AircraftRecord, { x, y }: Origin, page: string): void {
  const width = pen.width(page, { size: 10, weight: "bold" });
  pen.line(page, x + WIDTH, y + 11, { size: 10, weight: "bold", align: "right" });
  const title = `${record.registration}, aircraft's record, ${periodWords(record)}`;
  pen.line(title, x, y + 11, { size: fitting(pen, title, WIDTH - width - 12, 10), weight: "bold" });
  pen.rule(x, y + TOP - 5, x + WIDTH, y + TOP - 5, 0.75);
}

/** On every page: which ledger it is drawn from, and the caution. */
function drawFoot(pen: Pen, record: AircraftRecord, { x, y }: Origin): void {
  const ledger = `Ledger, SHA-256 ${record.ledger.sha256}`;
  pen.rule(x, y + 3, x + WIDTH, y + 3, 0.75);
  pen.line(ledger, x, y + 14, { size: fitting(pen, ledger, WIDTH, SMALL) });
  const height = cautionHeight(pen, record.caution);
  pen.box(x, y + 21, WIDTH, height, 1.4);
  pen.block(record.caution, x + 15, y + 24.5, WIDTH - 30, CAUTION);
}

/** What the first page says of the whole. */
function aboutOf(record: AircraftRecord): readonly (readonly [string, string])[] {
  const { ledger, discrepancies, decisions, walks, counters } = record;
  const open = discrepancies.filter(({ isOpen }) => isOpen).length;
  return [
    [
      "In this period",
      `${plural(walks.length, "walk", "walks")}, ${plural(decisions.length, "decision", "decisions")}, ${plural(discrepancies.length, "discrepancy", "discrepancies")}, of which ${open} open at its end`,
    ],
    ["As it stood", `at the end of ${dayWords(record.standsOn)}; made ${momentWords(record.madeAt)}`],
    ["Book", record.book],
    ...counters.map(({ name, says }) => [name, says] as const),
    [
      "Ledger",
      `${plural(ledger.events, "entry", "entries")} of ${plural(ledger.devices, "device", "devices")}, attached whole as ${ledger.file}. ${ledger.says}`,
    ],
    [
      "To check it",
      `Save ${ledger.file} out of this file. Its SHA-256 is the one at the foot of each page. An entry is found in it by the last eight figures of its id.`,
    ],
    ...(record.notice === "" ? [] : [["Notice", record.notice] as const]),
  ];
}

function headBlock(pen: Pen, record: AircraftRecord): Block {
  const rows = aboutOf(record).map(([label, text]) => ({
    label,
    text,
    height: pen.wrap(text, WIDTH - LABEL - 12, { size: 9.5 }).length * 12.35 + 4,
  }));
  const head = 52;
  return {
    height: head + rows.reduce((sum, { height }) => sum + height, 0) + 14,
    draw(on, x, y) {
      on.line("Aircraft's record", x, y + 24, { size: 23, weight: "black" });
      const aircraft = `${record.registration}  ${record.type}`;
      on.line(aircraft, x, y + 42, { size: fitting(on, aircraft, WIDTH * 0.55, 11), weight: "bold" });
      on.line(periodWords(record), x + WIDTH, y + 42, { size: 11, weight: "bold", align: "right" });
      on.rule(x, y + head - 3, x + WIDTH, y + head - 3, 1.5);
      let below = y + head;
      for (const { label, text, height } of rows) {
        on.line(label, x + 6, below + 12, { size: fitting(on, label, LABEL - 12, 9.5), weight: "bold" });
        on.block(text, x + LABEL + 6, below + 2.5, WIDTH - LABEL - 12, { size: 9.5 });
        below += height;
        on.rule(x, below, x + WIDTH, below, 0.4);
      }
    },
  };
}

/** Draws the record on as many pages as it needs, each with its number, the period, the ledger's hash and the caution. */
export function drawRecord(pen: Pen, record: AircraftRecord, addPage: () => void): void {
  const { page } = pen.document;
  const x = (page.width - WIDTH) / 2;
  const foot = footHeight(pen, record);
  const room = page.height - 2 * MARGIN - TOP - foot;
  const head = headBlock(pen, record);
  const pages = paginate(sectionsOf(pen, record), { first: room - head.height, next: room });
  pages.forEach((blocks, index) => {
    if (index > 0) addPage();
    drawTop(pen, record, { x, y: MARGIN }, `Page ${index + 1} of ${pages.length}`);
    let y = MARGIN + TOP;
    for (const block of index === 0 ? [head, ...blocks] : blocks) {
      block.draw(pen, x, y);
      y += block.height;
    }
    drawFoot(pen, record, { x, y: page.height - MARGIN - foot });
  });
}
