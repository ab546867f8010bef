import { canonical, hashOfEvent, type LedgerEvent, LongPast, parseEvent } from "@witnessmark/ledger";
import type { LiveSource } from "../exchange/live.ts";
import { PAGE_EVENTS } from "../exchange/server.ts";

interface Kept {
  readonly ledgerSeq: number;
  readonly text: string;
}

interface Data {
  epoch: string;
  readonly ledgers: Map<string, Kept[]>;
  readonly photos: Map<string, Uint8Array>;
}

/** A server in memory that keeps to protocol.ts, and can be put back to an older copy of itself. */
export class FakeServer {
  operator = "isles";
  #data: Data = { epoch: "epoch-1", ledgers: new Map(), photos: new Map() };
  readonly quarantine: { readonly text: string; readonly reason: string }[] = [];
  readonly requests: string[] = [];
  now_ms: () => number = () => Date.UTC(2026, 10, 12, 6);
  protocolVersion = 1;
  /** Gives so many events in one answer at most. */
  page = PAGE_EVENTS;
  /** Of the newest so many events nothing is left out for a new phone; an older server knows no such question. */
  wholeEvents: number | null = 10_000;
  /** Looks through so many for one answer to it. */
  neededPage = 10_000;
  /** See `LongPast`. */
  lastKept = 16;
  /** Ids of events that it finds fault with. */
  readonly refuses = new Set<string>();
  /** Answers instead of the server, when it gives a response. */
  intercept: (method: string, path: string) => Response | null = () => null;
  readonly #listeners = new Set<(message: string) => void>();

