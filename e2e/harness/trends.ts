import type { Locator, Page } from "playwright-core";
import { REGISTRATION } from "./book.ts";
import { PATIENCE_ms } from "./patience.ts";
import { go } from "./screens.ts";

/** What the Record screen says has moved, and the page of one series. */
export class Trends {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** The trends of the record, once every reading has been compared. */
  async open(): Promise<void> {
    await go(this.page, `#/${REGISTRATION}/record/trends`);
    await this.page.getByRole("heading", { name: /^Has it moved/ }).waitFor();
    await this.all.first().waitFor({ timeout: PATIENCE_ms });
  }

  /** One link for each series that is drawn, in the order in which they are told. */
  get all(): Locator {
    return this.page.getByRole("link", { name: /: chart and all readings$/ });
  }

  block(title: string): Locator {
    return this.page
      .getByRole("article")
      .filter({ has: this.page.getByRole("heading", { name: new RegExp(title) }) });
  }

  /** The page of one series. */
  async openOne(check: string): Promise<void> {
    await go(this.page, `#/${REGISTRATION}/trend/${encodeURIComponent(check)}`);
    await this.rows.first().waitFor({ timeout: PATIENCE_ms });
  }

  get chart(): Locator {
    return this.page.getByRole("img", { name: /over time/ });
  }

  get rows(): Locator {
    return this.page.getByRole("table", { name: "All readings" }).locator("tbody").getByRole("row");
  }

  get earlier(): Locator {
    return this.page.getByRole("button", { name: "Earlier" });
  }
}
