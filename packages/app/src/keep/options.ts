import { type AppUpdates, NO_UPDATES, updatesOfThisPage } from "../sw/updates.ts";
import { type BookReader, makeBookReader } from "./books/read-in-worker.ts";
import type { LiveSource } from "./exchange/live.ts";
import type { Server } from "./exchange/server.ts";
import { serverInWorker } from "./exchange/server-in-worker.ts";
import type { SmallPicture } from "./photos/shrink.ts";
import { shrinkOnThisPhone } from "./photos/shrink-on-this-phone.ts";

/** What a keeper takes from the page around it. Everything has a default: the page itself. */
export interface KeepOptions {
  /** Name of the database. Two keepers with one name are two tabs on one phone. */
  readonly name?: string;
  readonly server?: Server;
  /** Milliseconds since 1970 UTC, by this device's clock. */
  readonly now_ms?: () => number;
  /** Opens the server's live stream; `null` for none. */
  readonly liveSource?: (() => LiveSource) | null;
  readonly locks?: LockManager | undefined;
  /** From so many events on a ledger is long: a phone that is new to it takes what it needs, and no more. */
  readonly longLedger?: number;
  /** Whether exchanges happen by themselves; otherwise only when `exchange` is called. */
  readonly automatic?: boolean;
  readonly page?: PageEvents;
  readonly storage?: Pick<StorageManager, "persist" | "persisted" | "estimate"> | null;
  readonly shrink?: (file: Blob) => Promise<SmallPicture>;
  readonly readBook?: BookReader;
  readonly updates?: AppUpdates;
  readonly userAgent?: string;
  /** Runs what nobody waits for at the first page, once that stands. */
  readonly afterFirstPage?: (work: () => void) => void;
  /** Runs work when the page is at rest; heavy work when nobody looks at it. */
  readonly later?: (work: () => void, isHeavy: boolean) => void;
  /** Told of what went wrong without harm to the record. */
  readonly report?: (error: unknown) => void;
}

/** When a page is shown, hidden, or told of a connection. */
export interface PageEvents {
  isShown(): boolean;
  onShown(listener: () => void): () => void;
  onHidden(listener: () => void): () => void;
  /** A hint only: a network is not a server. */
  onOnline(listener: () => void): () => void;
}

/** Some seconds of taking on a slow phone: below that it takes everything. */
const LONG_LEDGER = 20_000;

export type FullOptions = Required<KeepOptions>;

export function fullOptions(options: KeepOptions): FullOptions {
  const report = options.report ?? ((error) => console.error(error));
  return {
    name: options.name ?? "witnessmark",
    server: options.server ?? serverInWorker(),
    now_ms: options.now_ms ?? (() => Date.now()),
    liveSource:
      options.liveSource === undefined
        ? typeof EventSource === "undefined"
          ? null
          : () => new EventSource("/api/live")
        : options.liveSource,
    locks: "locks" in options ? options.locks : globalThis.navigator?.locks,
    longLedger: options.longLedger ?? LONG_LEDGER,
    automatic: options.automatic ?? true,
    page: options.page ?? (typeof document === "undefined" ? NO_PAGE : thisPage()),
    storage: options.storage === undefined ? (globalThis.navigator?.storage ?? null) : options.storage,
    shrink: options.shrink ?? shrinkOnThisPhone,
    readBook: options.readBook ?? makeBookReader(),
    updates: options.updates ?? (typeof document === "undefined" ? NO_UPDATES : updatesOfThisPage(report)),
    userAgent: options.userAgent ?? globalThis.navigator?.userAgent ?? "",
    afterFirstPage: options.afterFirstPage ?? ((work) => work()),
    later: options.later ?? whenIdle,
    report,
  };
}

const NO_PAGE: PageEvents = {
  isShown: () => true,
  onShown: () => () => {},
  onHidden: () => () => {},
  onOnline: () => () => {},
};

function thisPage(): PageEvents {
  const on = (target: EventTarget, type: string, listener: () => void) => {
    target.addEventListener(type, listener);
    return () => target.removeEventListener(type, listener);
  };
  const isShown = () => document.visibilityState === "visible";
  return {
    isShown,
    onShown(listener) {
      // A page that comes back from the back-forward cache tells it by `pageshow` only.
      const offs = [
        on(document, "visibilitychange", () => isShown() && listener()),
        on(window, "pageshow", listener),
      ];
      return () => {
        for (const off of offs) off();
      };
    },
    onHidden: (listener) => on(document, "visibilitychange", () => isShown() || listener()),
    onOnline: (listener) => on(window, "online", listener),
  };
}

function whenIdle(work: () => void, isHeavy: boolean): void {
  if (isHeavy && typeof document !== "undefined" && document.visibilityState === "visible") {
    document.addEventListener("visibilitychange", work, { once: true });
  } else if (typeof requestIdleCallback === "function") requestIdleCallback(work, { timeout: 10_000 });
  else setTimeout(work, 1_000);
}
