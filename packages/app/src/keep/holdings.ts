import { bookInForce, type LedgerEvent } from "@witnessmark/ledger";
import { type BookShelf, booksIn } from "./books/shelf.ts";
import type { AircraftEntry } from "./contract.ts";
import { addEvents, type LedgerMemory, shorten, TAIL_KEPT } from "./ledger/ledger-memory.ts";
import { emptyAircraft, type LoadedAircraft, loadAircraft, readCounts } from "./ledger/load.ts";
import { saveProjection } from "./ledger/save-projection.ts";
import type { Coming } from "./snapshots.ts";
import type { Connection } from "./storage/open-database.ts";
import { type AircraftRow, isComing } from "./storage/schema.ts";

/** The aircraft that this phone keeps, in memory. Changed only by what has been committed to the storage. */
export interface Holdings {
  names(): readonly string[];
  of(aircraft: string): LoadedAircraft;
  /** The same map until something in it has changed. */
  entries(): ReadonlyMap<string, AircraftEntry>;
  /** The record that is coming onto this phone for the first time, when one is. */
  coming(): Coming | null;
  /** Takes in what this page has just committed. */
  committed(aircraft: string, change: Committed): Promise<void>;
  /** Reads from the storage what another tab has changed. */
  refresh(aircraft: string): Promise<void>;
  /** Reads every aircraft whose row in the storage is not the one in memory. */
  catchUp(): Promise<void>;
}

export interface Committed {
  readonly row: AircraftRow;
  /** Events that are new. */
  readonly inserted?: readonly LedgerEvent[];
  /** How many of them wait for the server. Left out, the storage is asked what waits now. */
  readonly waiting?: number;
  /** Events were taken out or replaced: only the storage can tell what is left. */
  readonly lookAgain?: boolean;
}

/** A copy of a state is written again when the state has grown by this much: a twentieth. */
const GROWTH_1 = 0.05;
/** Copying a state of more events than this holds the page up so long that a person would feel it. */
const HEAVY_EVENTS = 20_000;

interface Held {
  readonly loaded: LoadedAircraft;
  readonly entry: AircraftEntry;
}

