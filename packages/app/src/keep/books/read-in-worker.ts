import type { BookResult } from "@witnessmark/book";
import { askWorker } from "../ask-worker.ts";
import type { BookText } from "./reader-worker.ts";

/** Reads a book's text; as `readBook`. */
export type BookReader = (text: string, fileName: string) => Promise<BookResult>;

const IDLE_ms = 10_000;

/**
 * Reads books away from the screen: one takes a few tenths of a second on a slow phone, and the parser is a part of
 * its own that a phone without a new book never loads.
 */
export function makeBookReader(): BookReader {
  const ask = askWorker<BookText, BookResult>({
    start: () => new Worker(new URL("./reader-worker.ts", import.meta.url), { type: "module" }),
    broke: (detail) =>
      new Error(
        `The reader of books could not be started${detail ? ` (${detail})` : ""}. Reload the page and try again.`,
      ),
    failed: ({ name, message }) => new Error(`${name}: ${message}`),
    idle_ms: IDLE_ms,
  });
  return (text, fileName) => ask({ text, fileName });
}
