import { beforeAll, describe, expect, it } from "vitest";
import { demoBook, REGISTRATION } from "./harness/book.ts";
import { type Phone, TABLET } from "./harness/browser.ts";
import { Drawing } from "./harness/drawing.ts";
import { until } from "./harness/patience.ts";
import { jpeg } from "./harness/picture-file.ts";
import { openScene } from "./harness/scene.ts";
import { go, introduce, toWalk } from "./harness/screens.ts";
import { Walker } from "./harness/walker.ts";

describe("the drawing of an aircraft", () => {
  let phone: Phone;
  let drawing: Drawing;

  const moved = async (was: { readonly drawn: string }) =>
    until(
      "drawn anew",
      () => drawing.seen(),
      ({ drawn, moving }) => drawn !== was.drawn && moving === "",
    );

  beforeAll(async () => {
    const scene = await openScene();
    phone = await scene.phone({ device: TABLET });
    await introduce(phone.page, "MK");
    await toWalk(phone.page);
    await new Walker(phone.page, await demoBook(), await jpeg(phone.page)).startFirstOfDay();
    drawing = new Drawing(phone.page, new RegExp(`^Drawing of ${REGISTRATION} from above`));
    await drawing.marks.first().waitFor({ state: "attached" });
    return scene.end;
  });

  it("is one stop of the tab key and its marks another, in the order of the walk", async () => {
    const names = await drawing.marks.evaluateAll((all) =>
      all.map((each) => each.getAttribute("aria-label")),
    );
    expect(names.length).toBeGreaterThan(50);
    expect(names[0]).toMatch(/, open, in hand$/);
    expect(names.filter((name) => name?.endsWith(", next"))).toHaveLength(1);
    await drawing.surface.focus();
    await phone.page.keyboard.press("Tab");
    const focused = () => phone.page.evaluate(() => document.activeElement?.getAttribute("aria-label"));
    expect(await focused()).toBe(names[0]);
    await phone.page.keyboard.press("ArrowRight");
    await phone.page.keyboard.press("ArrowRight");
    expect(await focused()).toBe(names[2]);
    await phone.page.keyboard.press("End");
    expect(await focused()).toBe(names.at(-1));
    await phone.page.keyboard.press("Enter");
    const point = names.at(-1)?.split(",")[0] ?? "";
    await drawing.surface
      .getByRole("button", { name: new RegExp(`^${point}, .*in hand$`) })
      .waitFor({ state: "attached" });
  });

  it("has no mark on another, as it is painted: whole, near and turned", async () => {
    expect(await drawing.overlapping()).toEqual([]);
    for (const press of ["+", "+", "+", "]", "-"]) {
      const was = await drawing.seen();
      await drawing.surface.press(press);
      await moved(was);
      expect(await drawing.overlapping()).toEqual([]);
    }
  });

  it("goes back, and stands as one stands with what lies ahead up", async () => {
    await drawing.button("Back").tap();
    expect((await drawing.seen()).turned).toBe("");
    await drawing.button("As I stand").tap();
    expect((await drawing.seen()).turned).toMatch(/^rotate\(-?\d/);
    await drawing.button("Nose up").tap();
    expect((await drawing.seen()).turned).toBe("");
  });

  it("is moved by one transform while two fingers pinch, and drawn when they rest", async () => {
    const was = await drawing.seen();
    const { x, y } = await drawing.middle();
    const during = await drawing.fingers(
      [
        [
          { x: x - 40, y },
          { x: x - 120, y: y - 20 },
        ],
        [
          { x: x + 40, y },
          { x: x + 120, y: y + 20 },
        ],
      ],
      () =>
        until(
          "moving",
          () => drawing.seen(),
          ({ moving }) => moving !== "",
        ),
    );
    expect(during.drawn).toBe(was.drawn);
    expect(during.moving).toMatch(/^matrix\(/);
    await moved(was);
    expect(await drawing.overlapping()).toEqual([]);
    await drawing.button("Back").tap();
  });

  it("leaves the page to one finger while it is whole", async () => {
    const { page } = phone;
    await page.setViewportSize({ width: 360, height: 520 });
    await go(page, `#/${REGISTRATION}/discrepancy/new`);
    const picker = new Drawing(page, /tap it where it is$/);
    const was = await picker.seen();
    const top = () =>
      page.evaluate(() => Math.max(...[...document.querySelectorAll("*")].map((e) => e.scrollTop)));
    expect(await top()).toBe(0);
    const { x, y } = await picker.middle();
    await picker.fingers(
      [
        [
          { x, y: y + 60 },
          { x, y: y - 90 },
        ],
      ],
      () => Promise.resolve(),
      12,
    );
    await until("scrolled", top, (by) => by > 20);
    expect(await picker.seen()).toEqual(was);
    expect(await page.locator(".place-plan .wm-nut").count()).toBe(0);
  });
});
