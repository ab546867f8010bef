import type { Flight } from "@witnessmark/assess";
import { type Book, readBook, smallBookText } from "@witnessmark/book";
import type { Status } from "@witnessmark/ledger";
import PdfDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { sheetOfDecision } from "../decision-sheet.ts";
import { envelopeDrawing } from "../envelope/envelope-drawing.ts";
import type { SheetNumber } from "../flight/number-line.ts";
import type { Sheet, SheetNote } from "../sheet.ts";
import { STANDING_CAUTION } from "../sheet.ts";
import { demoLedger } from "../testing/demo-ledger.ts";
import { goodFlight, heavyFlight, namedFlight, openFlight } from "../testing/flights.ts";
import { renderSheetPdf } from "./index.ts";
import { drawSheet } from "./page.ts";
import { type Lettering, Pen } from "./pen.ts";
import { registerTypeFace } from "./type-face.ts";

async function smallBook() {
  const result = await readBook(smallBookText, "small.yaml");
  if (!result.ok) throw new Error("the small book has faults");
  return result.book;
}

const note = (number: number): SheetNote => ({
  number,
  status: (["stop", "caution", "open"] as const)[number % 3] ?? "open",
  title: `Thing ${number}`,
  says: `says ${number} of itself at some length, so that the line has to be broken once or perhaps twice`,
  margin: `${number} mm`,
  reason: `reason ${number}`,
});

const sheetWith = (notes: number, readings: number): Sheet => ({
  title: "Go, with one reason given",
  status: "caution",
  registration: "ZZ-SML",
  type: "Pipit 1",
  date: "Thursday 12 November 2026",
  flight: { from: "ZZTW", to: "ZZQN", offBlocks: "09:10, 08:10 UTC", figures: null },
  slip: [
    { label: "Aircraft", value: "ZZ-SML", after: "Pipit 1" },
    { label: "To", value: "ZZQN" },
  ],
  walk: "First walk of the day",
  counts: { stop: 1, caution: 2, open: 3, clear: 44 },
  marks: [{ place: [3.5, 1.4, 0.3], status: "caution", note: 1 }],
  notes: Array.from({ length: notes }, (_, i) => note(i + 1)),
  alsoOpen: [],
  readings: Array.from({ length: readings }, (_, i) => ({
    title: `Reading ${i + 1}`,
    says: `is ${i + 1}`,
    margin: `${i + 1} bar`,
    status: "clear" as Status,
  })),
  holds: "Holds until 16:40: sunset",
  voidWhen: ["fuelled again", "worked on"],
  caution: STANDING_CAUTION,
  signature: {
    by: "Łukasz Example",
    role: "pilot",
    at: "09:05:12, 08:05 UTC",
    hash: "7C1F 09A4 E2B8 0001",
    keySigned: true,
  },
  restsOn: "50 checks, 9 readings, book revision 3",
  notice: "An invented aircraft. Fit for no real flight.",
});

