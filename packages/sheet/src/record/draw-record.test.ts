import { inflateSync } from "node:zlib";
import PdfDocument from "pdfkit";
import { beforeAll, describe, expect, it } from "vitest";
import { MARGIN } from "../pdf/measures.ts";
import { type Lettering, Pen } from "../pdf/pen.ts";
import { registerTypeFace } from "../pdf/type-face.ts";
import { recordLedger } from "../testing/record-ledger.ts";
import type { AircraftRecord, RecordWalk } from "./aircraft-record.ts";
import { drawRecord } from "./draw-record.ts";
import { RECORD_CAUTION } from "./record-of.ts";
import { recordOfLedger } from "./record-of-ledger.ts";
import { renderRecordPdf } from "./render-record-pdf.ts";

let record: AircraftRecord;
let ledgerText: string;
let empty: AircraftRecord;
beforeAll(async () => {
  const { events } = await recordLedger();
  const now_ms = Date.UTC(2026, 10, 20, 10, 0);
  const full = await recordOfLedger(events, { now_ms });
  const before = await recordOfLedger(events, { from: "2025-01-01", to: "2025-01-31", now_ms });
  if (!full.ok || !before.ok) throw new Error("the ledger of the test gives no record");
  ({ record, ledgerText } = full);
  empty = before.record;
});

/** Everything that was lettered, page by page, and where. */
class RecordingPen extends Pen {
  readonly pages: { text: string; y: number }[][] = [[]];
  override line(text: string, x: number, y: number, how: Lettering): void {
    this.pages.at(-1)?.push({ text, y });
    super.line(text, x, y, how);
  }
}

function lettered(drawn: AircraftRecord, size: "A4" | "LETTER" = "A4") {
  const document = new PdfDocument({ size, margin: 0 });
  registerTypeFace(document);
  const pen = new RecordingPen(document);
  drawRecord(pen, drawn, () => {
    document.addPage();
    pen.pages.push([]);
  });
  const texts = pen.pages.map((page) => page.map(({ text }) => text).join(" "));
  return { texts, all: texts.join(" "), pages: pen.pages, height: document.page.height };
}

const walk = (number: number): RecordWalk => ({
  id: `walk-${number}`,
  at: "2026-11-12T07:20:00.000+01:00",
  by: "Ada Example, pilot",
  entry: `01900000-0000-7000-8000-${String(number).padStart(12, "0")}`,
  kind: `Walk ${number}.`,
  ended: "Finished",
  answers: { "as-it-should-be": 40, "not-right": 1, "could-not-check": 0 },
  readings: 3,
  exceptions: Array.from({ length: number % 7 }, (_, i) => `Not right: thing ${number} ${i}`),
});

