import type { Author, LedgerEvent } from "@witnessmark/ledger";
import { type BookShelf, booksIn } from "./books/shelf.ts";
import { type Draft, NotKept } from "./contract.ts";
import type { ExchangesAtWork } from "./exchange/at-work.ts";
import type { Holdings } from "./holdings.ts";
import type { Locks } from "./locks.ts";
import type { FullOptions } from "./options.ts";
import { part } from "./part.ts";
import type { PhoneInHand } from "./phone-in-hand.ts";
import { withRoom } from "./room.ts";
import { asNotKept } from "./storage/not-kept.ts";
import type { Connection } from "./storage/open-database.ts";
import type { PhotoRow } from "./storage/schema.ts";
import type { Tabs } from "./tabs.ts";

/** What the first page is shown without. It comes right after it. */
const appendPart = part(() => import("./ledger/append.ts"));

/** That it is kept is shown before it is sent: both at once would make a slow phone slower for the one who waits. */
const SHOWN_FIRST_ms = 150;

export interface WithDrafts {
  readonly photo?: PhotoRow;
  readonly committed?: (() => Promise<void>) | undefined;
}

/** The writing of what is entered on this phone. */
export interface Writing {
  /** Keeps drafts as events, all or none, and has them sent. @throws {NotKept} */
  keep(registration: string, drafts: readonly Draft[], given?: WithDrafts): Promise<readonly LedgerEvent[]>;
  /** Runs a write of what is no event; when the phone is full, once more with room made. @throws {NotKept} */
  write<T>(write: () => Promise<T>): Promise<T>;
  /** Who holds the phone will want to keep something: the part that does it is fetched before that. */
  makeReady(): void;
}

/**
 * @param parts.opened resolves when the storage was read, or cannot be
 * @param parts.cannot why nothing can be kept now; `null` when it can
 * @param parts.showFirst runs what shows a person that it is kept, before all else that follows from it
 */
export function makeWriting(parts: {
  readonly options: FullOptions;
  readonly connection: Connection;
  readonly locks: Locks;
  readonly shelf: BookShelf;
  readonly holdings: Holdings;
  readonly phone: PhoneInHand;
  readonly tabs: Tabs;
  readonly exchanges: ExchangesAtWork;
  readonly report: (error: unknown) => void;
  readonly opened: () => Promise<void>;
  readonly cannot: () => string | null;
  readonly showFirst: (show: () => Promise<void>) => Promise<void>;
}): Writing {
  const { options, connection, locks, shelf, holdings, phone, tabs, exchanges, report } = parts;
  const estimate = async () => (await options.storage?.estimate()) ?? {};

  function authorInHand(): Author {
    const why = parts.cannot();
    if (why !== null) throw new NotKept("gone", `Not kept. ${why}`);
    const { person } = phone.now();
    if (person === null) throw new NotKept("other", "Not kept. Say first who holds the phone.");
    return person;
  }

  /** Every entry names whose record it belongs to, which only the server can tell, once. */
  async function operatorOrRefuse(): Promise<string> {
    if (phone.now().operator === null) await exchanges.want("all");
    const { operator } = phone.now();
    if (operator !== null) return operator;
    throw new NotKept(
      "other",
      "Not kept. This phone has never reached its server, which it must do once. Connect it, then answer again.",
    );
  }

  async function write<T>(work: () => Promise<T>): Promise<T> {
    await parts.opened();
    try {
      return await withRoom(connection, report, work);
    } catch (error) {
      throw await asNotKept(error, estimate);
    }
  }

  return {
    write,
    makeReady() {
      if (phone.now().person !== null) appendPart().catch(() => {}); // asked for again by the first entry, and told there
    },
    async keep(registration, drafts, { photo, committed } = {}) {
      await parts.opened();
      const author = authorInHand();
      if (drafts.length === 0) return [];
      const operator = await operatorOrRefuse();
      let taken: Promise<void> | undefined;
      let shownFirst: Promise<void> | undefined;
      try {
        await shelf.ready(booksIn(drafts));
        const { appendDrafts } = await appendPart();
        const { events } = await withRoom(connection, report, () =>
          locks.inPage(`append:${registration}`, async () => {
            const place = { device: phone.device(), row: holdings.of(registration).row };
            const context = {
              connection,
              operator,
              author,
              now_ms: options.now_ms(),
              clockOffset_ms: phone.now().clockOffset_ms,
            };
            const appended = await appendDrafts(context, place, drafts, photo);
            const { row, events: inserted } = appended;
            if (committed !== undefined) shownFirst = parts.showFirst(committed);
            taken = holdings.committed(registration, { row, inserted, waiting: inserted.length });
            return appended;
          }),
        );
        await taken;
        await shownFirst;
        tabs.tell({ kind: "aircraft", aircraft: [registration] });
        if (options.automatic)
          setTimeout(() => void exchanges.want({ aircraft: registration }), SHOWN_FIRST_ms);
        return events.slice(-drafts.length);
      } catch (error) {
        throw await asNotKept(error, estimate);
      }
    },
  };
}
