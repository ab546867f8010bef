import Papa from "papaparse";

export const DELIMITERS = ["\t", ";", ","] as const;
export type Delimiter = (typeof DELIMITERS)[number];

export interface TableRow {
  /** As a spreadsheet counts: the row of the headings is 1. */
  readonly row: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly delimiter: Delimiter;
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
}

export type ReadTable =
  | { readonly ok: true; readonly table: Table }
  | { readonly ok: false; readonly found: string; readonly expected: string; readonly remedy: string };

/** A few hundred aircraft-years of readings; more than that is another kind of file. */
const MOST_ROWS = 100_000;

/** The text of a file: UTF-8, UTF-16 with its mark, else the table of characters that older spreadsheets write. */
export function textOfFile(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) return new TextDecoder("windows-1252").decode(bytes);
    throw error;
  }
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what tells a file that is no text
const CONTROL = /[\u0000-\u0008\u000e-\u001f]/;

/** Takes off the mark that keeps a spreadsheet from running a text as a formula. */
const asWritten = (cell: string): string => cell.replace(/^'(?=[=+\-@\t\r])/, "").trim();

const looksLikeAValue = (heading: string): boolean =>
  /^[-+−]?\d+([.,]\d+)?$|^\d{4}-\d{2}-\d{2}/.test(heading);

const firstRow = (text: string, delimiter: Delimiter): number =>
  Papa.parse<string[]>(text, { delimiter, preview: 1 }).data[0]?.filter((cell) => cell.trim() !== "")
    .length ?? 0;

/** What parts the first row into most columns; `null` when nothing parts it. */
function delimiterOf(text: string): Delimiter | null {
  let delimiter: Delimiter | null = null;
  let most = 1;
  for (const each of DELIMITERS) {
    const cells = firstRow(text, each);
    if (cells > most) [delimiter, most] = [each, cells];
  }
  return delimiter;
}

/** So many rows are taken apart at once: what a slow phone does between two frames that nobody misses. */
const ROWS_AT_ONCE = 500;

/** Rows and columns of a CSV file: separated by commas, semicolons or tabs, the first row with headings. */
export function readTable(whole: string): ReadTable {
  const steps = tableInSteps(whole);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * `readTable` for a long file on a slow phone, which must be able to do something else in between.
 *
 * @param rest ends when it has
 */
export async function readLongTable(whole: string, rest: () => Promise<void>): Promise<ReadTable> {
  const steps = tableInSteps(whole);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    await rest();
  }
}

function* tableInSteps(whole: string): Generator<void, ReadTable, void> {
  const text = whole.replace(/^\uFEFF/, "");
  const refused = refusedAtOnce(text);
  if (refused !== null) return refused;
  yield;
  const delimiter = delimiterOf(text);
  if (delimiter === null) {
    return {
      ok: false,
      found: `one column, “${text.split(/\r?\n/, 1)[0]?.slice(0, 60) ?? ""}”`,
      expected: "at least two columns, separated by commas, semicolons or tabs",
      remedy: "Save it as CSV, with the names of the columns in the first row.",
    };
  }
  let headings: readonly string[] | undefined;
  const rows: TableRow[] = [];
  let counted = 0;
  for (let from = 0; from < text.length; ) {
    const { data, errors, meta } = Papa.parse<string[]>(text.slice(from), {
      // its quick way, where no cell is quoted, says a place one row beyond those that it gives
      fastMode: false,
      delimiter,
      preview: ROWS_AT_ONCE,
    });
    const broken = errors.find(({ type }) => type === "Quotes");
    if (broken !== undefined) {
      return {
        ok: false,
        found: `a quotation mark that is never closed, in row ${counted + (broken.row ?? 0) + 1}`,
        expected: "each quoted cell closed with a second mark",
        remedy: "Mend that row, or save the file as CSV once more.",
      };
    }
    for (const written of data) {
      counted += 1;
      const cells = written.map(asWritten);
      if (headings === undefined) headings = cells;
      else if (cells.some((cell) => cell !== "")) rows.push({ row: counted, cells });
    }
    if (headings?.some(looksLikeAValue)) {
      return {
        ok: false,
        found: `the first row “${headings.join(" ").slice(0, 60)}”`,
        expected: "the names of the columns in the first row",
        remedy: "Put a row on top that names the columns: date, check, value, unit.",
      };
    }
    if (meta.cursor <= 0) break;
    from += meta.cursor;
    yield;
  }
  return rightSize(rows.length) ?? { ok: true, table: { delimiter, headings: headings ?? [], rows } };
}

function rightSize(rows: number): ReadTable | null {
  if (rows > 0 && rows <= MOST_ROWS) return null;
  return {
    ok: false,
    found: rows === 0 ? "headings and no row under them" : `${rows} rows`,
    expected: `from 1 to ${MOST_ROWS} rows`,
    remedy: rows === 0 ? "Choose the file that has the rows." : "Bring it in as several files.",
  };
}

/** What can be told from the text before its rows are taken apart. */
function refusedAtOnce(text: string): ReadTable | null {
  const expected = "a CSV file: text in rows, with the names of its columns in the first row";
  if (text.startsWith("PK\u0003\u0004")) {
    const remedy = "Open it where it was made, and save it as CSV.";
    return { ok: false, found: "a packed file, as a spreadsheet keeps its own", expected, remedy };
  }
  if (CONTROL.test(text)) {
    return {
      ok: false,
      found: "a file that is no text",
      expected,
      remedy: "Choose the CSV file, or save it as CSV first.",
    };
  }
  if (text.trim() === "") {
    return { ok: false, found: "an empty file", expected, remedy: "Save it once more where it was made." };
  }
  return null;
}
