import { atRest } from "./at-rest.ts";
import { whenFirstFails } from "./first-install.ts";
import { watchForMissingParts } from "./preload-error.ts";

/** A newer version of the app, from the moment it has been fetched until it is taken up. */
export interface AppUpdates {
  waiting(): boolean;
  /** The app's files could not be kept on a first visit: without a net it does not open. */
  cannotBeKept(): boolean;
  subscribe(onChange: () => void): () => void;
  /** Takes it up and reloads the page. Call from a tap, never while an entry is being made. */
  take(): void;
  /** Asks the server whether there is one. */
  look(): void;
}

/** What a page without a service worker has: development, and tests. */
export const NO_UPDATES: AppUpdates = {
  waiting: () => false,
  cannotBeKept: () => false,
  subscribe: () => () => {},
  take: () => {},
  look: () => {},
};

const LOOK_EVERY_MS = 30 * 60 * 1_000;

/** A worker that is still busy is not waited for longer: the page reloads, and what still waits is offered again. */
const TAKEN_UP_WITHIN_MS = 5_000;

/** What of a browser page this needs; the defaults are the page itself. */
export interface UpdatePage {
  readonly container: ServiceWorkerContainer;
  readonly reload: () => void;
  readonly register: (on: {
    readonly waiting: () => void;
    readonly failed: () => void;
  }) => Promise<{ skipWaiting(): boolean; update(): Promise<void> }>;
}

/**
 * Registers the service worker and says when a newer version waits. The old version goes on working, its lazy parts
 * too, until `take`. When another tab takes it up first, this page still decides for itself when to reload.
 */
export function watchForUpdates(page: UpdatePage, report: (error: unknown) => void): AppUpdates {
  const listeners = new Set<() => void>();
  let waiting = false;
  let failed = false;
  let asked = false;
  const tell = () => {
    for (const listener of listeners) listener();
  };
  const waits = () => {
    waiting = true;
    tell();
  };
  const fails = () => {
    failed = true;
    tell();
  };

  let controlled = page.container.controller !== null;
  page.container.addEventListener("controllerchange", () => {
    if (asked) page.reload();
    else if (controlled) waits();
    controlled = true; // the first worker of a first visit is no update
  });

  const registered = page.register({ waiting: waits, failed: fails });
  registered.catch(report);
  const look = () => {
    // Without a connection there is nothing to learn; the next look comes by itself.
    registered.then((registration) => registration.update()).catch(() => {});
  };

  return {
    waiting: () => waiting,
    cannotBeKept: () => failed,
    subscribe(onChange) {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
    take() {
      asked = true;
      registered.then(
        (registration) => {
          if (registration.skipWaiting()) setTimeout(page.reload, TAKEN_UP_WITHIN_MS);
          else page.reload(); // another tab has already taken it up
        },
        () => page.reload(),
      );
    },
    look,
  };
}

/** A phone that is new here has most of its record by then. */
const RECORD_FIRST_ms = 1_500;

/** The updates of this page; none in development and where a browser has no service workers (plain HTTP). */
export function updatesOfThisPage(report: (error: unknown) => void): AppUpdates {
  watchForMissingParts();
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return NO_UPDATES;
  const updates = watchForUpdates(
    {
      container: navigator.serviceWorker,
      reload: () => location.reload(),
      async register(on) {
        // what it fetches for later must not take line and processor from what is wanted now: the record comes in first
        await atRest();
        await new Promise((done) => setTimeout(done, RECORD_FIRST_ms));
        const { Workbox } = await import("workbox-window");
        const workbox = new Workbox("/sw.js", { scope: "/" });
        workbox.addEventListener("waiting", on.waiting);
        const registration = await workbox.register();
        if (registration !== undefined) whenFirstFails(registration, on.failed);
        return {
          skipWaiting() {
            if (!registration?.waiting) return false;
            workbox.messageSkipWaiting();
            return true;
          },
          update: () => workbox.update(),
        };
      },
    },
    report,
  );
  setInterval(updates.look, LOOK_EVERY_MS);
  return updates;
}
