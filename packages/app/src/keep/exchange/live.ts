/** What the stream says, as much of it as is used. */
interface LiveMessage {
  readonly aircraft: string;
  readonly head: number;
  readonly epoch: string;
}

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
  on: { readonly connected: () => void; readonly head: (message: LiveMessage) => void },
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
      const message = readLiveMessage(event.data);
      if (message !== null) on.head(message);
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
function readLiveMessage(text: string): LiveMessage | null {
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof found !== "object" || found === null) return null;
  const { aircraft, head, epoch } = found as { aircraft?: unknown; head?: unknown; epoch?: unknown }; // judged here
  if (typeof aircraft !== "string" || typeof head !== "number" || typeof epoch !== "string") return null;
  return Number.isSafeInteger(head) ? { aircraft, head, epoch } : null;
}