/** A text where it stands, as wide as it is and as high as its small letters. */
interface Lettered {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Everything that was lettered, page by page. */
class RecordingPen extends Pen {
  readonly pages: Lettered[][] = [[]];
  override line(text: string, x: number, y: number, how: Lettering): void {
    const width = this.width(text, how);
    const left = how.align === "right" ? x - width : how.align === "centre" ? x - width / 2 : x;
    this.pages.at(-1)?.push({ text, left, right: left + width, top: y - how.size / 2, bottom: y });
    super.line(text, x, y, how);
  }
}

async function linesOf(
  sheet: Sheet,
  book?: Book,
  size: "A4" | "LETTER" = "A4",
): Promise<readonly (readonly Lettered[])[]> {
  const document = new PdfDocument({ size, margin: 0 });
  registerTypeFace(document);
  const pen = new RecordingPen(document);
  drawSheet(pen, sheet, book ?? (await smallBook()), () => {
    document.addPage();
    pen.pages.push([]);
  });
  return pen.pages;
}

const letteredBy = async (...given: Parameters<typeof linesOf>): Promise<string[]> =>
  (await linesOf(...given)).map((page) => page.map(({ text }) => text).join(" "));

/** Pairs of texts of a page that lie on each other. */
function overprinted(page: readonly Lettered[]): readonly string[] {
  const isOn = (one: Lettered, other: Lettered): boolean =>
    Math.min(one.right, other.right) - Math.max(one.left, other.left) > 1 &&
    Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 1;
  return page.flatMap((one, index) =>
    page
      .slice(index + 1)
      .filter((other) => isOn(one, other))
      .map((other) => `"${one.text}" and "${other.text}"`),
  );
}

describe("the sheet on paper", () => {
  it("says on its first page what is decided, by whom, on what it rests, until when, and the caution", async () => {
    const pages = await letteredBy(sheetWith(3, 5));
    expect(pages).toHaveLength(1);
    for (const said of [
      "Go, with one reason given",
      "ZZ-SML",
      "off blocks 09:10, 08:10 UTC",
      "Łukasz Example",
      "7C1F 09A4 E2B8 0001",
      "Holds until 16:40: sunset",
      "50 checks, 9 readings, book revision 3",
      "An invented aircraft. Fit for no real flight.",
      "Take this half with you.",
      STANDING_CAUTION,
    ]) {
      expect(pages[0]).toContain(said);
    }
  });

  it.each([
    { notes: 0, readings: 0 },
    { notes: 40, readings: 0 },
    { notes: 2, readings: 60 },
    { notes: 130, readings: 130 },
  ])(
    "leaves out none of $notes notes and $readings readings, however many pages that takes",
    async ({ notes, readings }) => {
      const all = (await letteredBy(sheetWith(notes, readings))).join(" ");
      for (let i = 1; i <= notes; i++) {
        expect(all).toContain(`Thing ${i}.`);
        expect(all).toContain(`reason ${i}`);
      }
      for (let i = 1; i <= readings; i++) expect(all).toContain(`Reading ${i} `);
    },
  );

  it("names what else is open, with the one reason for all of it, and why it was decided so", async () => {
    const titles = Array.from({ length: 130 }, (_, index) => `Part ${index + 1}`);
    const pages = await letteredBy({
      ...sheetWith(3, 0),
      alsoOpen: [{ titles, reason: "Seen an hour ago" }],
      why: "The fog is still on the sound",
    });
    const all = pages.join(" ");
    for (const title of titles) expect(all).toContain(title);
    expect(all).toContain("Why, for all of these: Seen an hour ago.");
    expect(pages[0]).toContain("Why: The fog is still on the sound.");
  });

  it("says above everything that a record is not what was signed", async () => {
    const [page] = await letteredBy({
      ...sheetWith(1, 1),
      remark: "Worked out again, its assessment differs.",
    });
    expect(page).toContain("Worked out again, its assessment differs.");
  });
});

describe("a flight on paper", () => {
  async function sheetFor(flight: Flight) {
    const { events, decision } = await demoLedger(flight);
    const result = await sheetOfDecision(events, decision);
    if (!result.ok) throw new Error(result.says);
    return result;
  }
  const sheets = new Map<Flight, ReturnType<typeof sheetFor>>();

  function made(flight: Flight): ReturnType<typeof sheetFor> {
    const known = sheets.get(flight) ?? sheetFor(flight);
    sheets.set(flight, known);
    return known;
  }

  async function pagesOf(flight: Flight, size: "A4" | "LETTER") {
    const { sheet, book } = await made(flight);
    return { sheet, pages: await letteredBy(sheet, book, size) };
  }

  const lineOf = ({ what, needs, has, left }: SheetNumber): string => `${what} ${needs} ${has} ${left}`;

  it.each([
    { size: "A4", onFirst: 12 },
    { size: "LETTER", onFirst: 8 },
  ] as const)(
    "has $onFirst of 15 numbers on its first page of $size, the rest overleaf",
    async ({ size, onFirst }) => {
      const { sheet, pages } = await pagesOf(goodFlight, size);
      const [first = "", ...overleaf] = pages;
      const figures = sheet.flight?.figures;
      const numbers = figures?.numbers ?? [];
      expect(numbers).toHaveLength(15);
      const here = numbers.filter((number) => first.includes(lineOf(number)));
      expect(here).toHaveLength(onFirst);
      for (const number of numbers) {
        if (number.status !== "clear") expect(here).toContain(number);
        if (!here.includes(number)) expect(overleaf.join(" ")).toContain(lineOf(number));
      }
      if (onFirst < 15) expect(first).toContain(`${15 - onFirst} more overleaf`);
      // two notes have their place before numbers that are clear
      for (const { title } of sheet.notes.slice(0, 2)) expect(first).toContain(title);
      // the readings that have no room follow
      for (const { title } of sheet.readings) expect(pages.join(" ")).toContain(title);
    },
  );

  it.each(["A4", "LETTER"] as const)(
    "has masses, tipping points, the slip and what makes it void on its first page, on %s",
    async (size) => {
      const { sheet, pages } = await pagesOf(goodFlight, size);
      const [first = ""] = pages;
      const figures = sheet.flight?.figures;
      expect(figures?.tips).toHaveLength(5);
      for (const row of figures?.mass.rows ?? [])
        expect(first).toContain(`${row.what} ${row.of} ${row.left}`);
      for (const { what, value } of figures?.tips ?? []) expect(first).toContain(`${what} ${value}`);
      for (const { text } of figures?.mass.envelope?.edges ?? []) expect(first).toContain(text);
      for (const { label, value } of sheet.slip) expect(first).toContain(`${label} ${value}`);
      for (const when of sheet.voidWhen) expect(first).toContain(when);
    },
  );

  it.each([
    { flight: goodFlight, size: "A4" },
    { flight: goodFlight, size: "LETTER" },
    { flight: heavyFlight, size: "A4" },
    { flight: openFlight, size: "LETTER" },
  ] as const)("letters nothing over something else, on $size", async ({ flight, size }) => {
    const { sheet, book } = await made(flight);
    // the chart is drawn in measures of its own
    const envelope = sheet.flight?.figures?.mass.envelope;
    const onChart = new Set(
      envelope === undefined ? [] : envelopeDrawing(envelope).texts.map(({ text }) => text),
    );
    for (const page of await linesOf(sheet, book, size))
      expect(overprinted(page.filter(({ text }) => !onChart.has(text)))).toEqual([]);
  });

  it.each(["A4", "LETTER"] as const)(
    "says overleaf what was planned and counted with, on %s",
    async (size) => {
      const { sheet, pages } = await pagesOf(goodFlight, size);
      const [, ...overleaf] = pages;
      const all = overleaf.join(" ");
      const brief = sheet.flight?.figures?.brief;
      for (const { label, value } of brief?.trip ?? []) expect(all).toContain(`${label} ${value}`);
      for (const { where, what, much } of brief?.aboard ?? [])
        expect(all).toContain(`${where} ${what} ${much}`);
      for (const { title, reports } of brief?.fields ?? []) {
        expect(all).toContain(title);
        for (const { text, taken } of reports) expect(all).toContain(`${text} Taken ${taken}.`);
      }
    },
  );

  it("has room for reports as long as a ledger takes them, on as many pages as that needs", async () => {
    const { sheet, book } = await made(goodFlight);
    const { flight } = sheet;
    if (flight?.figures == null) throw new Error("the sheet has no figures");
    const text = Array.from({ length: 1300 }, (_, index) => `GRP${index}`).join(" ");
    const brief = {
      ...flight.figures.brief,
      fields: [{ title: "Landing", used: [], reports: [{ text, taken: "08:05" }] }],
    };
    const pages = await letteredBy(
      { ...sheet, flight: { ...flight, figures: { ...flight.figures, brief } } },
      book,
    );
    const all = pages.join(" ");
    for (const word of text.split(" ")) expect(all).toContain(word);
  });

  it("lays clear numbers overleaf before any that is not, and leaves none out, however many there are", async () => {
    const { sheet, book } = await made(goodFlight);
    const { flight } = sheet;
    if (flight?.figures === undefined || flight.figures === null) throw new Error("the sheet has no figures");
    const numbers = Array.from(
      { length: 30 },
      (_, index): SheetNumber => ({
        what: `Number ${index + 1} of them`,
        needs: "1 m",
        has: "2 m",
        left: "1 m",
        status: index === 29 ? "caution" : "clear",
      }),
    );
    const pages = await letteredBy(
      { ...sheet, flight: { ...flight, figures: { ...flight.figures, numbers } } },
      book,
    );
    expect(pages[0]).toContain("Number 30 of them");
    expect(pages[0]).not.toContain("Number 29 of them");
    for (const number of numbers)
      expect(pages.filter((page) => page.includes(lineOf(number)))).toHaveLength(1);
  });

  it.each(["A4", "LETTER"] as const)("says what is open and why, and draws no chart, on %s", async (size) => {
    const { sheet, pages } = await pagesOf(openFlight, size);
    const all = pages.join(" ");
    expect(all).toContain("Open. Not known: who and what is aboard");
    expect(all).not.toMatch(/4\.10 .* 4\.20/);
    for (const { why } of sheet.flight?.figures?.numbers ?? []) {
      for (const word of (why ?? "").split(" ")) expect(all).toContain(word);
    }
    expect(pages[0]).toContain(STANDING_CAUTION);
  });

  it("keeps long names, on as many pages as it needs", async () => {
    const { sheet, pages } = await pagesOf(heavyFlight, "A4");
    const all = pages.join(" ").replaceAll(/\s+/g, " ");
    for (const { title } of sheet.notes) expect(all).toContain(title);
    expect(all).toContain("Take-off 2,784 of 2,720\u00A0kg 64\u00A0kg over".replaceAll("\u00A0", " "));
  });

  it("says of a flight that was only named that its numbers are open", async () => {
    const { pages } = await pagesOf(namedFlight, "A4");
    expect(pages[0]).toContain("The numbers: open.");
    expect(pages[0]).toContain("the flight is named and not planned");
  });
});

describe("the PDF file", () => {
  const given = async () => ({
    sheet: sheetWith(3, 5),
    book: await smallBook(),
    attachments: [{ name: "decision.json", text: '{"signed":true}', description: "The signed decision" }],
    at: new Date("2026-11-12T08:05:12Z"),
  });

  it("carries the signed record, and the caution in its properties", async () => {
    const text = Buffer.from(await renderSheetPdf(await given())).toString("latin1");
    expect(text).toMatch(/^%PDF-1/);
    expect(text).toContain("decision.json");
    expect(text).toContain("/EmbeddedFile");
    expect(text).toMatch(/\/Lang \(en\)/);
  });

  it("is the same, byte by byte, when made again", async () => {
    expect(
      Buffer.from(await renderSheetPdf(await given())).equals(
        Buffer.from(await renderSheetPdf(await given())),
      ),
    ).toBe(true);
  });

  it("fits Letter as it fits A4", async () => {
    const text = Buffer.from(await renderSheetPdf({ ...(await given()), paper: "LETTER" })).toString(
      "latin1",
    );
    expect(text).toMatch(/\/MediaBox \[0 0 612 792\]/);
  });
});