describe("the record on paper", () => {
  it.each(["A4", "LETTER"] as const)(
    "says on every page whose it is, of what period, which page of how many, of which ledger, and the caution, on %s",
    (size) => {
      const many = { ...record, walks: Array.from({ length: 150 }, (_, i) => walk(i)) };
      const { texts, pages, height } = lettered(many, size);
      expect(texts.length).toBeGreaterThan(5);
      texts.forEach((text, index) => {
        expect(text).toContain("ZZ-SML, aircraft's record, 1 Nov 2026 to 20 Nov 2026");
        expect(text).toContain(`Page ${index + 1} of ${texts.length}`);
        expect(text).toContain(record.ledger.sha256);
        expect(text).toContain(RECORD_CAUTION);
      });
      // and nothing runs into the foot or off the paper
      for (const page of pages) {
        const foot = page.find(({ text }) => text.startsWith("Ledger, SHA-256"))?.y ?? 0;
        const body = page.slice(
          0,
          page.findIndex(({ text }) => text.startsWith("Ledger, SHA-256")),
        );
        for (const { y } of body) {
          expect(y).toBeGreaterThan(MARGIN);
          expect(y).toBeLessThan(foot);
        }
        for (const { y } of page) expect(y).toBeLessThan(height - MARGIN + 1);
      }
    },
  );

  it("leaves out nothing, however much there is", () => {
    const { all } = lettered({ ...record, walks: Array.from({ length: 150 }, (_, i) => walk(i)) });
    for (let number = 0; number < 150; number += 1) {
      expect(all).toContain(`Walk ${number}.`);
      for (let i = 0; i < number % 7; i += 1) expect(all).toContain(`Not right: thing ${number} ${i}`);
    }
  });

  it("goes on overleaf with what is longer than a page, under the same heading", () => {
    const words = Array.from({ length: 4000 }, (_, i) => `word${i}`);
    const [first, ...others] = record.discrepancies;
    if (first === undefined) throw new Error("no discrepancy on the record");
    const { texts, all } = lettered({
      ...record,
      discrepancies: [{ ...first, words: words.join(" ") }, ...others],
    });
    for (const word of words) expect(all).toContain(word);
    expect(texts[1]).toContain("Discrepancies, and what became of them, continued");
  });

  it("tells a discrepancy with its relief and its release", () => {
    const { all } = lettered(record);
    for (const said of [
      "A dent in the cowling",
      "Basis: 14 CFR 91.213(d)",
      "Until: 10 Nov 2026, the last day",
      "Released by R. Works, 4711",
      "Open",
      "The landing light is dark",
      "6 Nov 2026, Example Works",
      "30 Nov 2027",
      "10 Nov 2025 Annual inspection Done by Earlier Works On 9 Nov 2026 Cy Instance, owner",
      "Not going yet",
      "Written into the wrong aircraft",
      "The hangar's tablet",
    ])
      expect(all).toContain(said);
  });

  it("has the sections in a reviewer's order, and says of each that is empty that nothing is in it", () => {
    const { all } = lettered(empty);
    const titles = [
      "Discrepancies, and what became of them",
      "What runs out, as it stood on 31 Jan 2025",
      "What was done about it",
      "Decisions",
      "Walks",
      "Corrections: what was taken back",
      "Who wrote, and with what",
    ];
    expect(all).toMatch(new RegExp(titles.map((title) => `${title} Nothing in this period`).join(".*")));
  });
});

/** What the streams of a PDF hold, as far as they are packed. */
function unpacked(pdf: Buffer): string[] {
  const found: string[] = [];
  for (let at = pdf.indexOf("stream\n"); at >= 0; at = pdf.indexOf("stream\n", at + 1)) {
    if (pdf.subarray(at - 3, at).toString("latin1") === "end") continue;
    const head = pdf.subarray(pdf.lastIndexOf("obj", at), at).toString("latin1");
    if (!head.includes("/FlateDecode")) continue;
    found.push(inflateSync(pdf.subarray(at + 7, pdf.indexOf("endstream", at))).toString("utf8"));
  }
  return found;
}

describe("the record's PDF file", () => {
  it("carries the ledger to the letter, and the caution in its properties", async () => {
    const pdf = Buffer.from(await renderRecordPdf({ record, ledgerText }));
    expect(unpacked(pdf)).toContain(ledgerText);
    const text = pdf.toString("latin1");
    expect(text).toContain("(ZZ-SML.jsonl)");
    expect(text).toMatch(/\/Lang \(en\)/);
  });

  it("is black on white, with no colour and no grey", async () => {
    const pages = unpacked(Buffer.from(await renderRecordPdf({ record, ledgerText }))).filter((text) =>
      /^q?\s*1 0 0 -1/.test(text),
    );
    expect(pages.length).toBeGreaterThan(0);
    const colours = pages.flatMap((text) => [...text.matchAll(/([\d. ]+) (?:scn|SCN|rg|RG|g|G)\n/g)]);
    expect(colours.length).toBeGreaterThan(0);
    for (const [, colour = ""] of colours) expect(["0 0 0", "1 1 1"]).toContain(colour.trim());
  });

  it("is the same, byte by byte, when made again", async () => {
    const [one, two] = [
      await renderRecordPdf({ record, ledgerText }),
      await renderRecordPdf({ record, ledgerText }),
    ];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  });
});
