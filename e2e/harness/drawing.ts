import type { CDPSession, Locator, Page } from "playwright-core";

export interface At {
  readonly x: number;
  readonly y: number;
}

/** The middle of something that is seen, where a finger takes it. */
export async function middleOf(mark: Locator): Promise<At> {
  const box = await mark.boundingBox();
  if (box === null) throw new Error("drawing: expected it on the page");
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** The drawing of an aircraft on a page: its picture, its marks, its buttons, and fingers on it. */
export class Drawing {
  readonly page: Page;
  readonly group: Locator;
  readonly surface: Locator;
  readonly marks: Locator;
  #touch: CDPSession | undefined;

  constructor(page: Page, name: RegExp) {
    this.page = page;
    this.group = page.getByRole("group", { name });
    this.surface = this.group.getByRole("group", { name: /^Arrows move it/ });
    this.marks = this.surface.getByRole("button");
  }

  button(name: string): Locator {
    return this.group.getByRole("button", { name, exact: true });
  }

  /** How large a metre is, and how the picture lies on the screen: of what is drawn, and of the transform over it. */
  async seen(): Promise<{ readonly drawn: string; readonly moving: string; readonly turned: string }> {
    return this.surface.evaluate((element) => {
      const layer = element.querySelector<SVGSVGElement>(".drawing-layer");
      const [outer, inner] = [layer?.querySelector("g"), layer?.querySelector("g g")];
      return {
        drawn: `${outer?.getAttribute("transform")} ${inner?.querySelector("path")?.getAttribute("d")?.slice(0, 40)}`,
        moving: layer?.style.transform ?? "",
        turned: inner?.getAttribute("transform") ?? "",
      };
    });
  }

  /** Marks and counts that lie on each other, as they are painted. */
  async overlapping(): Promise<readonly string[]> {
    return this.surface.evaluate((element) => {
      const drawn = [...element.querySelectorAll(".drawing-layer .wm-nut, .mark-several circle, .mark-dot")];
      const boxes = drawn.map((each) => each.getBoundingClientRect());
      return boxes.flatMap((a, index) =>
        boxes
          .slice(index + 1)
          .flatMap((b) =>
            Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1.5 &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1.5
              ? [`${a.left.toFixed(0)},${a.top.toFixed(0)} on ${b.left.toFixed(0)},${b.top.toFixed(0)}`]
              : [],
          ),
      );
    });
  }

  async middle(): Promise<At> {
    return middleOf(this.surface);
  }

  /** Fingers go down, along their ways in steps, and up; between the last step and up, something can be looked at. */
  async fingers<T>(ways: readonly (readonly [At, At])[], before: () => Promise<T>, steps = 6): Promise<T> {
    this.#touch ??= await this.page.context().newCDPSession(this.page);
    const touch = this.#touch;
    const send = (type: "touchStart" | "touchMove" | "touchEnd", share_1: number) =>
      touch.send("Input.dispatchTouchEvent", {
        type,
        touchPoints:
          type === "touchEnd"
            ? []
            : ways.map(([from, to], id) => ({
                id,
                x: from.x + (to.x - from.x) * share_1,
                y: from.y + (to.y - from.y) * share_1,
              })),
      });
    await send("touchStart", 0);
    for (let step = 1; step <= steps; step += 1) await send("touchMove", step / steps);
    const seen = await before();
    await send("touchEnd", 1);
    return seen;
  }
}