/** @param parts.later runs work when the page is at rest; heavy work when nobody looks at it */
export function openHoldings(
  connection: Connection,
  shelf: BookShelf,
  parts: {
    readonly now_ms: () => number;
    readonly later: (work: () => void, isHeavy: boolean) => void;
    readonly report: (error: unknown) => void;
    readonly onChange: () => void;
  },
): Holdings {
  let held: ReadonlyMap<string, Held> = new Map();
  let entries: ReadonlyMap<string, AircraftEntry> = new Map();
  /** Counts what this page has taken in, so that an older look at the storage is not laid over it. */
  const versions = new Map<string, number>();
  const savedAt = new Map<string, number>();

  const versionOf = (aircraft: string) => versions.get(aircraft) ?? 0;
  const of = (aircraft: string) => held.get(aircraft)?.loaded ?? emptyAircraft(aircraft);

  function set(aircraft: string, loaded: LoadedAircraft): void {
    versions.set(aircraft, versionOf(aircraft) + 1);
    const ledger = shorten(loaded.ledger, parts.now_ms());
    const kept = { ...loaded, ledger };
    held = new Map(held).set(aircraft, { loaded: kept, entry: entryOf(kept, shelf) });
    entries = new Map(
      [...held]
        .filter(([, { loaded: one }]) => one.ledger.state.eventCount > 0 && !isComing(one.row))
        .map(([name, { entry }]) => [name, entry]),
    );
    saveLater(aircraft, ledger);
    parts.onChange();
  }

  function saveLater(aircraft: string, { base }: LedgerMemory): void {
    const saved = savedAt.get(aircraft) ?? 0;
    if (base.eventCount - saved < Math.max(TAIL_KEPT, saved * GROWTH_1)) return;
    savedAt.set(aircraft, base.eventCount);
    // A copy that cannot be written costs time at the next start, nothing else.
    const save = () => connection.run((database) => saveProjection(database, base)).catch(parts.report);
    parts.later(save, base.eventCount > HEAVY_EVENTS);
  }

  async function load(aircraft: string): Promise<void> {
    let base = held.get(aircraft)?.loaded.ledger.base ?? null;
    for (;;) {
      const version = versionOf(aircraft);
      const row = await connection.run((database) => database.get("aircraft", aircraft));
      if (row !== undefined && isComing(row)) {
        if (versionOf(aircraft) !== version) continue;
        return set(aircraft, { ...emptyAircraft(aircraft), row });
      }
      const { loaded, savedCount } = await loadAircraft(connection, aircraft, base);
      if (savedCount !== null) savedAt.set(aircraft, savedCount);
      await shelf.ready(loaded.ledger.state.books.slice(-1));
      if (versionOf(aircraft) === version) return set(aircraft, loaded);
      // What this page has committed meanwhile may not be in it: look again, from here.
      base = loaded.ledger.base;
    }
  }

  async function committed(aircraft: string, change: Committed): Promise<void> {
    if (isComing(change.row)) return set(aircraft, { ...of(aircraft), row: change.row });
    const events = change.inserted ?? [];
    const unread = booksIn(events).filter(({ sha256 }) => !shelf.find(sha256));
    if (unread.length > 0) await shelf.ready(unread); // otherwise memory is up to date before anyone else has a turn
    for (;;) {
      const before = of(aircraft);
      const isUnread = change.lookAgain || isComing(before.row); // what came was kept, and not folded
      const ledger = isUnread ? undefined : addEvents(before.ledger, events);
      if (ledger === undefined) {
        versions.set(aircraft, versionOf(aircraft) + 1); // a look that has begun is out of date
        return await load(aircraft);
      }
      const adopted = ledger.state.books.at(-1);
      if (adopted && !shelf.find(adopted.sha256)) {
        await shelf.ready([adopted]); // a withdrawal has put an older book in force
        continue;
      }
      set(aircraft, { ...before, row: change.row, ledger, toSend: before.toSend + (change.waiting ?? 0) });
      if (change.waiting === undefined) await recount(aircraft);
      return;
    }
  }

  async function recount(aircraft: string): Promise<void> {
    for (;;) {
      const version = versionOf(aircraft);
      const counts = await connection.run((database) => readCounts(database, aircraft));
      if (versionOf(aircraft) !== version) continue;
      const before = of(aircraft);
      const isSame =
        before.toSend === counts.toSend && before.quarantined.length === 0 && counts.quarantined.length === 0;
      if (!isSame) set(aircraft, { ...before, ...counts });
      return;
    }
  }

  return {
    names: () => [...held.keys()],
    of,
    entries: () => entries,
    coming() {
      const row = [...held.values()].map(({ loaded }) => loaded.row).find(isComing);
      if (row === undefined) return null;
      const taking = row.older?.taking ?? { to: row.pulledTo, upTo: row.comingTo ?? row.pulledTo };
      return { aircraft: row.aircraft, to: taking.to, of: taking.upTo };
    },
    committed,
    refresh: load,
    async catchUp() {
      const rows = await connection.run((database) => database.getAll("aircraft"));
      for (const row of rows) {
        if (JSON.stringify(row) !== JSON.stringify(held.get(row.aircraft)?.loaded.row))
          await load(row.aircraft);
        else await recount(row.aircraft);
      }
    },
  };
}

const olderOf = ({ older }: AircraftRow): Pick<AircraftEntry, "older"> =>
  older?.since
    ? {
        older: {
          since: older.since.recordedAt,
          entries: older.wholeFrom - 1,
          inDoubt: older.askAgain || older.taking !== null,
        },
      }
    : {};

function entryOf({ row, ledger, toSend, quarantined }: LoadedAircraft, shelf: BookShelf): AircraftEntry {
  const { state } = ledger;
  const adopted = bookInForce(state);
  const read = adopted && shelf.find(adopted.sha256);
  return {
    registration: state.aircraft,
    state,
    book: read?.book ?? null,
    bookFaults: read?.faults ?? [],
    toSend,
    quarantined,
    ...olderOf(row),
  };
}
