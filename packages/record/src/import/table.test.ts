import { describe, expect, it } from "vitest";
import { readTable, textOfFile } from "./table.ts";

const tableOf = (text: string) => {
  const read = readTable(text);
  if (!read.ok) throw new Error(`expected a table, found ${read.found}`);
  return read.table;
};

describe("a table", () => {
  it.each([
    [",", '\uFEFFdate,value\r\n2026-01-02,"5,24"\r\n'],
    [";", "date;value\n2026-01-02;5,24\n"],
    ["\t", "date\tvalue\n2026-01-02\t5,24"],
  ])("is parted by %j, as its headings are", (delimiter, text) => {
    expect(tableOf(text)).toEqual({
      delimiter,
      headings: ["date", "value"],
      rows: [{ row: 2, cells: ["2026-01-02", "5,24"] }],
    });
  });

  it("counts rows as a spreadsheet does: empty ones and line ends in quotes included", () => {
    const { rows } = tableOf('date,words\n2026-01-02,"two\nlines"\n,\n2026-01-03,last\n');
    expect(rows.map(({ row }) => row)).toEqual([2, 4]);
  });

  it("takes off what kept a spreadsheet from running a text", () => {
    expect(tableOf("date,by\n2026-01-02,'=1+1\n").rows[0]?.cells).toEqual(["2026-01-02", "=1+1"]);
  });

  it.each([
    ["PK\u0003\u0004xl/workbook", "a packed file, as a spreadsheet keeps its own"],
    ["\u0000\u0001\u0002", "a file that is no text"],
    ["  \n", "an empty file"],
    ["Just words\nand more", "one column, “Just words”"],
    ["2026-01-02,5.24\n2026-01-03,5.2", "the first row “2026-01-02 5.24”"],
    ["date,value\n", "headings and no row under them"],
    ['date,value\n2026-01-02,"5.24\n', "a quotation mark that is never closed, in row 2"],
  ])("is not made of %j", (text, found) => {
    expect(readTable(text)).toMatchObject({ ok: false, found });
  });
});

describe("the text of a file", () => {
  it.each([
    ["UTF-8", [0xef, 0xbb, 0xbf, 0xc2, 0xb0, 0x43], "°C"],
    ["UTF-16", [0xff, 0xfe, 0xb0, 0x00, 0x43, 0x00], "°C"],
    ["Windows-1252", [0xb0, 0x43], "°C"],
  ])("is read from %s", (_name, bytes, text) => {
    expect(textOfFile(Uint8Array.from(bytes)).replace(/^\uFEFF/, "")).toBe(text);
  });
});
