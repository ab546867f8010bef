const KEY = "witnessmark:reloaded-for-missing-part";
/** A second miss sooner than this is not mended by another reload. */
const ONCE_IN_MS = 5 * 60 * 1_000;

export interface PreloadPage {
  readonly online: () => boolean;
  readonly now_ms: () => number;
  readonly storage: Pick<Storage, "getItem" | "setItem">;
  readonly reload: () => void;
}

/**
 * Answers `vite:preloadError`: a lazy part of a version that is no longer there. One reload brings the present
 * version; never without a connection, and never twice in a row.
 *
 * @returns whether it reloads; when not, the error goes on to the screen
 */
export function reloadForMissingPart(page: PreloadPage): boolean {
  if (!page.online()) return false;
  const last_ms = Number(page.storage.getItem(KEY) ?? Number.NEGATIVE_INFINITY);
  if (page.now_ms() - last_ms < ONCE_IN_MS) return false;
  page.storage.setItem(KEY, String(page.now_ms()));
  page.reload();
  return true;
}

/** Puts it to work on this page. */
export function watchForMissingParts(): void {
  addEventListener("vite:preloadError", (event) => {
    const page: PreloadPage = {
      online: () => navigator.onLine,
      now_ms: () => Date.now(),
      storage: sessionStorage,
      reload: () => location.reload(),
    };
    if (reloadForMissingPart(page)) event.preventDefault();
  });
}
