import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import type { Phone } from "./harness/browser.ts";
import { PHONE, TABLET } from "./harness/browser.ts";
import { Conditions, LOADED_FLIGHT } from "./harness/conditions.ts";
import { Decide } from "./harness/decide.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { sidewaysScroll } from "./harness/look.ts";
import { introduced, onAWalk } from "./harness/on-a-walk.ts";
import { overprinted } from "./harness/overlaps.ts";
import { pagesOf } from "./harness/paper.ts";
import { until } from "./harness/patience.ts";
import { openScene } from "./harness/scene.ts";
import { allOnServer, showIn, toSheet } from "./harness/screens.ts";
import { walkedMorning } from "./harness/walked-morning.ts";

/** The morning of the demo's island flight. */
const MORNING_ms = Date.parse("2026-11-12T08:05:00Z");
const report = (text: string) => ({ text, receivedAt: "2026-11-12T08:04:00+00:00" });
const METAR = "METAR ZZQN 120750Z 24014G22KT 9999 -RA BKN022 05/03 Q1008";
const LONG = "Sister Maria Wilhelmina Featherstonehaugh of the Northern Island Eye Clinic Association";

const { load } = LOADED_FLIGHT.plan;
/** Everything planned, gusts at the landing, a name as long as people have them. */
const FLIGHT = {
  ...LOADED_FLIGHT,
  plan: {
    ...LOADED_FLIGHT.plan,
    load: {
      ...load,
      items: load.items.map((item) => ({ ...item, what: item.station === "seat-3" ? LONG : "Pilot" })),
    },
    departure: {
      code: "ZZTW",
      runway: "24",
      condition: "dry",
      metar: report("METAR ZZTW 120750Z 25008KT 9999 SCT030 04/01 Q1010"),
      taf: report("TAF ZZTW 120500Z 1206/1306 25010KT 9999 SCT030"),
    },
    destination: {
      code: "ZZQN",
      runway: "29",
      condition: "wet",
      metar: report(METAR),
      taf: report("TAF ZZQN 120500Z 1206/1306 24014G22KT 9999 BKN022"),
    },
  },
};

/** 186 mm, which A4 and Letter both hold between margins of 12 mm. */
const PRINT = { width: 704, height: 1000 } as const;
/** What Letter, the lower of the two, has between its margins. */
const LETTER_px = (255 / 25.4) * 96;

/** What lies on something else in print, and how far down the slip ends that must be on the first page. */
async function inPrint(page: Page): Promise<{ readonly wrong: readonly string[]; readonly slip_px: number }> {
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize(PRINT);
  const wrong = await overprinted(page, ".paper");
  const [top, bottom] = await page.evaluate(() => [
    document.querySelector(".paper")?.getBoundingClientRect().top ?? Number.NaN,
    document.querySelector(".paper-slip")?.getBoundingClientRect().bottom ?? Number.NaN,
  ]);
  await page.emulateMedia({ media: "screen" });
  return { wrong, slip_px: (bottom ?? Number.NaN) - (top ?? Number.NaN) };
}

