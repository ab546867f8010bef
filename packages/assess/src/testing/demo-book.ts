import { readFile } from "node:fs/promises";
import { type Book, readBook } from "@witnessmark/book";

/** A demo book as its file has it: `zz-skr`, the turboprop with a list of its own; `zz-dun`, the piston twin; `zz-brk`, the single. */
export async function demoBook(name: "zz-skr" | "zz-dun" | "zz-brk" = "zz-skr"): Promise<Book> {
  const file = new URL(`../../../../books/${name}.yaml`, import.meta.url);
  const read = await readBook(await readFile(file, "utf8"), `${name}.yaml`);
  if (!read.ok) throw new Error(`the demo book has faults: ${JSON.stringify(read.faults[0])}`);
  return read.book;
}
