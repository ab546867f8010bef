import { readFileSync } from "node:fs";
import type { Book } from "../book.ts";
import { faultSentence } from "../faults/fault-sentence.ts";
import { readBook } from "../read-book.ts";

export const DEMO_BOOKS = ["zz-skr", "zz-dun", "zz-brk"] as const;

async function demo(name: (typeof DEMO_BOOKS)[number]): Promise<Book> {
  const text = readFileSync(new URL(`../../../../books/${name}.yaml`, import.meta.url), "utf8");
  const result = await readBook(text, `${name}.yaml`);
  if (!result.ok) throw new Error(result.faults.map(faultSentence).join("\n"));
  return result.book;
}

const books = new Map<string, Book>(
  await Promise.all(DEMO_BOOKS.map(async (name) => [name, await demo(name)] as const)),
);

/** Of a section that every demo book has. */
export function had<T>(value: T | undefined | null): T {
  if (value === undefined || value === null) throw new Error("a demo book lacks it");
  return value;
}

export const bookOf = (name: string) => had(books.get(name));
export const loadingOf = (name: string) => had(bookOf(name).loading);
export const performanceOf = (name: string) => had(bookOf(name).performance);
