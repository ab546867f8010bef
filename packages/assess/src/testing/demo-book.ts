import { readFile } from "node:fs/promises";
import { type Book, readBook } from "@witnessmark/book";

/** The book of the demo's turboprop, as its file has it. */
export async function demoBook(): Promise<Book> {
  const file = new URL("../../../../books/zz-skr.yaml", import.meta.url);
  const read = await readBook(await readFile(file, "utf8"), "zz-skr.yaml");
  if (!read.ok) throw new Error(`the demo book has faults: ${JSON.stringify(read.faults[0])}`);
  return read.book;
}