  /** What `fetch` does on a phone that has a connection. */
  readonly fetch: typeof globalThis.fetch = async (input, init) => {
    const url = new URL(String(input), "http://localhost");
    const method = init?.method ?? "GET";
    this.requests.push(`${method} ${url.pathname}`);
    const body = init?.body;
    const intercepted = this.intercept(method, url.pathname);
    if (intercepted?.type === "error") throw new TypeError("fetch failed"); // as a fetch without a connection ends
    return intercepted ?? (await this.#answer(method, url, body));
  };

  async #answer(method: string, url: URL, body: BodyInit | null | undefined): Promise<Response> {
    const [, api, kind, name = "", what] = url.pathname.split("/").map(decodeURIComponent);
    if (api !== "api")
      return Response.json({ error: { code: "unknown", message: "No such place." } }, { status: 404 });
    if (kind === "about") {
      return Response.json({
        program: "witnessmark",
        version: "0",
        protocolVersion: this.protocolVersion,
        operator: this.operator,
        epoch: this.#data.epoch,
        now: new Date(this.now_ms()).toISOString(),
      });
    }
    if (kind === "photos") return this.#photo(method, name, body);
    if (kind === "aircraft" && name === "") {
      const aircraft = [...this.#data.ledgers].map(([of, events]) => ({ aircraft: of, head: events.length }));
      return Response.json({ epoch: this.#data.epoch, aircraft });
    }
    if (what === "devices") return Response.json({ epoch: this.#data.epoch, devices: this.#devices(name) });
    if (method === "POST") return Response.json(await this.#push(name, String(body)));
    const after = Number(url.searchParams.get("after"));
    if (what === "needed") return this.#needed(name, after, url.searchParams.get("upTo"));
    const afterId = url.searchParams.get("afterId");
    if (after > 0 && afterId !== null && this.events(name)[after - 1]?.id !== afterId) {
      const error = { code: "another-history", message: "Another event stands there." };
      return Response.json({ error }, { status: 409 });
    }
    return Response.json(this.#pull(name, after));
  }

  async #photo(method: string, sha256: string, body: BodyInit | null | undefined): Promise<Response> {
    const there = this.#data.photos.get(sha256);
    if (method === "PUT") {
      this.#data.photos.set(sha256, new Uint8Array(await new Response(body ?? null).arrayBuffer()));
      return new Response(null, { status: there ? 204 : 201 });
    }
    if (!there)
      return Response.json({ error: { code: "missing", message: "No such photo." } }, { status: 404 });
    return new Response(method === "HEAD" ? null : new Uint8Array(there), {
      headers: { "content-type": "image/jpeg" },
    });
  }

  async #push(aircraft: string, body: string) {
    const { events } = JSON.parse(body) as { events: LedgerEvent[] }; // sent by the code under test
    const results = [];
    for (const event of events) results.push(await this.#take(aircraft, event));
    const head = this.#ledger(aircraft).length;
    const message = JSON.stringify({ aircraft, head, epoch: this.#data.epoch });
    for (const listener of this.#listeners) listener(message);
    return { epoch: this.#data.epoch, head, results };
  }

  async #take(aircraft: string, event: LedgerEvent) {
    const { id } = event;
    const parsed = parseEvent(event);
    const isSound =
      parsed.ok &&
      event.operator === this.operator &&
      event.aircraft === aircraft &&
      !this.refuses.has(id) &&
      (await hashOfEvent(event)) === event.hash;
    const text = canonical(event);
    if (!isSound) return this.#setAside(id, text, "quarantined", "It is not as it should be.");
    const ledger = this.#ledger(aircraft);
    const all = ledger.map((kept) => ({ ...kept, event: JSON.parse(kept.text) as LedgerEvent })); // put in below
    const same = all.find((kept) => kept.event.id === id);
    if (same && same.text === text) return { id, outcome: "duplicate", ledgerSeq: same.ledgerSeq };
    const place = all.find(
      ({ event: kept }) => kept.device === event.device && kept.deviceSeq === event.deviceSeq,
    );
    if (same || place) return this.#setAside(id, text, "conflict", "Another entry stands there.");
    const ledgerSeq = ledger.length + 1;
    ledger.push({ ledgerSeq, text });
    return { id, outcome: "accepted", ledgerSeq };
  }

  #setAside(id: string, text: string, outcome: "conflict" | "quarantined", reason: string) {
    this.quarantine.push({ text, reason });
    return { id, outcome, reason };
  }

  #pull(aircraft: string, after: number) {
    const ledger = this.#ledger(aircraft);
    const events = ledger.slice(after, after + this.page).map(({ ledgerSeq, text }) => ({
      ledgerSeq,
      receivedAt: new Date(this.now_ms()).toISOString(),
      event: JSON.parse(text),
    }));
    return { epoch: this.#data.epoch, head: ledger.length, events };
  }

  #needed(aircraft: string, after: number, asked: string | null): Response {
    if (this.wholeEvents === null)
      return Response.json({ error: { code: "nothing-here", message: "No such place." } }, { status: 404 });
    const ledger = this.#ledger(aircraft);
    const head = ledger.length;
    const upTo = Math.min(Number(asked ?? head), head);
    const wholeFrom = Math.max(1, upTo - this.wholeEvents + 1);
    const past = new LongPast(this.lastKept);
    const events = this.events(aircraft);
    for (const event of events.slice(0, upTo)) past.see(event);
    const to = Math.max(after, Math.min(upTo, after + this.neededPage));
    const found = ledger.slice(after, to).flatMap(({ ledgerSeq }) => {
      const event = events[ledgerSeq - 1];
      const isGiven = event !== undefined && (ledgerSeq >= wholeFrom || past.isNeeded(event));
      return isGiven ? [{ ledgerSeq, receivedAt: new Date(this.now_ms()).toISOString(), event }] : [];
    });
    return Response.json({ epoch: this.#data.epoch, head, upTo, to, wholeFrom, events: found });
  }

  #devices(aircraft: string): Record<string, number> {
    const numbers = new Map<string, Set<number>>();
    for (const event of this.events(aircraft)) {
      numbers.set(event.device, (numbers.get(event.device) ?? new Set()).add(event.deviceSeq));
    }
    const heads: Record<string, number> = {};
    for (const [device, seen] of numbers) {
      let highest = 0;
      while (seen.has(highest + 1)) highest++;
      if (highest > 0) heads[device] = highest;
    }
    return heads;
  }

  #ledger(aircraft: string): Kept[] {
    const ledger = this.#data.ledgers.get(aircraft) ?? [];
    this.#data.ledgers.set(aircraft, ledger);
    return ledger;
  }

  events(aircraft: string): LedgerEvent[] {
    return this.#ledger(aircraft).map(({ text }) => JSON.parse(text) as LedgerEvent); // put in by `#take`
  }

  /** Changes one event where it lies, as a failing disk would. */
  damage(aircraft: string, ledgerSeq: number, change: (event: Record<string, unknown>) => void): void {
    const ledger = this.#ledger(aircraft);
    const kept = ledger[ledgerSeq - 1];
    if (!kept) throw new Error(`no event ${ledgerSeq} to damage`);
    const event = JSON.parse(kept.text) as Record<string, unknown>; // an event, read as plain JSON
    change(event);
    ledger[ledgerSeq - 1] = { ...kept, text: JSON.stringify(event) };
  }

  /** Leaves a hole, as no server should. */
  cut(aircraft: string, ledgerSeq: number): void {
    this.#ledger(aircraft).splice(ledgerSeq - 1, 1);
  }

  hasPhoto(sha256: string): boolean {
    return this.#data.photos.has(sha256);
  }

  backUp(): Data {
    return structuredClone(this.#data);
  }

  /** Puts an older copy back; with another epoch when the server can tell that it is one. */
  restore(copy: Data, epoch = copy.epoch): void {
    this.#data = { ...structuredClone(copy), epoch };
  }

  get epoch(): string {
    return this.#data.epoch;
  }

  /** A live stream, as a phone with a connection opens it. */
  liveSource(): LiveSource & { fail(): void } {
    const handlers = new Set<(event: MessageEvent<string>) => void>();
    const deliver = (data: string) => {
      for (const handler of handlers) handler(new MessageEvent("head", { data }));
    };
    this.#listeners.add(deliver);
    const source = {
      readyState: 1,
      onopen: null as ((event: Event) => void) | null,
      onerror: null as ((event: Event) => void) | null,
      addEventListener: (_type: "head", handler: (event: MessageEvent<string>) => void) => {
        handlers.add(handler);
        queueMicrotask(() => source.onopen?.(new Event("open")));
      },
      close: () => {
        source.readyState = 2;
        this.#listeners.delete(deliver);
      },
      fail: () => {
        source.close();
        source.onerror?.(new Event("error"));
      },
    };
    return source;
  }
}
