import type { BookResult } from "@witnessmark/book";
import type { ReadAnswer, ReadRequest } from "./reader-worker.ts";

/** Reads a book's text; as `readBook`. */
export type BookReader = (text: string, fileName: string) => Promise<BookResult>;

/** How long a reader with nothing to read is kept: its memory is better given back. */
const IDLE_MS = 10_000;

/**
 * Reads books away from the screen: one takes a few tenths of a second on a slow phone, and the parser is a part of
 * its own that a phone without a new book never loads.
 */
export function makeBookReader(): BookReader {
  let worker: Worker | null = null;
  let idle: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  const waiting = new Map<number, PromiseWithResolvers<BookResult>>();

  function stop(): void {
    worker?.terminate();
    worker = null;
  }

  function start(): Worker {
    const started = new Worker(new URL("./reader-worker.ts", import.meta.url), { type: "module" });
    started.addEventListener("message", ({ data }: MessageEvent<ReadAnswer>) => {
      const one = waiting.get(data.request);
      waiting.delete(data.request);
      if ("result" in data) one?.resolve(data.result);
      else one?.reject(new Error(data.failure));
      if (waiting.size === 0) idle = setTimeout(stop, IDLE_MS);
    });
    started.addEventListener("error", (event) => {
      const detail = event.message ? ` (${event.message})` : "";
      const error = new Error(
        `The reader of books could not be started${detail}. Reload the page and try again.`,
      );
      for (const one of waiting.values()) one.reject(error);
      waiting.clear();
      stop();
    });
    return started;
  }

  return (text, fileName) => {
    clearTimeout(idle);
    const request = ++asked;
    const one = Promise.withResolvers<BookResult>();
    waiting.set(request, one);
    worker ??= start();
    worker.postMessage({ request, text, fileName } satisfies ReadRequest);
    return one.promise;
  };
}
