import type { Locator, Page } from "playwright-core";
import { REGISTRATION } from "./book.ts";
import { PATIENCE_ms, until } from "./patience.ts";

/** First run, Apron and the way between the sheets: every selector and word of theirs that a test needs. */

/** Says who holds the phone, and waits for the Apron with the demo on it. */
export async function introduce(page: Page, name: string, role = "Pilot in command"): Promise<void> {
  await sayWho(page, name, role);
  await apronHas(page, REGISTRATION);
}

/** Says who holds the phone. */
export async function sayWho(page: Page, name: string, role = "Pilot in command"): Promise<void> {
  await page.getByRole("textbox", { name: "Name or initials" }).fill(name);
  await page.getByRole("button", { name: role }).tap();
  await page.getByRole("button", { name: "Begin" }).tap();
}

export async function apronHas(page: Page, registration: string): Promise<void> {
  await page.getByRole("heading", { level: 2, name: registration }).waitFor({ timeout: PATIENCE_ms });
}

export async function toApron(page: Page): Promise<void> {
  await go(page, "#/");
  await page.getByRole("heading", { level: 1, name: "Apron", exact: true }).waitFor();
}

/** From the Apron to the walk of an aircraft. */
export async function toWalk(page: Page, registration = REGISTRATION): Promise<void> {
  await page.getByRole("link", { name: new RegExp(`: ${registration}$`) }).tap();
  await page.getByRole("heading", { level: 1, name: "Walk", exact: true }).waitFor();
}

export type SheetName = "Walk" | "Decide" | "Aircraft";

export async function toSheet(page: Page, name: SheetName): Promise<void> {
  await page.getByRole("navigation", { name: "Sheets" }).getByRole("link", { name }).tap();
  await page.getByRole("heading", { level: 1, name, exact: true }).waitFor();
}

/** By address, as a bookmark does. */
export async function go(page: Page, hash: string): Promise<void> {
  await page.evaluate((address) => {
    window.location.hash = address;
  }, hash);
}

/** What the title block says of keeping and sending. */
export const keptWhere = (page: Page): Locator => page.getByRole("banner").getByRole("status");

/** Waits until the title block says that the server has everything. */
export async function allOnServer(page: Page): Promise<void> {
  await keptWhere(page)
    .filter({ hasText: /on the server/i })
    .waitFor({ timeout: PATIENCE_ms });
}

/** Waits until the app's own files and what the server holds are all on the phone, so that no net is needed for it. */
export async function readyForNoNet(page: Page): Promise<void> {
  await allOnServer(page);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller !== null) return;
    await new Promise((done) =>
      navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }),
    );
  });
}

/** The button that takes up a newer version of the app; there only while one is offered. */
export const updateOffer = (page: Page): Locator => page.getByRole("button", { name: "Take it" });

/** Ends the walk in hand from the list of what is left, with what is left staying open. */
export async function finishHere(page: Page, registration = REGISTRATION): Promise<void> {
  await go(page, `#/${registration}/left`);
  await page.getByRole("button", { name: "Finish the walk here" }).tap();
  await page.getByRole("button", { name: /^Finish; / }).tap();
  await page.getByRole("heading", { level: 1, name: "Decide", exact: true }).waitFor();
}

/** On the screen that asks what happened: says it, as of now. */
export async function recordHappening(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name, exact: true }).tap();
  await page.getByRole("button", { name: "Keep it" }).tap();
  await page.getByRole("heading", { name: new RegExp(`^${name},`) }).waitFor({ timeout: PATIENCE_ms });
}

/** Shows the screen as it stands in another size and by day or night. */
export async function showIn(
  page: Page,
  view: { readonly width: number; readonly height: number; readonly theme: "light" | "dark" },
): Promise<void> {
  const { width, height, theme } = view;
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ colorScheme: theme });
  await until(
    `the screen by ${theme === "dark" ? "night" : "day"}`,
    () => page.evaluate(() => document.documentElement.dataset["theme"]),
    (worn) => worn === (theme === "dark" ? "night" : "day"),
  );
  // the drawing is laid out again in the frame after the one that brings the size
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

/** Lets time pass on a phone whose clock is shifted: what was looked at took as long as a look takes. */
export async function letPass(page: Page, span_s: number): Promise<void> {
  await page.evaluate((span) => {
    if (globalThis.witnessmarkClock === undefined) throw new Error("screens: expected a shifted clock");
    globalThis.witnessmarkClock.shift_ms += span * 1_000;
    document.dispatchEvent(new Event("visibilitychange"));
  }, span_s);
}
