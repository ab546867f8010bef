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
import type { OperatorStore } from "@witnessmark/store";
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

export async function eventsOf(store: OperatorStore, aircraft: string): Promise<LedgerEvent[]> {
  const events: LedgerEvent[] = [];
  for (let after = 0; ; ) {
    const page = await store.page(aircraft, { after, ...PAGE });
    for (const kept of page.events) {
      const parsed = parseEvent(JSON.parse(kept.text));
      if (!parsed.ok)
        throw new Refused(
          "unreadable",
          `Event ${kept.ledgerSeq} of ${aircraft} in the database does not read; run the program that wrote it.`,
        );
      events.push(parsed.event);
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
  if (from === "-" || /\.jsonl?$|[/\\]/.test(from)) {
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
    const known = (await store.heads()).map((head) => head.aircraft).join(", ") || "none";
    throw new Refused(
      "unreadable",
      `There is no ledger of ${from} in the database. There are: ${known}. For a file, give its name with its ending: ${from}.jsonl`,
    );
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
