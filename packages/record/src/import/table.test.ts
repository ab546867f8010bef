import { describe, expect, it } from "vitest";
import { readLongTable, readTable, textOfFile } from "./table.ts";

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

describe("a long table", () => {
  // every seventh remark goes over two lines, which a step must not part
  const remark = (at: number): string => (at % 7 === 0 ? `"first, ${at}\nsecond"` : `plain ${at}`);
  const lines = Array.from({ length: 2_500 }, (_, at) => `2026-01-02,${at},${remark(at)}`);

  it("is read in steps, between which something else can be done, to the same rows", async () => {
    let rests = 0;
    const read = await readLongTable(`date,value,remarks\r\n${lines.join("\r\n")}\r\n`, async () => {
      rests += 1;
    });
    if (!read.ok) throw new Error(`expected a table, found ${read.found}`);
    expect(rests).toBeGreaterThan(2);
    expect(read.table.rows.map(({ row }) => row)).toEqual(lines.map((_, at) => at + 2));
    expect(read.table.rows.map(({ cells }) => cells[1])).toEqual(lines.map((_, at) => String(at)));
    expect(read.table.rows[2_499]?.cells[2]).toBe("first, 2499\nsecond");
  });

  it("has every row where no cell is quoted, too", () => {
    const plain = Array.from({ length: 3_001 }, (_, at) => `2026-01-02,${at}`);
    const { rows } = tableOf(`date,value\r\n${plain.join("\r\n")}`);
    expect(rows.map(({ row, cells }) => [row, cells[1]])).toEqual(plain.map((_, at) => [at + 2, String(at)]));
  });

  it("names the row of a quotation mark that is never closed, also in a later step", () => {
    const broken = [...lines.slice(0, 2_100), '2026-01-02,1,"open', ...lines.slice(2_100)];
    expect(readTable(`date,value,remarks\n${broken.join("\n")}`)).toMatchObject({
      ok: false,
      found: expect.stringMatching(/never closed, in row 2[12]\d\d$/),
    });
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
