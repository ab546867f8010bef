/** One cell of a pasted table, with its place as a spreadsheet counts it. */
export interface PastedCell {
  /** From 1. */
  readonly row: number;
  /** From 1. */
  readonly column: number;
  readonly text: string;
}

export type Delimiter = "tab" | "semicolon" | "comma" | "bar" | "spaces";

const SIGNS = { tab: "\t", semicolon: ";", comma: ",", bar: "|" } as const;

/** The cells of a text, row by row; rows that are blank are left out, but counted. */
export function splitCells(text: string): {
  readonly delimiter: Delimiter;
  readonly rows: readonly (readonly PastedCell[])[];
} {
  const body = text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n");
  const delimiter = delimiterOf(body);
  const rows = (delimiter === "spaces" ? bySpaces(body) : splitBySign(body, delimiter))
    .map((cells, row) =>
      cells.map((cell, column) => ({ row: row + 1, column: column + 1, text: cell.trim() })),
    )
    .filter((cells) => cells.some((cell) => cell.text !== "") && !isRuled(cells));
  return { delimiter, rows };
}

function splitBySign(body: string, delimiter: keyof typeof SIGNS): readonly (readonly string[])[] {
  const rows = bySign(body, SIGNS[delimiter]);
  return delimiter === "bar" ? withoutFrame(rows) : rows;
}

/** Bars that frame a table, at the ends of every row, part no cells. */
function withoutFrame(rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const parted = rows.filter((cells) => cells.length > 1);
  const opens = parted.every((cells) => cells[0]?.trim() === "");
  const closes = parted.every((cells) => cells.at(-1)?.trim() === "");
  return rows.map((cells) =>
    cells.length > 1 ? cells.slice(opens ? 1 : 0, closes ? cells.length - 1 : cells.length) : cells,
  );
}

/** A row that is a line: `| --- | ---: |`. */
const isRuled = (cells: readonly PastedCell[]): boolean =>
  cells.length > 1 && cells.every(({ text }) => /^:?[-–—=]{2,}:?$/.test(text));

/** A tab or a semicolon is there for nothing else; a comma may be a decimal comma, a bar may be none. */
function delimiterOf(body: string): Delimiter {
  if (body.includes("\t")) return "tab";
  if (body.includes(";")) return "semicolon";
  const lines = body.split("\n").filter((line) => line.trim() !== "");
  // a title may stand above
  if (lines.filter((line) => line.includes("|")).length > lines.length / 2) return "bar";
  // columns that are set with spaces have commas inside their numbers at the most
  const spaced = lines.filter((line) => /\S {2,}\S/.test(line.trim()));
  return lines.some((line) => line.includes(",")) && 2 * spaced.length < lines.length ? "comma" : "spaces";
}

const bySpaces = (body: string): readonly (readonly string[])[] =>
  body.split("\n").map((line) => {
    const shifted = /^ {2,}/.test(line); // nothing over the first column
    const cells = line.trim().split(/ {2,}/);
    return shifted ? ["", ...cells] : cells;
  });

/** As RFC 4180 has it: in quotes a cell may hold the sign, a line end, and a quote written twice. */
function bySign(body: string, sign: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let cells: string[] = [];
  let cell = "";
  let quoted = false;
  for (let i = 0; i < body.length; i += 1) {
    const letter = body.charAt(i);
    if (quoted) {
      if (letter !== '"') cell += letter;
      else if (body.charAt(i + 1) === '"') {
        cell += '"';
        i += 1;
      } else quoted = false;
    } else if (letter === '"' && cell.trim() === "") {
      quoted = true;
      cell = "";
    } else if (letter === sign || letter === "\n") {
      cells.push(cell);
      cell = "";
      if (letter === "\n") {
        rows.push(cells);
        cells = [];
      }
    } else cell += letter;
  }
  rows.push([...cells, cell]);
  return rows;
}
