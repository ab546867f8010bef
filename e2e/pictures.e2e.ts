import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Locator } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { AddAircraft } from "./harness/add-aircraft.ts";
import { REGISTRATION } from "./harness/book.ts";
import { PHONE, TABLET } from "./harness/browser.ts";
import { Conditions } from "./harness/conditions.ts";
import { Decide } from "./harness/decide.ts";
import { CARELESS, islandFlight, Load } from "./harness/load.ts";
import { introduced } from "./harness/on-a-walk.ts";
import { PATIENCE_ms } from "./harness/patience.ts";
import { busyShare_1 } from "./harness/png.ts";
import { openScene } from "./harness/scene.ts";
import { apronHas, go, letPass, recordHappening, showIn, toApron, toSheet } from "./harness/screens.ts";
import { ROOT } from "./harness/server.ts";
import { walkedMorning } from "./harness/walked-morning.ts";
import type { Walker } from "./harness/walker.ts";

/** The guide's pictures are made when asked for, or when one is missing, so that a run of the tests changes nothing. */
const FOLDER = join(ROOT, "docs/guide/pictures");
const RENEW = process.env["WITNESSMARK_PICTURES"] === "1";

const OF_MORNING = [
  ...["apron", "start", "walk", "reading", "not-right", "could-not", "ground-gear", "left", "decide"],
  ...["signed", "sheet", "happened", "lapsed", "add-faults"],
] as const;
const OF_FLIGHT = ["load", "conditions", "tips"] as const;
type Screen = (typeof OF_MORNING)[number] | (typeof OF_FLIGHT)[number];
const VIEWS = [
  { name: "phone-day", ...PHONE, theme: "light" },
  { name: "phone-night", ...PHONE, theme: "dark" },
  { name: "tablet-day", ...TABLET, theme: "light" },
  { name: "tablet-night", ...TABLET, theme: "dark" },
] as const;
const namesOf = (screens: readonly Screen[]): readonly string[] =>
  screens.flatMap((screen) => VIEWS.map((view) => `${screen}-${view.name}`));
const NAMES = [...namesOf(OF_MORNING), ...namesOf(OF_FLIGHT)];
const fileOf = (name: string) => join(FOLDER, `${name}.png`);
const allThere = (screens: readonly Screen[]): boolean =>
  !RENEW && namesOf(screens).every((name) => existsSync(fileOf(name)));

/** A quarter to eight on the morning that the design's pictures show. */
const MORNING_ms = Date.parse("2026-11-12T07:44:00Z");
/** The reports of ten to eight are in. */
const REPORTED_ms = MORNING_ms + 21 * 60_000;
const BEGAN_ms = MORNING_ms - 38 * 60_000;
const REPORTS = [
  "METAR ZZTW 120750Z 25008KT 9999 SCT030 04/01 Q1010=",
  "TAF ZZTW 120500Z 1206/1306 25010KT 9999 SCT030=",
  "METAR ZZQN 120750Z 24014G22KT 9999 -RA BKN022 05/03 Q1008=",
  "TAF ZZQN 120500Z 1206/1306 24014G22KT 9999 BKN022",
].join("\n");
/** How long a look takes: faster would be a verdict of its own. */
const LOOK_s = 30;
/** What is left of the walk for the pictures. */
const LEFT = [
  "rudder-travel",
  "main-tyre-pressure.right-main-tyre",
  "wing-boot.right-wing-boot",
  "taxi-light",
  "pitot-cover",
  "chocks",
];

/** Takes the screen as it stands in every view, and writes the pictures that are wanted. */
async function take({ page }: Pick<Walker, "page">, screen: Screen, shows?: Locator): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  for (const view of VIEWS) {
    await showIn(page, view);
    await page.evaluate(() => {
      for (const element of document.querySelectorAll("*")) element.scrollTop = 0;
      return document.fonts.ready;
    });
    await shows?.waitFor({ timeout: PATIENCE_ms });
    if (screen === "tips") await shows?.evaluate((element) => element.closest("section")?.scrollIntoView());
    const name = `${screen}-${view.name}`;
    const bytes = await page.screenshot({ animations: "disabled", scale: "device" });
    expect(busyShare_1(bytes), name).toBeGreaterThan(LEAST_BUSY_1);
    if (RENEW || !existsSync(fileOf(name))) writeFileSync(fileOf(name), bytes);
  }
  await showIn(page, VIEWS[0]);
}

/** A sheet with a few lines of words has more than this; a blank one has none. */
const LEAST_BUSY_1 = 0.003;

describe("the guide's pictures", () => {
  beforeAll(async () => {
    if (allThere(OF_MORNING)) return;
    const shift_ms = MORNING_ms - Date.now();
    const scene = await openScene({ shift_ms });
    try {
      const { walker } = await introduced(scene, "MK", { shift_ms });
      await theMorning(walker, scene.server.url);
    } finally {
      await scene.end();
    }
  }, 240_000);

  beforeAll(async () => {
    if (allThere(OF_FLIGHT)) return;
    const shift_ms = REPORTED_ms - Date.now();
    const scene = await openScene({ shift_ms });
    try {
      await theFlight((await introduced(scene, "MK", { shift_ms })).walker);
    } finally {
      await scene.end();
    }
  }, 240_000);

  it.each(NAMES)("%s is there, and not blank", (name) => {
    expect(busyShare_1(readFileSync(fileOf(name)))).toBeGreaterThan(LEAST_BUSY_1);
  });

  it("are those that the guide and the first page show", () => {
    for (const file of ["docs/guide/README.md", "README.md"]) {
      const shown = [...readFileSync(join(ROOT, file), "utf8").matchAll(/pictures\/([a-z-]+)\.png/g)];
      expect(shown.length).toBeGreaterThan(0);
      for (const [, name] of shown) expect(NAMES).toContain(name);
    }
  });
});

