import type { Locator, Page } from "playwright-core";
import { PATIENCE_ms } from "./patience.ts";
import { go, keptWhere } from "./screens.ts";

/** The Book screen: every selector and word of it that a test needs. */
export class BookDesk {
  readonly page: Page;
  readonly registration: string;

  constructor(page: Page, registration: string) {
    this.page = page;
    this.registration = registration;
  }

  /** @param way what stands after `book`: a page, and an item of it */
  async open(...way: readonly string[]): Promise<void> {
    await go(this.page, `#/${[this.registration, "book", ...way].map(encodeURIComponent).join("/")}`);
    await this.page
      .getByRole("heading", { level: 1, name: "Book", exact: true })
      .waitFor({ timeout: PATIENCE_ms });
  }

  async heading(name: string | RegExp): Promise<void> {
    await this.page.getByRole("heading", { level: 2, name }).waitFor({ timeout: PATIENCE_ms });
  }

  field(name: string): Locator {
    return this.page.getByRole("main").getByLabel(name, { exact: true });
  }

  /** Types into a field and leaves it; waits until it is kept. */
  async type(name: string, text: string): Promise<void> {
    const field = this.field(name);
    await field.fill(text);
    await field.blur();
    await this.kept();
  }

  async kept(): Promise<void> {
    await keptWhere(this.page).filter({ hasText: /^Kept/ }).waitFor({ timeout: PATIENCE_ms });
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole("button", { name });
  }

  /** A new book from a few figures; it is then a draft. */
  async begin(kind: string, figures: Readonly<Record<string, string>>): Promise<void> {
    await go(this.page, "#/begin");
    await this.button(kind).tap();
    for (const [name, figure] of Object.entries(figures))
      await this.page.getByLabel(name, { exact: true }).fill(figure);
    await this.button("Begin this book").tap();
    await this.page
      .getByRole("heading", { level: 1, name: "Book", exact: true })
      .waitFor({ timeout: PATIENCE_ms });
  }

  /** Issues the draft as the person who holds the phone. */
  async issue(): Promise<void> {
    await this.page.getByRole("link", { name: /^Sign and issue revision \d+$/ }).tap();
    await this.button(/^Issue revision \d+ as /).tap({ timeout: PATIENCE_ms });
    await this.page
      .getByRole("heading", { level: 1, name: "Aircraft", exact: true })
      .waitFor({ timeout: PATIENCE_ms });
  }
}
