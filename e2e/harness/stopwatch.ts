import type { Page } from "playwright-core";

/** One tap, and how long until the page had painted that it is kept. */
export interface TapTime {
  readonly tookUntilKept_ms: number;
}

declare global {
  interface Window {
    witnessmarkTaps?: { count: number; readonly kept_ms: number[] };
  }
}

/**
 * Runs inside the page, before its own scripts. Counts taps, and measures from the moment the finger leaves the glass
 * until the frame is painted that first says "kept": the strip over the drawing, or the number of steps left.
 */
export function stopwatch(): void {
  const taps = { count: 0, kept_ms: [] as number[] };
  window.witnessmarkTaps = taps;
  let tap: { readonly at_ms: number; readonly said: string; seen: boolean; shown_ms: number | null } | null =
    null;

  const said = (): string => {
    const strip = [...document.querySelectorAll('[role="status"]')].find((each) =>
      /Kept \d\d:\d\d\./.test(each.textContent ?? ""),
    );
    const left = document.querySelector('a[aria-label$="what is left"]')?.getAttribute("aria-label") ?? "";
    return strip === undefined ? "" : `${strip.textContent}|${left}`;
  };
  const settle = () => {
    if (tap !== null && tap.shown_ms !== null) taps.kept_ms.push(tap.shown_ms - tap.at_ms);
    tap = null;
  };
  addEventListener(
    "pointerup",
    (event) => {
      settle();
      taps.count += 1;
      tap = { at_ms: event.timeStamp, said: said(), seen: false, shown_ms: null };
    },
    { capture: true },
  );
  new MutationObserver(() => {
    const mine = tap;
    if (mine === null || mine.seen) return;
    const now = said();
    if (now === "" || now === mine.said) return;
    mine.seen = true;
    // a message sent in a frame is heard once that frame has been painted
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        mine.shown_ms = performance.now();
      };
      port2.postMessage(null);
    });
  }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
}

/** How many taps there were since the page was loaded, and how long each that kept something took. */
export async function tapTimes(
  page: Page,
): Promise<{ readonly count: number; readonly kept_ms: readonly number[] }> {
  return page.evaluate(() => ({
    count: window.witnessmarkTaps?.count ?? 0,
    kept_ms: window.witnessmarkTaps?.kept_ms ?? [],
  }));
}

/** @param share_1 0.5 for the median, 0.95 for the 95th percentile */
export function percentile(values: readonly number[], share_1: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share_1 * sorted.length) - 1)] ?? Number.NaN;
}
