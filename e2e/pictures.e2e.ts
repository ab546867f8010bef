import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { AddAircraft } from "./harness/add-aircraft.ts";
import { REGISTRATION } from "./harness/book.ts";
import { PHONE, TABLET } from "./harness/browser.ts";
import { Decide } from "./harness/decide.ts";
import { introduced } from "./harness/on-a-walk.ts";
import { busyShare_1 } from "./harness/png.ts";
import { openScene } from "./harness/scene.ts";
import { apronHas, go, letPass, recordHappening, showIn, toApron, toSheet } from "./harness/screens.ts";
import { ROOT } from "./harness/server.ts";
import { walkedMorning } from "./harness/walked-morning.ts";
import type { Walker } from "./harness/walker.ts";

/** The guide's pictures are made when asked for, or when one is missing, so that a run of the tests changes nothing. */
const FOLDER = join(ROOT, "docs/guide/pictures");
const RENEW = process.env["WITNESSMARK_PICTURES"] === "1";

const SCREENS = [
  ...["apron", "start", "walk", "reading", "not-right", "could-not", "ground-gear", "left", "decide"],
  ...["signed", "sheet", "happened", "lapsed", "add-faults"],
] as const;
const VIEWS = [
  { name: "phone-day", ...PHONE, theme: "light" },
  { name: "phone-night", ...PHONE, theme: "dark" },
  { name: "tablet-day", ...TABLET, theme: "light" },
  { name: "tablet-night", ...TABLET, theme: "dark" },
] as const;
const NAMES = SCREENS.flatMap((screen) => VIEWS.map((view) => `${screen}-${view.name}`));
const fileOf = (name: string) => join(FOLDER, `${name}.png`);

/** A quarter to eight on the morning that the design's pictures show. */
const MORNING_ms = Date.parse("2026-11-12T07:44:00Z");
const BEGAN_ms = MORNING_ms - 38 * 60_000;
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
async function take({ page }: Walker, screen: (typeof SCREENS)[number]): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  for (const view of VIEWS) {
    await showIn(page, view);
    await page.evaluate(() => {
      for (const element of document.querySelectorAll("*")) element.scrollTop = 0;
      return document.fonts.ready;
    });
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
    if (!RENEW && NAMES.every((name) => existsSync(fileOf(name)))) return;
    const shift_ms = MORNING_ms - Date.now();
    const scene = await openScene({ shift_ms });
    try {
      const { walker } = await introduced(scene, "MK", { shift_ms });
      await theMorning(walker, scene.server.url);
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