describe("the sheet of a decision on a walk just begun", () => {
  let phone: Phone;
  let decide: Decide;

  beforeAll(async () => {
    const shift_ms = MORNING_ms - Date.now();
    const scene = await openScene({ shift_ms });
    ({ phone } = await onAWalk(scene, "MK", { shift_ms }));
    await new Conditions(phone.page).openWith(FLIGHT);
    await toSheet(phone.page, "Decide");
    decide = new Decide(phone.page);
    return scene.end;
  });

  it("not going asks before it signs, and can be left without", async () => {
    await phone.page.getByRole("button", { name: "Not going yet" }).tap();
    expect(await lookInEveryView(phone.page)).toEqual({ wrong: [], odd: [] });
    await decide.dialog.getByRole("button", { name: "Close" }).tap();
    await decide.dialog.waitFor({ state: "hidden" });
    expect(await decide.last.count()).toBe(0);
    await decide.notGoing("The fog is still on the sound");
    expect(await decide.last.textContent()).toContain("The fog is still on the sound");
    expect(await decide.last.textContent()).not.toContain("Holds until");
  });

  it("go asks one reason for all checks that are open, and its button stays within reach", async () => {
    await decide.askGo();
    expect(await lookInEveryView(phone.page)).toEqual({ wrong: [], odd: [] });
    const button = decide.dialog.getByRole("button", { name: "Sign: go" });
    await decide.dialog.evaluate((element) => element.scrollTo(0, 0));
    const box = await button.boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(PHONE.height);
    await phone.page.keyboard.press("Escape");
    await decide.go("Seen with the owner an hour ago", "An invented permit");
  });

  it.each([
    { name: "phone", ...PHONE },
    { name: "tablet", ...TABLET },
  ])("no text lies on another on a $name", async ({ name, width, height }) => {
    if (name === "phone") await decide.sheet();
    await showIn(phone.page, { width, height, theme: "light" });
    expect(await overprinted(phone.page, ".paper")).toEqual([]);
    expect(await sidewaysScroll(phone.page)).toEqual([]);
  });

  it("no text lies on another in print, the slip stays on the first page, and both papers have room", async () => {
    const { page } = phone;
    const { wrong, slip_px } = await inPrint(page);
    expect(wrong).toEqual([]);
    expect(slip_px).toBeLessThanOrEqual(LETTER_px);
    for (const format of ["A4", "Letter"]) {
      const pages = pagesOf(await page.pdf({ format, preferCSSPageSize: true }));
      expect(pages).toBeGreaterThan(1);
      expect(pages).toBeLessThanOrEqual(4);
    }
  });

  it("every number on the drawing is that of a note", async () => {
    const paper = phone.page.locator(".paper");
    const noted = await paper.locator(".paper-notes i").allTextContents();
    const drawn = await paper.locator(".sheet-number").allTextContents();
    expect(drawn.length).toBeGreaterThan(0);
    for (const number of drawn) expect(noted).toContain(number.trim());
  });

  it("it has the trip, who is aboard and the reports as they came, and ends no sentence twice", async () => {
    const words = (await phone.page.locator(".paper").textContent()) ?? "";
    for (const said of [
      "128\u00A0NM",
      "52\u00A0min",
      "17,000\u00A0ft",
      METAR,
      LONG,
      "Aft bay",
      "240° 14 G 22",
    ])
      expect(words).toContain(said);
    expect(words).not.toMatch(/[^.]\.\.(?!\.)/);
  });

  it("its PDF is saved, and the app stays where it is", async () => {
    const { page } = phone;
    await showIn(page, { width: PHONE.width, height: PHONE.height, theme: "light" });
    await allOnServer(page);
    const saved = page.waitForEvent("download");
    await page.getByRole("link", { name: "PDF" }).tap();
    expect((await saved).suggestedFilename()).toMatch(/\.pdf$/);
    await page.getByRole("heading", { level: 1, name: "Sheet", exact: true }).waitFor();
    expect(phone.complaints).toEqual([]);
  });
});

describe("the sheet of a decision on a walk that is done", () => {
  let phone: Phone;

  beforeAll(async () => {
    const shift_ms = MORNING_ms - Date.now();
    const scene = await openScene({ shift_ms });
    const on = await introduced(scene, "MK", { shift_ms });
    ({ phone } = on);
    const began_ms = MORNING_ms - 50 * 60_000;
    const { book, picture } = on.walker;
    await walkedMorning({ url: scene.server.url, book, name: "MK", picture, began_ms, leave: [] });
    await new Conditions(phone.page).openWith(FLIGHT);
    await toSheet(phone.page, "Decide");
    const decide = new Decide(phone.page);
    await until(
      "the walk of the other phone",
      () => decide.count("open"),
      (open) => open < 20,
    );
    await decide.go("Thought through", "An invented permit");
    await decide.sheet();
    return scene.end;
  });

  it("has its numbers on the first page, and none lies on another in print", async () => {
    const { wrong, slip_px } = await inPrint(phone.page);
    expect(wrong).toEqual([]);
    expect(slip_px).toBeLessThanOrEqual(LETTER_px);
    expect(await phone.page.locator(".paper > .paper-frame .paper-numbers").count()).toBe(1);
    expect(await phone.page.locator(".sheet-seen").count()).toBeGreaterThan(0);
  });

  it("reads on a phone and on a tablet", async () => {
    for (const { width, height } of [PHONE, TABLET]) {
      await showIn(phone.page, { width, height, theme: "light" });
      expect(await overprinted(phone.page, ".paper")).toEqual([]);
    }
    expect(phone.complaints).toEqual([]);
  });
});
