import type { Page } from "playwright-core";

/** Puts a flight in hand, as one that was planned before this page was opened, and opens the page anew. */
export async function putInHand(page: Page, registration: string, flight: unknown): Promise<void> {
  await page.evaluate(
    ([aircraft, planned]) =>
      localStorage.setItem(
        "witnessmark.flights-in-hand",
        JSON.stringify({ [String(aircraft)]: { flight: planned, from: null } }),
      ),
    [registration, flight] as const,
  );
  await page.reload();
}
