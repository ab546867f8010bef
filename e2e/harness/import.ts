import type { Locator, Page } from "playwright-core";
import { REGISTRATION } from "./book.ts";
import { go } from "./screens.ts";

/** The screen that brings in a file. */
export class Import {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async open(): Promise<void> {
    await go(this.page, `#/${REGISTRATION}/record/past`);
    await this.page.getByRole("link", { name: "Bring in a file" }).tap();
    await this.page.getByRole("heading", { level: 2, name: "Bring in a file" }).waitFor();
  }

  async choose(name: string, text: string): Promise<void> {
    const file = { name, mimeType: "text/csv", buffer: Buffer.from(text) };
    await this.page.getByLabel(/^Choose (a CSV|another) file$/).setInputFiles(file);
  }

  get main(): Locator {
    return this.page.getByRole("main");
  }

  get preview(): Locator {
    return this.page.getByRole("region", { name: "How it reads" });
  }

  get faults(): Locator {
    return this.page.getByRole("region", { name: "Faults" });
  }

  get question(): Locator {
    return this.page.getByRole("region", { name: "Question" });
  }

  /** Chooses one of the few answers of a question. */
  async answer(words: RegExp): Promise<void> {
    await this.question.getByRole("button", { name: words }).tap();
  }

  /** Chooses one of the many answers of a question. */
  async pick(value: string): Promise<void> {
    await this.question.getByRole("combobox").selectOption(value);
    await this.question.getByRole("button", { name: "Take it" }).tap();
  }

  column(heading: string): Locator {
    return this.page.getByRole("region", { name: "Columns" }).getByLabel(new RegExp(`^${heading}`));
  }

  /** Whatever is brought in next is stopped as soon as it can be. */
  async stopAtOnce(): Promise<void> {
    await this.page.evaluate(() => {
      const observer = new MutationObserver(() => {
        const stop = [...document.querySelectorAll("button")].find(
          ({ textContent }) => textContent === "Stop",
        );
        if (stop === undefined) return;
        observer.disconnect();
        stop.click();
      });
      observer.observe(document, { subtree: true, childList: true });
    });
  }

  async bringIn(words: string): Promise<void> {
    await this.page.getByRole("button", { name: `Bring in ${words}`, exact: true }).tap();
  }
}
