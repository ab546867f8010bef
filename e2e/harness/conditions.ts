import type { Locator, Page } from "playwright-core";
import { REGISTRATION } from "./book.ts";
import { putInHand } from "./flight-in-hand.ts";
import { PATIENCE_ms } from "./patience.ts";
import { go } from "./screens.ts";

/** The island flight of the demo, with four people, bags and fuel aboard, as it is when only its conditions are open. */
export const LOADED_FLIGHT = {
  id: "01934f0a-7a00-7000-8000-000000000001",
  from: "ZZTW",
  to: "ZZQN",
  offBlocks: "2026-11-12T09:10:00+00:00",
  plan: {
    rulePack: "us-part-91",
    flightRules: "VFR",
    load: {
      items: [
        ["seat-1", 84],
        ["seat-2", 78],
        ["seat-3", 71],
        ["seat-4", 66],
        ["aft-bay", 40],
      ].map(([station, value]) => ({
        id: String(station),
        station,
        what: "",
        mass: { value, unit: "kg" },
        known: "weighed",
      })),
      fuel: ["left-tank", "right-tank"].map((tank) => ({ tank, volume: { value: 200, unit: "L" } })),
    },
    route: {
      distance: { value: 128, unit: "NM" },
      time: { value: 52, unit: "min" },
      level: { value: 17_000, unit: "ft" },
    },
  },
} as const;

/** The same an hour from now: one that is long past is in hand no more. */
export const loadedFlightSoon = () => ({
  ...LOADED_FLIGHT,
  offBlocks: new Date(Date.now() + 3_600_000).toISOString().replace("Z", "+00:00"),
});

/** The Conditions screen, by what a person sees and taps on it. */
export class Conditions {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async open(): Promise<void> {
    await go(this.page, `#/${REGISTRATION}/conditions`);
    await this.page.getByRole("heading", { level: 1, name: "Conditions", exact: true }).waitFor();
  }

  /** Puts a flight in hand and opens the screen. */
  async openWith(flight: unknown): Promise<void> {
    await putInHand(this.page, REGISTRATION, flight);
    await this.open();
    await this.tab("landing").waitFor({ timeout: PATIENCE_ms });
  }

  tab(phase: "take-off" | "landing" | "alternate"): Locator {
    return this.page.getByRole("tab", { name: new RegExp(`${phase}$`) });
  }

  async at(phase: "take-off" | "landing" | "alternate"): Promise<void> {
    await this.tab(phase).tap();
  }

  private get place(): Locator {
    return this.page.getByRole("region", { name: "Field and runway" });
  }

  async choose(what: "Field" | "Runway" | "Surface", value: string): Promise<void> {
    await this.place.getByRole("combobox", { name: what }).selectOption(value);
  }

  /** Opens what is said of a field that is not in the book: of another one, or of the one that stands there. */
  async sayField(which: "another" | "this" = "another"): Promise<Locator> {
    if (which === "another") await this.choose("Field", which);
    else await this.place.getByRole("button", { name: /^What was said of / }).tap();
    const dialog = this.page.getByRole("dialog", { name: "A field that is not in the book" });
    await dialog.waitFor();
    return dialog;
  }

  async runway(): Promise<string> {
    return this.place.getByRole("combobox", { name: "Runway" }).inputValue();
  }

  /** The one box for reports. */
  get box(): Locator {
    return this.page.getByLabel(/^METAR and TAF, as they come/);
  }

  /** Pastes into it. */
  async paste(text: string): Promise<void> {
    await this.box.fill(text);
    await this.page.getByRole("button", { name: "Take them", exact: true }).tap();
  }

  get fetch(): Locator {
    return this.page.getByRole("button", { name: "Fetch reports" });
  }

  /** What became of what was pasted or fetched. */
  told(words: string | RegExp): Locator {
    return this.page.getByRole("main").getByRole("status").filter({ hasText: words });
  }

  /** Types one value and leaves its field. */
  async type(label: string, text: string): Promise<void> {
    const field = this.page.getByLabel(label, { exact: true });
    await field.fill(text);
    await field.press("Enter");
  }

  async unfold(heading: string): Promise<void> {
    await this.page.getByRole("heading", { name: heading, exact: true }).tap();
  }

  /** A drawing, by what is read aloud of it. */
  drawing(words: RegExp): Locator {
    return this.page.getByRole("img", { name: words });
  }

  /** A cell of the table of air, with its value. */
  cell(words: RegExp): Locator {
    return this.page.getByRole("region", { name: "Air" }).getByRole("button", { name: words });
  }

  verdict(title: string): Locator {
    return this.page.getByRole("main").getByRole("listitem").filter({ hasText: title });
  }

  get undo(): Locator {
    return this.page.getByRole("button", { name: "Undo", exact: true });
  }
}
