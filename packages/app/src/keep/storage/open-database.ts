import { openDB } from "idb";
import { DATABASE_VERSION, type KeepDatabase, type KeepSchema, upgrade } from "./schema.ts";

/** Names a browser gives to an error that means: this connection is dead, a new one may live. */
const DEAD = new Set(["InvalidStateError", "UnknownError", "TransactionInactiveError"]);

/** Whether an error says that the connection was taken away, as phones do to a page in the background. */
export const isDeadConnection = (error: unknown): boolean =>
  error instanceof DOMException && DEAD.has(error.name);

/** Why the storage cannot be opened, in one sentence for a person that says what to do. */
export class CannotOpen extends Error {
  override readonly name = "CannotOpen";
}

/** The one way to the storage: opens it, and opens it again when the browser has taken the connection away. */
export interface Connection {
  /**
   * Runs work on a live connection. When the connection turns out to be dead, the work is run once more on a fresh
   * one, so it must be safe to run twice.
   *
   * @throws {CannotOpen} when no connection can be had
   */
  run<T>(work: (database: KeepDatabase) => Promise<T>): Promise<T>;
  /** Looks whether the connection still lives, and renews it when not. Called when a page is shown again. */
  probe(): Promise<void>;
  close(): void;
}

/** @param version the version to bring the storage to; only a test of upgrades gives another */
export function connect(name: string, version = DATABASE_VERSION): Connection {
  let opening: Promise<KeepDatabase> | null = null;
  let closed = false;

  const forget = (which: Promise<KeepDatabase>) => {
    if (opening === which) opening = null;
  };

  function open(): Promise<KeepDatabase> {
    if (closed) return Promise.reject(new CannotOpen("This page has closed its storage. Reload the page."));
    if (opening) return opening;
    const mine: Promise<KeepDatabase> = openDatabase(name, version, {
      // A newer version of the app wants to add to the storage: stand aside at once, or it hangs.
      onVersionChange: () => forget(mine),
      onTerminated: () => forget(mine),
    });
    opening = mine;
    mine.catch(() => forget(mine));
    return mine;
  }

  async function renew(dead: Promise<KeepDatabase>): Promise<void> {
    forget(dead);
    (await dead).close();
  }

  async function run<T>(work: (database: KeepDatabase) => Promise<T>): Promise<T> {
    let first = open();
    try {
      await first;
    } catch (error) {
      // A phone that is just waking up refuses the first try; the second says why for good.
      if (!(error instanceof CannotOpen && isDeadConnection(error.cause))) throw error;
      first = open();
    }
    const database = await first;
    try {
      return await work(database);
    } catch (error) {
      if (!isDeadConnection(error) || closed) throw error;
      await renew(first);
      return await work(await open());
    }
  }

  return {
    run,
    async probe() {
      await run((database) => database.count("settings"));
    },
    close() {
      closed = true;
      opening?.then((database) => database.close()).catch(() => {}); // it never opened: nothing to close
      opening = null;
    },
  };
}

async function openDatabase(
  name: string,
  version: number,
  on: { readonly onVersionChange: () => void; readonly onTerminated: () => void },
): Promise<KeepDatabase> {
  if (globalThis.indexedDB === undefined) {
    throw new CannotOpen("This browser keeps no data for pages. Open Witnessmark in another browser.");
  }
  try {
    return await openOrStandAside(name, version, on);
  } catch (error) {
    throw error instanceof CannotOpen ? error : new CannotOpen(sentenceFor(error), { cause: error });
  }
}

async function openOrStandAside(
  name: string,
  version: number,
  on: { readonly onVersionChange: () => void; readonly onTerminated: () => void },
): Promise<KeepDatabase> {
  const inTheWay = Promise.withResolvers<never>();
  const opening = openDB<KeepSchema>(name, version, {
    upgrade: (database, oldVersion) => upgrade(database, oldVersion),
    blocked() {
      opening.then((database) => database.close()).catch(() => {}); // nobody waits for it any more
      inTheWay.reject(
        new CannotOpen(
          "An older Witnessmark is still open in another tab. Close that tab, then reload this page.",
        ),
      );
    },
    blocking(_current, _blocked, event) {
      on.onVersionChange();
      // The event comes from the connection that is in the way.
      (event.target as IDBDatabase).close();
    },
    terminated: on.onTerminated,
  });
  return await Promise.race([opening, inTheWay.promise]);
}

function sentenceFor(error: unknown): string {
  const name = error instanceof DOMException ? error.name : "";
  switch (name) {
    case "VersionError":
      return "A newer Witnessmark has already run here. Reload the page to use it; nothing is lost.";
    case "QuotaExceededError":
      return "There is no room left on this phone. Free some room, then reload the page.";
    case "SecurityError":
    case "InvalidStateError":
      return "This browser window keeps no data, perhaps because it is a private one. Open Witnessmark in an ordinary window.";
    default: {
      const detail = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
      return `The storage of this phone cannot be opened (${detail}). Close other tabs of Witnessmark, then reload the page; restart the phone if that does not help.`;
    }
  }
}
