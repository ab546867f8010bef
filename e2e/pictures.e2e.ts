import { existsSync, mkdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { AddAircraft } from "./harness/add-aircraft.ts";
import { PHONE, TABLET } from "./harness/browser.ts";
import { Decide } from "./harness/decide.ts";
import { introduced } from "./harness/on-a-walk.ts";
import { PATIENCE_ms } from "./harness/patience.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, toSheet, toWalk } from "./harness/screens.ts";
import { ROOT } from "./harness/server.ts";
import type { Walker } from "./harness/walker.ts";

/** The guide's pictures are made where they are missing, or when asked for, so that a run of the tests changes nothing. */
const FOLDER = join(ROOT, "docs/guide/pictures");
const RENEW = process.env["WITNESSMARK_PICTURES"] === "1";
const GUIDE = readFileSync(join(ROOT, "docs/guide/README.md"), "utf8");

/** A faultless picture of a screen with words and lines is never this small. */
const LEAST_B = 6_000;

async function picture(walker: Walker, name: string): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const file = join(FOLDER, `${name}.png`);
  await walker.page.evaluate(() => document.fonts.ready);
  const bytes = await walker.page.screenshot({
    animations: "disabled",
    ...(RENEW || !existsSync(file) ? { path: file } : {}),
  });
  expect(bytes.length, name).toBeGreaterThan(LEAST_B);
  expect(statSync(file).size, name).toBeGreaterThan(LEAST_B);
}

const checkCalled = (walker: Walker, id: string) => {
  const check = walker.book.checksById.get(id);
  const place = walker.book.points.get(check?.point ?? "")?.name;
  if (check === undefined || place === undefined)
    throw new Error(`pictures: the demo book has no check ${id}`);
  return { place, title: check.title, step: { kind: "check", id } };
};

describe.each([
  { kind: "phone", device: PHONE, theme: "light", time: "day" },
  { kind: "phone", device: PHONE, theme: "dark", time: "night" },
  { kind: "tablet", device: TABLET, theme: "light", time: "day" },
  { kind: "tablet", device: TABLET, theme: "dark", time: "night" },
] as const)("pictures of the $kind by $time", ({ kind, device, theme, time }) => {
  let scene: Scene;
  let walker: Walker;
  const take = (name: string) => picture(walker, `${name}-${kind}-${time}`);

  beforeAll(async () => {
    scene = await openScene();
    ({ walker } = await introduced(scene, "Ada", { device, theme }));
  });
  afterAll(() => scene.end());

  it("the Apron, and which walk", async () => {
    await take("apron");
    await toWalk(walker.page);
    await take("start");
    await walker.startFirstOfDay();
  });

  it("a look, a reading, what is not right, ground gear, what is left", async () => {
    for (let step = 0; step < 9; step += 1) await walker.doStep();
    await walker.goTo(checkCalled(walker, "rudder-travel"));
    await take("walk");
    await walker.goTo(checkCalled(walker, "main-tyre-pressure.right-main-tyre"));
    await walker.read({ value: "5.00", temperature_degC: "4" });
    await take("reading");
    await walker.goTo(checkCalled(walker, "wing-boot.right-wing-boot"));
    await walker.no.tap();
    await walker.card.getByRole("heading", { name: "What is not right?" }).waitFor();
    await take("not-right");
    await walker.words.fill("Split near the tip, 8 mm");
    await walker.kept(walker.answerKeep, "");
    const cover = walker.book.groundGear.find((item) => item.id === "pitot-cover");
    await walker.goTo({
      place: cover?.name ?? "",
      title: "Take it off and count it",
      step: { kind: "ground-gear", id: "pitot-cover" },
    });
    await take("ground-gear");
    await walker.whatIsLeft.tap();
    await walker.page.getByRole("heading", { name: /left/i }).first().waitFor();
    await take("left");
  });

  it("Decide, signed and lapsed", async () => {
    const decide = new Decide(walker.page);
    await go(walker.page, `#/${walker.book.aircraft.registration}/decide`);
    await walker.page.getByRole("heading", { level: 1, name: "Decide", exact: true }).waitFor();
    await take("decide");
    if (kind === "tablet") return;
    await decide.go("For the picture", "An invented permit");
    await decide.last.scrollIntoViewIfNeeded();
    await take("signed");
    await go(walker.page, `#/${walker.book.aircraft.registration}/happened`);
    await walker.page.getByRole("button", { name: "Worked on" }).tap();
    await walker.page.getByRole("button", { name: "Keep it" }).tap();
    await walker.page.getByRole("heading", { name: /^Worked on,/ }).waitFor({ timeout: PATIENCE_ms });
    await toSheet(walker.page, "Decide");
    await decide.last
      .getByText(/lapsed/i)
      .first()
      .waitFor({ timeout: PATIENCE_ms });
    await decide.last.scrollIntoViewIfNeeded();
    await take("lapsed");
  });

  it("a book with faults", async () => {
    const text = readFileSync(join(ROOT, "books/zz-brk.yaml"), "utf8")
      .replace("revision:", "revison:")
      .replace("engines: 1", "engines: none")
      .replace("retractable: false", "retractable: perhaps");
    const add = new AddAircraft(walker.page);
    await add.open();
    await add.choose({ name: "my-aircraft.yaml", mimeType: "application/yaml", buffer: Buffer.from(text) });
    expect(await add.faults()).not.toHaveLength(0);
    await take("add-faults");
  });
});

it("every picture that the guide shows is there", () => {
  const shown = [...GUIDE.matchAll(/\]\(pictures\/([a-z-]+\.png)\)/g)].map(([, name]) => name ?? "");
  expect(shown.length).toBeGreaterThan(6);
  for (const name of [...shown, "walk-phone-day.png"])
    expect(existsSync(join(FOLDER, name)), name).toBe(true);
});
