import type { Locator, Page } from "playwright-core";
import type { PictureFile } from "./picture-file.ts";

/** The altitudes of the curves, in feet, and the figures that they were drawn from. */
export const ALTITUDES_ft = [0, 4000] as const;
export const roll_m = (altitude_ft: number, oat_degC: number): number =>
  230 * Math.exp(altitude_ft / 8000) * (1 + 0.008 * oat_degC + 0.00012 * oat_degC ** 2);

const [WIDE_px, HIGH_px] = [1600, 1200];
const TURNED_deg = 3;

/** Where a value stands on the picture: 0 to 40 °C across, 200 to 1000 m up, turned as a hand holds it. */
function placeOf(oat_degC: number, m: number): { readonly x_px: number; readonly y_px: number } {
  const turn = (TURNED_deg * Math.PI) / 180;
  const [x, y] = [200 + oat_degC * 30 - WIDE_px / 2, 1050 - ((m - 200) * 9) / 8 - HIGH_px / 2];
  return {
    x_px: WIDE_px / 2 + x * Math.cos(turn) - y * Math.sin(turn),
    y_px: HIGH_px / 2 + x * Math.sin(turn) + y * Math.cos(turn),
  };
}

/** A photographed chart of ground roll against temperature, as JPEG. */
export async function chartPhoto(page: Page): Promise<PictureFile> {
  const corner = (oat_degC: number, m: number) => placeOf(oat_degC, m);
  const grid = [0, 10, 20, 30, 40].flatMap((oat) => [[corner(oat, 200), corner(oat, 1000)]]);
  const rows = [200, 400, 600, 800, 1000].map((m) => [corner(0, m), corner(40, m)]);
  const curves = ALTITUDES_ft.map((altitude) =>
    Array.from({ length: 81 }, (_, i) => placeOf(i / 2, roll_m(altitude, i / 2))),
  );
  const base64 = await page.evaluate(
    async ({ wide, high, thin, thick }) => {
      const canvas = new OffscreenCanvas(wide, high);
      const context = canvas.getContext("2d");
      if (context === null) throw new Error("paper-chart: expected a drawing surface");
      context.fillStyle = "#f4f1e8";
      context.fillRect(0, 0, wide, high);
      for (const [lines, ink, width] of [
        [thin, "#9a9a9a", 1.5],
        [thick, "#111", 3],
      ] as const) {
        context.strokeStyle = ink;
        context.lineWidth = width;
        for (const line of lines) {
          context.beginPath();
          for (const { x_px, y_px } of line) context.lineTo(x_px, y_px);
          context.stroke();
        }
      }
      const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.7 });
      let text = "";
      for (const byte of new Uint8Array(await blob.arrayBuffer())) text += String.fromCharCode(byte);
      return btoa(text);
    },
    { wide: WIDE_px, high: HIGH_px, thin: [...grid, ...rows], thick: curves },
  );
  return { name: "IMG_0009.jpg", mimeType: "image/jpeg", buffer: Buffer.from(base64, "base64") };
}

/** The page on which a table is made of a picture. */
export class PaperChart {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  get picture(): Locator {
    return this.page.getByLabel("Choose a picture");
  }

  async say(name: string | RegExp, text: string, nth = 0): Promise<void> {
    await this.page
      .getByRole("main")
      .getByLabel(name, typeof name === "string" ? { exact: true } : {})
      .nth(nth)
      .fill(text);
  }

  /** A finger on the picture, where a value stands. */
  async tap(oat_degC: number, m: number): Promise<void> {
    const surface = this.page.getByRole("group", { name: /^The picture/ });
    await this.page.getByRole("main").evaluate((main) => main.scrollTo(0, 0));
    const box = await surface.boundingBox();
    if (box === null) throw new Error("paper-chart: expected the picture on the page");
    const scale = Math.min(box.width / WIDE_px, box.height / HIGH_px);
    const { x_px, y_px } = placeOf(oat_degC, m);
    await this.page.touchscreen.tap(
      box.x + (box.width - WIDE_px * scale) / 2 + x_px * scale,
      box.y + (box.height - HIGH_px * scale) / 2 + y_px * scale,
    );
  }

  /** The four corners of the grid, then both curves along their whole length. */
  async trace(): Promise<void> {
    for (const [oat, m] of [
      [0, 200],
      [40, 200],
      [40, 1000],
      [0, 1000],
    ] as const)
      await this.tap(oat, m);
    for (const [index, altitude] of ALTITUDES_ft.entries()) {
      if (index > 0) await this.page.getByRole("button", { name: "Another curve" }).tap();
      await this.say(/^stands for/, String(altitude), index);
      for (const oat of [0, 14, 27, 40]) await this.tap(oat, roll_m(altitude, oat));
    }
  }

  /** A point that was read from the paper by eye. */
  async eye(point: 1 | 2, altitude_ft: number, oat_degC: number, m: number): Promise<void> {
    const group = this.page.getByRole("group", { name: `Point ${point}` });
    await group.getByLabel(/^Pressure altitude/).fill(String(altitude_ft));
    await group.getByLabel(/^Outside air temperature/).fill(String(oat_degC));
    await group.getByLabel(/^Read:/).fill(String(Math.round(m)));
  }

  button(name: string): Locator {
    return this.page.getByRole("button", { name, exact: true });
  }
}
