import type { Book, BookFault } from "@witnessmark/book";
import { CACHE_SHAPE } from "../cache-shape.ts";
import type { Connection } from "../storage/open-database.ts";
import type { BookRow } from "../storage/schema.ts";
import type { BookReader } from "./read-in-worker.ts";

/** What a reading came to. */
export interface ReadBook {
  readonly book: Book | null;
  readonly faults: readonly BookFault[];
}

/** A book's text as an event carries it. */
export interface BookText {
  readonly sha256: string;
  readonly text: string;
}

/** Books by the SHA-256 of their text, each read once on this phone. */
export interface BookShelf {
  /** Makes sure that these can be found. The reader is loaded only when one of them is new here. */
  ready(texts: readonly BookText[]): Promise<void>;
  find(sha256: string): ReadBook | undefined;
  /** Reads a text that comes from outside. */
  read(text: string, fileName: string): Promise<ReadBook>;
}

export function openShelf(
  connection: Connection,
  readBook: BookReader,
  report: (error: unknown) => void,
): BookShelf {
  const books = new Map<string, ReadBook>();

  async function read(text: string, fileName: string): Promise<ReadBook> {
    const result = await readBook(text, fileName);
    const read: ReadBook = result.ok
      ? { book: result.book, faults: [] }
      : { book: null, faults: result.faults };
    if (read.book) {
      books.set(read.book.sha256, read);
      await cache({ sha256: read.book.sha256, shape: CACHE_SHAPE, ...read });
    }
    return read;
  }

  /** A cache that cannot be written costs time at the next start, nothing else. */
  async function cache(row: BookRow): Promise<void> {
    try {
      await connection.run((database) => database.put("books", row));
    } catch (error) {
      report(error);
    }
  }

  async function fetchOne({ sha256, text }: BookText): Promise<void> {
    const row = await connection.run((database) => database.get("books", sha256));
    if (row?.shape === CACHE_SHAPE) {
      books.set(sha256, { book: row.book, faults: row.faults });
      return;
    }
    const found = await read(text, "book in the ledger");
    if (found.book && found.book.sha256 !== sha256) {
      const fault: BookFault = {
        file: "book in the ledger",
        line: 0,
        column: 0,
        path: "",
        expected: `a text with the SHA-256 ${sha256}, as its entry says`,
        found: found.book.sha256,
        remedy: "adopt the book again from its file",
      };
      books.set(sha256, { book: null, faults: [fault] });
    } else books.set(sha256, found);
  }

  return {
    async ready(texts) {
      for (const text of texts) if (!books.has(text.sha256)) await fetchOne(text);
    },
    find: (sha256) => books.get(sha256),
    read,
  };
}

/** The books that events, or drafts of them, adopt. */
export const booksIn = (
  events: readonly { readonly type: string; readonly body: unknown }[],
): readonly BookText[] =>
  events.flatMap((event) =>
    event.type === "book.adopted" && isBookBody(event.body)
      ? [{ sha256: event.body.sha256, text: event.body.text }]
      : [],
  );

const isBookBody = (body: unknown): body is BookText =>
  typeof body === "object" &&
  body !== null &&
  "sha256" in body &&
  typeof body.sha256 === "string" &&
  "text" in body &&
  typeof body.text === "string";
