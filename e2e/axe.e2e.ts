import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PHONE, TABLET } from "./harness/browser.ts";
import { introduced, type OnAWalk } from "./harness/on-a-walk.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, toWalk } from "./harness/screens.ts";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

async function found(page: Page): Promise<readonly string[]> {
  const { violations, passes } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  expect(passes.length, "rules that axe could look at").toBeGreaterThan(5);
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(" ")}`));
}

/** Controls that are smaller than 48 px either way. */
const smallControls = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll("button, a[href], input:not([type=file]), select, textarea, [role=slider]")]
      .filter(
        (control) => control.closest("svg") === null && control.checkVisibility({ visibilityProperty: true }),
      )
      .flatMap((control) => {
        // a control may be larger to the finger than to the eye, by what lies invisibly over it
        const over = getComputedStyle(control, "::after");
        const { width, height } = control.getBoundingClientRect();
        const hit = over.position === "absolute" ? Math.max(height, Number.parseFloat(over.height)) : height;
        const name = (control.getAttribute("aria-label") ?? control.textContent ?? "").trim().slice(0, 40);
        const isUnseen = width <= 1 || height <= 1;
        return isUnseen || (hit >= 47.5 && width >= 47.5)
          ? []
          : [`"${name}" is ${width.toFixed(0)} × ${hit.toFixed(0)} px`];
      }),
  );

/** Texts under 13 px, and whether the page scrolls sideways. */
const smallTexts = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const wrong = [...document.querySelectorAll("body *")].flatMap((element) => {
      const own = [...element.childNodes]
        .filter((node) => node.nodeType === Node.TEXT_NODE)
        .map((node) => node.textContent ?? "");
      const text = own.join("").trim();
      const size_px = Number.parseFloat(getComputedStyle(element).fontSize);
      return text !== "" && size_px < 13 && element.checkVisibility()
        ? [`"${text.slice(0, 30)}" is ${size_px} px`]
        : [];
    });
    const sheet = document.scrollingElement;
    return sheet !== null && sheet.scrollWidth > sheet.clientWidth
      ? [...wrong, "the page scrolls sideways"]
      : wrong;
  });

describe.each([
  { name: "phone by day", device: PHONE, theme: "light" },
  { name: "phone by night", device: PHONE, theme: "dark" },
  { name: "narrow phone", device: { ...PHONE, width: 320 }, theme: "light" },
  { name: "tablet by day", device: TABLET, theme: "light" },
  { name: "tablet by night", device: TABLET, theme: "dark" },
] as const)("on a $name axe finds nothing, and everything is large enough", ({ device, theme }) => {
  let scene: Scene;
  let on: OnAWalk;
  beforeAll(async () => {
    scene = await openScene();
    on = await introduced(scene, "Ada", { device, theme, reducedMotion: "reduce" });
  });
  afterAll(() => scene.end());

  const clean = async () => {
    expect(await found(on.phone.page)).toEqual([]);
    expect([...(await smallControls(on.phone.page)), ...(await smallTexts(on.phone.page))]).toEqual([]);
  };
  const registration = () => on.walker.book.aircraft.registration;

  it("on the Apron", clean);

  it("where a walk is chosen", async () => {
    await toWalk(on.phone.page);
    await clean();
  });

  it("on a reading, and where what is not right is said", async () => {
    await on.walker.startFirstOfDay();
    await clean();
    await on.walker.no.tap();
    await on.walker.card.getByRole("heading", { name: "What is not right?" }).waitFor();
    await clean();
    await on.walker.words.fill("Worn");
    await on.walker.kept(on.walker.answerKeep, "");
    await clean();
  });

  it.each(["left", "gear", "happened", "decide", "aircraft"])("on the page %s", async (address) => {
    await go(on.phone.page, `#/${registration()}/${address}`);
    await on.phone.page.getByRole("heading", { level: 1 }).waitFor();
    await on.phone.page.getByRole("main").waitFor();
    await clean();
  });

  it.each(["settings", "add"])("on the page %s", async (address) => {
    await go(on.phone.page, `#/${address}`);
    await on.phone.page.getByRole("heading", { level: 1 }).waitFor();
    await clean();
  });
});
