import type { BookResult } from "@witnessmark/book";
import type { ReadAnswer, ReadRequest } from "./reader-worker.ts";

/** Reads a book's text; as `readBook`. */
export type BookReader = (text: string, fileName: string) => Promise<BookResult>;

/**
 * Reads a book away from the screen: it takes a few tenths of a second on a slow phone, and its parser is a part of
 * its own that a phone without a new book never loads.
 */
export const readInWorker: BookReader = (text, fileName) => {
  const worker = new Worker(new URL("./reader-worker.ts", import.meta.url), { type: "module" });
  const { promise, resolve, reject } = Promise.withResolvers<BookResult>();
  worker.addEventListener("message", (event: MessageEvent<ReadAnswer>) => {
    if ("result" in event.data) resolve(event.data.result);
    else reject(new Error(event.data.failure));
  });
  worker.addEventListener("error", (event) => {
    const detail = event.message ? ` (${event.message})` : "";
    reject(new Error(`The reader of books could not be started${detail}. Reload the page and try again.`));
  });
  worker.postMessage({ text, fileName } satisfies ReadRequest);
  return promise.finally(() => worker.terminate());
};
