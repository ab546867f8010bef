import type { AircraftHead, OperatorStore, Store } from "@witnessmark/store";
import type { LiveMessage } from "../protocol.ts";

/** A silent line is cut by many a proxy after half a minute. */
const HEARTBEAT_MS = 15_000;
/** Messages that a client may leave unread before its line is cut; it comes back and is told how things stand. */
const MOST_UNREAD = 200;
/** How long a browser waits before it comes back. */
const RETRY_MS = 3_000;

type Line = ReadableStreamDefaultController<Uint8Array>;

const encoder = new TextEncoder();
const headEvent = (message: LiveMessage) => `event: head\ndata: ${JSON.stringify(message)}\n\n`;

/** Every live line of this process: one watch on the store, however many lines there are. */
export class LiveHub {
  readonly #store: Store;
  readonly #own: OperatorStore;
  readonly #onProblem: (problem: unknown) => void;
  readonly #lines = new Map<Line, string>();
  #stopWatch: (() => void) | null = null;
  #heartbeat: NodeJS.Timeout | null = null;
  #closed = false;

  constructor(store: Store, own: OperatorStore, onProblem: (problem: unknown) => void) {
    this.#store = store;
    this.#own = own;
    this.#onProblem = onProblem;
  }

  /** How many lines there are: of one client, and of all. */
  count(client: string): { readonly ofClient: number; readonly inAll: number } {
    let ofClient = 0;
    for (const one of this.#lines.values()) if (one === client) ofClient += 1;
    return { ofClient, inAll: this.#lines.size };
  }

  /** A line that first says how each aircraft stands, then what is new. */
  open(client: string): ReadableStream<Uint8Array> {
    let own: Line | null = null;
    return new ReadableStream<Uint8Array>(
      {
        start: (line) => {
          own = line;
          this.#lines.set(line, client);
          this.#send(line, `retry: ${RETRY_MS}\n\n`);
          if (this.#closed) this.#cut(line);
          else this.#begin(line);
        },
        cancel: () => {
          if (own !== null) this.#forget(own);
        },
      },
      { highWaterMark: MOST_UNREAD },
    );
  }

  close(): void {
    this.#closed = true;
    for (const line of [...this.#lines.keys()]) this.#cut(line);
  }

  #begin(line: Line): void {
    // The watch comes before the look, so that nothing falls between the two.
    this.#stopWatch ??= this.#own.watch((change) => void this.#tell(change));
    this.#heartbeat ??= setInterval(() => this.#beat(), HEARTBEAT_MS).unref();
    void this.#sayHowThingsStand(line);
  }

  async #sayHowThingsStand(line: Line): Promise<void> {
    try {
      const epoch = await this.#store.epoch();
      for (const head of await this.#own.heads()) this.#send(line, headEvent({ ...head, epoch }));
    } catch (error) {
      this.#onProblem(error);
      this.#cut(line);
    }
  }

  async #tell(change: AircraftHead): Promise<void> {
    try {
      const text = headEvent({ ...change, epoch: await this.#store.epoch() });
      for (const line of [...this.#lines.keys()]) this.#send(line, text);
    } catch (error) {
      this.#onProblem(error);
    }
  }

  #beat(): void {
    for (const line of [...this.#lines.keys()]) this.#send(line, ": still here\n\n");
  }

  #send(line: Line, text: string): void {
    if (!this.#lines.has(line)) return;
    if ((line.desiredSize ?? 0) <= 0) this.#cut(line);
    else line.enqueue(encoder.encode(text));
  }

  #cut(line: Line): void {
    if (!this.#lines.has(line)) return;
    this.#forget(line);
    line.close();
  }

  #forget(line: Line): void {
    this.#lines.delete(line);
    if (this.#lines.size > 0) return;
    this.#stopWatch?.();
    this.#stopWatch = null;
    if (this.#heartbeat !== null) clearInterval(this.#heartbeat);
    this.#heartbeat = null;
  }
}
