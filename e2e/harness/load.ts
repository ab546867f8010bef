import type { Locator, Page } from "playwright-core";
import { REGISTRATION } from "./book.ts";
import { putInHand } from "./flight-in-hand.ts";
import { PATIENCE_ms } from "./patience.ts";
import { go } from "./screens.ts";

interface Thing {
  readonly station: string;
  readonly what: string;
  readonly mass_kg: number;
}

/** The rear seats taken and the right front one free, all the bags as far aft as they go: behind the limit at landing. */
export const CARELESS: readonly Thing[] = [
  { station: "seat-1", what: "Pilot", mass_kg: 84 },
  { station: "seat-3", what: "Nurse", mass_kg: 68 },
  { station: "seat-4", what: "Slit lamp case", mass_kg: 34 },
  { station: "seat-5", what: "Technician", mass_kg: 91 },
  { station: "seat-6", what: "Surgeon", mass_kg: 76 },
  { station: "aft-bay", what: "Clinic kit", mass_kg: 85 },
  { station: "tail-locker", what: "Bags", mass_kg: 45 },
];

/** The island flight of the demo with such a load, an hour from now, 200 L in each tank, 138 kg to burn. */
export const islandFlight = (things: readonly Thing[], id = "01934f0a-7a00-7000-8000-000000000002") => ({
  id,
  from: "ZZTW",
  to: "ZZQN",
  offBlocks: new Date(Date.now() + 3_600_000).toISOString().replace("Z", "+00:00"),
  plan: {
    rulePack: "us-part-91",
    flightRules: "VFR",
    load: {
      items: things.map(({ station, what, mass_kg }) => ({
        id: station,
        station,
        what,
        mass: { value: mass_kg, unit: "kg" },
        known: "weighed",
      })),
      fuel: ["left-tank", "right-tank"].map((tank) => ({ tank, volume: { value: 200, unit: "L" } })),
    },
    route: {
      distance: { value: 112, unit: "NM" },
      time: { value: 48, unit: "min" },
      level: { value: 9_000, unit: "ft" },
      tripFuel: { value: 128, unit: "kg" },
    },
  },
});

/** The Load screen, by what a person sees and taps on it. */
export class Load {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async open(registration: string = REGISTRATION): Promise<void> {
    await go(this.page, `#/${registration}/load`);
    await this.page.getByRole("heading", { level: 1, name: "Load", exact: true }).waitFor();
  }

  /** Puts a flight in hand and opens the screen. */
  async openWith(flight: unknown, registration: string = REGISTRATION): Promise<void> {
    await putInHand(this.page, registration, flight);
    await this.open(registration);
    await this.hand.waitFor({ timeout: PATIENCE_ms });
  }

  get hand(): Locator {
    return this.page.getByRole("region", { name: "In hand" });
  }

  get slider(): Locator {
    return this.hand.getByRole("slider");
  }

  get undo(): Locator {
    return this.page.getByRole("button", { name: "Undo", exact: true });
  }

  /** The sentence over the envelope. */
  get answer(): Locator {
    return this.page.locator(".load-answer").getByRole("heading");
  }

  async answers(words: RegExp): Promise<void> {
    await this.answer.filter({ hasText: words }).waitFor({ timeout: PATIENCE_ms });
  }

  /** A row of the list of seats, bays and tanks. */
  row(name: RegExp): Locator {
    return this.page
      .getByRole("region", { name: "Seats, bays and tanks" })
      .getByRole("listitem")
      .filter({ has: this.page.getByRole("button", { name }) });
  }

  async take(name: RegExp): Promise<void> {
    await this.row(name).getByRole("button").tap();
  }

  /** A row of the table of the moments, as it reads. */
  moment(name: "Zero fuel" | "Ramp" | "Take-off" | "Worst" | "Landing"): Locator {
    return this.page.getByRole("row").filter({ has: this.page.getByRole("button", { name, exact: true }) });
  }

  async moreOf(step: RegExp): Promise<void> {
    await this.hand.getByRole("button", { name: step }).tap();
  }

  /** Types the figure in hand, with its unit. */
  async type(figure: string): Promise<void> {
    await this.hand.getByRole("button", { name: /: type it$/ }).tap();
    const dialog = this.page.getByRole("dialog");
    await dialog.getByRole("textbox").fill(figure);
    await dialog.getByRole("button", { name: "Set", exact: true }).tap();
    await dialog.waitFor({ state: "hidden" });
  }

  /** Taps the drawing of the aircraft, as shares of its width and height. */
  async tapDrawing(x_1: number, y_1: number): Promise<void> {
    const drawing = this.page.getByRole("img", { name: /, loaded: / });
    await drawing.scrollIntoViewIfNeeded();
    const box = await drawing.boundingBox();
    if (box === null) throw new Error("load: expected the drawing to be on the screen");
    await this.page.touchscreen.tap(box.x + box.width * x_1, box.y + box.height * y_1);
  }

  /** What still fits, or what puts it right. */
  get fits(): Locator {
    return this.page.locator(".load-fits");
  }

  /** A finger on the rule of what is in hand, from one share of it to another, a step at a time; it stays down. */
  async drag(from_1: number, to_1: number): Promise<void> {
    const rule = await this.rule();
    await this.page.mouse.move(rule.at_px(from_1), rule.y_px);
    await this.page.mouse.down();
    await this.slide(from_1, to_1);
  }

  /** The finger that is down goes on, from where it is. */
  async slide(from_1: number, to_1: number, steps = 12): Promise<void> {
    const rule = await this.rule();
    for (let step = 1; step <= steps; step += 1) {
      await this.page.mouse.move(rule.at_px(from_1 + ((to_1 - from_1) * step) / steps), rule.y_px);
    }
  }

  private async rule(): Promise<{ readonly y_px: number; at_px(share_1: number): number }> {
    const box = await this.slider.boundingBox();
    if (box === null) throw new Error("load: expected the rule to be on the screen");
    return { y_px: box.y + box.height / 2, at_px: (share_1) => box.x + box.width * share_1 };
  }

  /** Everything that follows a drag, as it reads and where it stands; the envelope's scale is another after a drag. */
  figures(): Promise<readonly string[]> {
    return this.page.evaluate(() => {
      const found = (kinds: string, say: (element: Element) => string) =>
        [...document.querySelectorAll(kinds)].map((each) => `${each.tagName} ${say(each)}`);
      const attributes = (each: Element, names: readonly string[]) =>
        names.map((name) => each.getAttribute(name) ?? "").join(" ");
      const where = ["class", "d", "x", "y", "width", "transform", "stroke-width"];
      return [
        ...found(".load-answer h2, .load-answer-more li, .phases td, .phase-under, .hand-who p", (each) =>
          [each.className, each.textContent, each.querySelector("svg")?.getAttribute("aria-label")].join(),
        ),
        ...found(".hand-figure, .hand-things button", (each) => each.textContent ?? ""),
        ...found(
          ".envelope svg:not(.under-layer) text",
          (each) => `${attributes(each, ["class"])} ${each.textContent}`,
        ),
        ...found(".load-svg :is(text, path, g)", (each) => `${attributes(each, where)} ${each.textContent}`),
        ...found(".amount-slides", (each) => attributes(each, ["aria-valuenow", "aria-valuetext"])),
        ...found(".amount-slides svg > :is(rect, path)", (each) => attributes(each, where)),
      ];
    });
  }
}
