import { type Book, faultSentence, readBook } from "@witnessmark/book";
import {
  type AircraftState,
  bookInForce,
  fold,
  type LedgerEvent,
  type LedgerFault,
  parseEvent,
  readLedger,
} from "@witnessmark/ledger";
import type { KeptEvent, OperatorStore } from "@witnessmark/store";
import { type Given, textOption } from "./arguments.ts";
import { withStore } from "./open-database.ts";
import { Refused } from "./refused.ts";

export interface LoadedLedger {
  readonly aircraft: string;
  readonly operator: string;
  readonly events: readonly LedgerEvent[];
  /** What is wrong with the file; none for a database, which checked each event as it came. */
  readonly faults: readonly LedgerFault[];
}

/** The options of every command that reads a ledger. */
export const LEDGER_OPTIONS = {
  data: { type: "string" },
  database: { type: "string" },
  operator: { type: "string" },
} as const;

const PAGE = { limit: 500, most_B: 8_000_000 };

/** A ledger in the database, read page by page as often as it is needed: it need not fit into memory. */
export interface StoredLedger {
  readonly aircraft: string;
  readonly operator: string;
  readonly count: number;
  events(): AsyncIterable<readonly LedgerEvent[]>;
}

/** Whether a ledger is named by its file; otherwise by a registration. */
export const isFile = (from: string): boolean => from === "-" || /\.jsonl?$|[/\\]/.test(from);

/** Opens the database for as long as the ledger is used. @throws {Refused} when it has none of that registration */
export async function withStoredLedger<T>(
  given: Given,
  aircraft: string,
  use: (ledger: StoredLedger) => Promise<T>,
): Promise<T> {
  return await withStore(given, async (store, operator) => {
    const { head } = await store.page(aircraft, { after: 0, limit: 1, most_B: 1 });
    if (head === 0) throw await noLedger(store, aircraft);
    return await use({ aircraft, operator, count: head, events: () => pagesOf(store, aircraft, head) });
  });
}

async function* pagesOf(
  store: OperatorStore,
  aircraft: string,
  head: number,
): AsyncGenerator<readonly LedgerEvent[]> {
  for (let after = 0; after < head; ) {
    const { events } = await store.page(aircraft, {
      ...PAGE,
      after,
      limit: Math.min(PAGE.limit, head - after),
    });
    yield events.map((kept) => asEvent(kept, aircraft));
    after = events.at(-1)?.ledgerSeq ?? head;
  }
}

function asEvent({ text, ledgerSeq }: KeptEvent, aircraft: string): LedgerEvent {
  const parsed = parseEvent(JSON.parse(text));
  if (parsed.ok) return parsed.event;
  throw new Refused(
    "unreadable",
    `Event ${ledgerSeq} of ${aircraft} in the database does not read; run the program that wrote it.`,
  );
}

async function noLedger(store: OperatorStore, from: string): Promise<Refused> {
  const known = (await store.heads()).map((head) => head.aircraft).join(", ") || "none";
  return new Refused(
    "unreadable",
    `There is no ledger of ${from} in the database. There are: ${known}. For a file, give its name with its ending: ${from}.jsonl`,
  );
}

export async function eventsOf(store: OperatorStore, aircraft: string): Promise<LedgerEvent[]> {
  const events: LedgerEvent[] = [];
  for (let after = 0; ; ) {
    const page = await store.page(aircraft, { after, ...PAGE });
    for (const kept of page.events) {
      events.push(asEvent(kept, aircraft));
      after = kept.ledgerSeq;
    }
    if (page.events.length === 0 || after >= page.head) return events;
  }
}

/**
 * A ledger by its file (JSON Lines, `-` for standard input) or, for a registration, out of the database.
 *
 * @throws {Refused} when there is none, with what to do
 */
export async function loadLedger(given: Given, from: string): Promise<LoadedLedger> {
  const { io } = given;
  if (isFile(from)) {
    const read = await readLedger(await io.readText(from), { now_ms: io.now_ms() });
    const first = read.events[0];
    if (first === undefined) {
      const why = read.faults[0]?.says ?? "it holds no events";
      throw new Refused("faults", `${from} is no ledger that can be read: ${why}.`);
    }
    return { aircraft: first.aircraft, operator: first.operator, events: read.events, faults: read.faults };
  }
  return withStore(given, async (store, operator) => {
    const events = await eventsOf(store, from);
    if (events.length > 0) return { aircraft: from, operator, events, faults: [] };
    throw await noLedger(store, from);
  });
}

/** The state of a ledger and the book to judge it by: the one in force, or the one of `--book`. */
export async function stateAndBook(
  given: Given,
  ledger: LoadedLedger,
): Promise<{ readonly state: AircraftState; readonly book: Book }> {
  const state = fold(ledger.events);
  const path = textOption(given, "book");
  const adopted = bookInForce(state);
  if (path === undefined && (adopted === undefined || adopted === null)) {
    throw new Refused(
      "unreadable",
      `The ledger of ${ledger.aircraft} holds no book. Give one: --book my-aircraft.yaml`,
    );
  }
  const text = path === undefined ? (adopted?.text ?? "") : await given.io.readText(path);
  const result = await readBook(text, path ?? `book of ${ledger.aircraft}`);
  if (result.ok) return { state, book: result.book };
  for (const fault of result.faults) given.io.err(faultSentence(fault));
  throw new Refused(
    "faults",
    `${path ?? `The book in the ledger of ${ledger.aircraft}`} has faults (above). Mend them, or give another book: --book my-aircraft.yaml`,
  );
}
