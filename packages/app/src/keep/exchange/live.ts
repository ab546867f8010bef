import * as z from "zod/mini";

/** What the stream says, as much of it as is used. */
const LiveMessage = z.object({ aircraft: z.string(), head: z.int(), epoch: z.string() });

/** What of an EventSource is used. */
export interface LiveSource {
  readonly readyState: number;
  onopen: ((event: Event) => void) | null;
  onerror: ((event: Event) => void) | null;
  addEventListener(type: "head", listener: (event: MessageEvent<string>) => void): void;
  close(): void;
}

const CLOSED = 2;
const FIRST_WAIT_MS = 1_000;
const LONGEST_WAIT_MS = 60_000;

export interface Live {
  open(): void;
  close(): void;
}

/**
 * Listens to the server's news of new events. It opens the stream again whenever it ends, waiting longer each time;
 * how often it breaks says nothing about the record, which the exchanges bring up to date.
 */
export function listen(
  makeSource: () => LiveSource,
  on: { readonly connected: () => void; readonly head: (message: z.infer<typeof LiveMessage>) => void },
  random: () => number = Math.random,
): Live {
  let source: LiveSource | null = null;
  let failures = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function open(): void {
    clearTimeout(timer);
    if (source && source.readyState !== CLOSED) return;
    const mine = makeSource();
    source = mine;
    mine.onopen = () => {
      failures = 0;
      on.connected(); // what happened before it opened was not told
    };
    mine.onerror = () => {
      // The browser tries again by itself after a broken connection, and gives up after a refusal.
      if (mine.readyState !== CLOSED || source !== mine) return;
      const wait_ms = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** failures++) * (0.5 + random() / 2);
      timer = setTimeout(open, wait_ms);
    };
    mine.addEventListener("head", (event) => {
      const message = z.safeParse(LiveMessage, readJson(event.data));
      if (message.success) on.head(message.data);
    });
  }

  return {
    open,
    close() {
      clearTimeout(timer);
      source?.close();
      source = null;
    },
  };
}

/** A message that does not read is no news; the next exchange brings what it would have told. */
function readJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