async function theMorning(walker: Walker, url: string): Promise<void> {
  const { page, book } = walker;
  const decide = new Decide(page);
  const fault = book.checksById.get("wing-boot.right-wing-boot")?.faults[0]?.name ?? "";
  const at = (place: string) => go(page, `#/${REGISTRATION}/${place}`);

  await at("walk");
  await page.getByRole("button", { name: /^First of the day/ }).waitFor();
  await take(walker, "start");
  await walkedMorning({
    url,
    book,
    name: "MK",
    picture: walker.picture,
    began_ms: BEGAN_ms,
    leave: LEFT,
  });
  await toApron(page);
  await apronHas(page, REGISTRATION);
  await page.getByRole("link", { name: `Go on walking: ${REGISTRATION}` }).waitFor();
  await take(walker, "apron");
  await at("walk");
  await walker.leftBecomes(LEFT.length);
  await at("left");
  await page.getByRole("button", { name: /^Left, / }).waitFor();
  await take(walker, "left");
  await at("walk");
  await walker.card.waitFor();
  await walker.goToId("rudder-travel");
  await take(walker, "walk");
  await walker.could.tap();
  await walker.answerKeep.waitFor();
  await take(walker, "could-not");
  await walker.back.tap();
  await letPass(page, LOOK_s);
  await walker.doStep();
  await walker.goToId("main-tyre-pressure.right-main-tyre");
  await walker.read({ value: "5.00", temperature_degC: "4" });
  await take(walker, "reading");
  await walker.read({ value: "5.08", temperature_degC: "4" });
  await letPass(page, LOOK_s);
  await walker.kept(walker.yes, "");
  await walker.goToId("wing-boot.right-wing-boot");
  await walker.no.tap();
  await walker.words.waitFor();
  await walker.card.getByRole("button", { name: fault }).tap();
  await walker.words.fill("near the tip");
  await walker.words.blur();
  await walker.sizeMore.tap();
  await walker.sizeMore.tap();
  await take(walker, "not-right");
  await letPass(page, LOOK_s);
  await walker.kept(walker.answerKeep, "");
  await walker.goToId("pitot-cover");
  await take(walker, "ground-gear");
  await letPass(page, LOOK_s);
  await walker.doStep();
  await at("decide");
  await decide.planFlight("ZZTW", "ZZQN");
  await take(walker, "decide");

  await decide.putRight("near the tip", "Patched, inflated and leak-tested", "L. Ostrom, WO 2041");
  await at("walk");
  for (const id of ["wing-boot.right-wing-boot", "taxi-light", "chocks"]) {
    await walker.goToId(id);
    await letPass(page, LOOK_s);
    await walker.doStep();
  }
  await walker.finish();
  // what runs out by hours is open while no time of the flight is said
  await decide.go("A short hop; the hours that are left are in the log", "");
  await take(walker, "signed");
  await decide.sheet();
  await take(walker, "sheet");
  await at("happened");
  await page.getByRole("button", { name: "Fuelled", exact: true }).tap();
  await take(walker, "happened");
  await recordHappening(page, "Fuelled");
  await toSheet(page, "Decide");
  await decide.last
    .getByText(/lapsed/i)
    .first()
    .waitFor();
  await take(walker, "lapsed");

  const text = readFileSync(join(ROOT, "books/zz-skr.yaml"), "utf8")
    .replace("revision:", "revison:")
    .replace("engines: 1", "engines: none")
    .replace("retractable: true", "retractable: perhaps");
  const add = new AddAircraft(page);
  await add.open();
  await add.choose({ name: "my-aircraft.yaml", mimeType: "text/yaml", buffer: Buffer.from(text) });
  expect((await add.faults()).length).toBeGreaterThan(2);
  await take(walker, "add-faults");
}

/** The island flight with everything as far aft as it goes: put right, then its weather. */
async function theFlight(walker: Walker): Promise<void> {
  const { page } = walker;
  const load = new Load(page);
  await load.openWith({ ...islandFlight(CARELESS), offBlocks: "2026-11-12T09:10:00+00:00" });
  // the solver is asked anew where the screen is laid out for another size
  await take(walker, "load", load.fits.getByRole("button", { name: "Plan this move" }));
  await load.fits.getByRole("button", { name: "Plan this move" }).tap();
  await load.fits.getByRole("heading", { name: "What still fits" }).waitFor();

  const conditions = new Conditions(page);
  await conditions.open();
  await conditions.at("take-off");
  await conditions.choose("Runway", "24");
  await conditions.choose("Surface", "dry");
  await conditions.at("landing");
  await conditions.choose("Runway", "29");
  await conditions.choose("Surface", "wet");
  await conditions.paste(REPORTS);
  await conditions.told(/^Taken: /).waitFor();
  await take(walker, "conditions", conditions.drawing(/^Landing, over 50 ft/));

  await go(page, `#/${REGISTRATION}/decide`);
  const gust = page.getByRole("listitem").filter({ hasText: /gust from 240° at ZZQN/ });
  await take(walker, "tips", gust.first());
}
