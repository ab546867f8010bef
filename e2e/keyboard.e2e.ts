import type { Check } from "@witnessmark/book";
import type { Locator, Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { firstWalk, REGISTRATION } from "./harness/book.ts";
import { Decide } from "./harness/decide.ts";
import { introduced, type OnAWalk } from "./harness/on-a-walk.ts";
import { until } from "./harness/patience.ts";
import { goodReading } from "./harness/readings.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { apronHas, toApron } from "./harness/screens.ts";
import type { Walker } from "./harness/walker.ts";

/** More than any screen here has: the way to a control must not be longer. */
const TABS_MOST = 60;

const hasFocus = (control: Locator) =>
  control.evaluate(
    (element) => element === document.activeElement || element.contains(document.activeElement),
  );

/** Goes to a control with the Tab key alone, and sees that the focus is shown there. */
async function tabTo(page: Page, control: Locator): Promise<void> {
  await control.waitFor();
  for (let tabs = 0; tabs < TABS_MOST; tabs += 1) {
    if (await hasFocus(control)) {
      const shown = await page.evaluate(() => {
        const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(
          document.activeElement ?? document.body,
        );
        return (outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2) || boxShadow !== "none";
      });
      expect(shown, `the focus is shown on ${String(control)}`).toBe(true);
      return;
    }
    await page.keyboard.press("Tab");
  }
  throw new Error(`keyboard: Tab did not reach ${String(control)} in ${TABS_MOST} steps`);
}

async function press(page: Page, control: Locator): Promise<void> {
  await tabTo(page, control);
  await page.keyboard.press("Enter");
}

/** Whether it comes to be so within a moment. */
const soon = (ask: () => Promise<boolean>): Promise<boolean> =>
  until("it", ask, Boolean, 1_000).catch(() => false);

/** Types a figure into the dialog that a control opens. */
async function typeInto(page: Page, walker: Walker, control: Locator, text: string): Promise<void> {
  await press(page, control);
  await tabTo(page, walker.figure.field);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  await walker.figure.dialog.waitFor({ state: "hidden" });
}

async function sayWhyNoPhoto(page: Page, walker: Walker): Promise<void> {
  await press(page, walker.yes);
  await tabTo(page, walker.noPhotoWhy);
  await page.keyboard.type("No hand free");
  await press(page, walker.yes);
}

async function readOff(page: Page, walker: Walker, check: Check): Promise<void> {
  const { value, temperature_degC } = goodReading(walker.book, check);
  if (temperature_degC !== null) await typeInto(page, walker, walker.temperatureButton, temperature_degC);
  await typeInto(page, walker, walker.readingButton, value);
}

/** Moves the slider by one step, which reads what it stands on. */
async function slideOn(page: Page, walker: Walker): Promise<void> {
  await tabTo(page, walker.slider);
  await page.keyboard.press("ArrowRight");
  await until(
    "a reading",
    () => walker.readingSaid(),
    (said) => !said.includes("not read"),
  );
}

describe("with the keyboard alone", () => {
  let scene: Scene;
  let on: OnAWalk;
  beforeAll(async () => {
    scene = await openScene();
    on = await introduced(scene, "MK");
    return scene.end;
  });

  it("the walk is begun from the Apron", async () => {
    const { page } = on.phone;
    await toApron(page);
    await apronHas(page, REGISTRATION);
    await press(page, page.getByRole("link", { name: new RegExp(`: ${REGISTRATION}$`) }));
    await press(page, page.getByRole("button", { name: /^First of the day/ }));
    await on.walker.card.waitFor();
  });

  it("a figure begins in its field, and gives the focus back to what opened it", async () => {
    const { walker, phone } = on;
    await press(phone.page, walker.readingButton);
    await walker.figure.field.waitFor();
    const inField = await soon(() => hasFocus(walker.figure.field));
    await phone.page.keyboard.press("Escape");
    await walker.figure.dialog.waitFor({ state: "hidden" });
    const givenBack = await soon(() => hasFocus(walker.readingButton));
    expect({ inField, givenBack }).toEqual({ inField: true, givenBack: true });
  });

  it("the first stop is walked: readings on the slider and typed, answers by Tab and by number", async () => {
    const { walker, phone } = on;
    const [stop] = firstWalk(walker.book).stops;
    if (stop === undefined) throw new Error("expected a stop in the walk");
    const { of } = await walker.left();
    for (const [at, step] of stop.steps.entries()) {
      const before = await walker.onCard();
      expect((await walker.inHand()).step.id).toBe(step.id);
      // a new card begins at its heading, so that a screen reader tells it
      if (at > 0) await until("the focus on the card", () => hasFocus(walker.card), Boolean);
      if (step.kind === "check" && step.check.reading !== undefined) {
        if (at === 0) await slideOn(phone.page, walker);
        await readOff(phone.page, walker, step.check);
      }
      if (step.kind === "ground-gear") await press(phone.page, walker.pieces);
      else if (await walker.asksByChance()) await sayWhyNoPhoto(phone.page, walker);
      else if (at % 2 === 0) await press(phone.page, walker.yes);
      else await phone.page.keyboard.press("1");
      await until(
        "the next card",
        () => walker.onCard(),
        ({ place, title }) => place !== before.place || title !== before.title,
      );
      expect((await walker.left()).left).toBe(of - at - 1);
    }
  });

  it("an answer is taken back, a reason is chosen, and what is left is read", async () => {
    const { walker, phone } = on;
    const { page } = phone;
    const { left } = await walker.left();
    await press(page, walker.undo);
    await walker.leftBecomes(left + 1);
    await page.keyboard.press("3");
    await press(page, walker.card.getByRole("button", { name: "Too dark" }));
    await press(page, walker.answerKeep);
    await walker.strip.filter({ hasText: /could not check/ }).waitFor();
    await press(page, walker.whatIsLeft);
    await page.getByRole("button", { name: /^Left, / }).waitFor();
    await press(page, page.getByRole("link", { name: "Back to the check in hand" }));
    await walker.card.waitFor();
  });

  it("it is decided, and signed not going yet", async () => {
    const { page } = on.phone;
    await press(page, page.getByRole("navigation", { name: "Sheets" }).getByRole("link", { name: "Decide" }));
    await press(page, page.getByRole("button", { name: "Not going yet" }));
    await press(page, page.getByRole("button", { name: "Sign: not going" }));
    await new Decide(page).last.getByRole("heading", { name: "Not going yet" }).waitFor();
    expect(on.phone.complaints).toEqual([]);
  });
});
