import type { Locator, Page } from "playwright-core";
import { PATIENCE_ms } from "./patience.ts";

/** The Decide screen and the sheet, by what a person sees and taps on them. */
export class Decide {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  get verdicts(): Locator {
    return this.page.getByRole("main").getByRole("listitem");
  }

  /** What was decided last, and whether it stands. */
  get last(): Locator {
    return this.page.getByRole("region", { name: "The last decision" });
  }

  get dialog(): Locator {
    return this.page.getByRole("dialog");
  }

  async count(status: "stop" | "caution" | "open" | "clear"): Promise<number> {
    const said = await this.page
      .getByRole("button", { name: new RegExp(`^\\d+ ${status}\\b.*show only these`) })
      .textContent();
    return Number.parseInt(said ?? "", 10);
  }

  /** Signs that the flight is not made yet; the reason may be empty. */
  async notGoing(why = ""): Promise<void> {
    await this.page.getByRole("button", { name: "Not going yet" }).tap();
    await this.dialog.getByLabel("Why, if you like").fill(why);
    await this.dialog.getByRole("button", { name: "Sign: not going" }).tap();
    await this.last.getByRole("heading", { name: "Not going yet" }).waitFor({ timeout: PATIENCE_ms });
  }

  /** Taps Go where something is not clear: a reason is asked for each. */
  async askGo(): Promise<void> {
    await this.page.getByRole("button", { name: /^Go(?! there)/ }).tap();
    await this.dialog.waitFor();
  }

  /** Signs "go" where all is clear. */
  async goClear(): Promise<void> {
    await this.page.getByRole("button", { name: /^Go(?! there)/ }).tap();
    await this.last.getByRole("heading", { name: /^Go/ }).waitFor({ timeout: PATIENCE_ms });
  }

  /** Signs "go", with a reason for everything that is not clear, and a basis by name for each stop. */
  async go(reason: string, basis: string): Promise<void> {
    await this.askGo();
    for (const field of await this.dialog.getByLabel("Why you go with it").all()) await field.fill(reason);
    const shared = this.dialog.getByLabel("Why you go without them, the same for each");
    if ((await shared.count()) > 0) await shared.fill(reason);
    for (const field of await this.dialog.getByLabel("Lawful basis, by name").all()) await field.fill(basis);
    await this.dialog.getByRole("button", { name: "Sign: go" }).tap();
    await this.last.getByRole("heading", { name: /^Go/ }).waitFor({ timeout: PATIENCE_ms });
  }

  /** Says which flight the decision is for. */
  async planFlight(from: string, to: string): Promise<void> {
    await this.page.getByRole("button", { name: "Say which" }).tap();
    await this.page.getByLabel("From").fill(from);
    await this.page.getByLabel("To", { exact: true }).fill(to);
    await this.page.getByRole("button", { name: "Set", exact: true }).tap();
    await this.page.getByRole("heading", { name: `${from} to ${to}` }).waitFor();
  }

  /** Closes the discrepancy of the verdict that holds these words. */
  async putRight(words: string, done: string, releasedBy: string): Promise<void> {
    const row = this.verdicts.filter({ hasText: words });
    await row
      .getByRole("button", { name: /^Put it right/ })
      .first()
      .tap();
    await this.dialog.getByLabel("What was done").fill(done);
    await this.dialog.getByLabel(/^Released by/).fill(releasedBy);
    await this.dialog.getByRole("button", { name: "Keep it" }).tap();
    await this.dialog.waitFor({ state: "hidden", timeout: PATIENCE_ms });
  }

  /** Opens the sheet of the last decision. */
  async sheet(): Promise<Locator> {
    await this.last.getByRole("link", { name: "The sheet" }).tap();
    const sheet = this.page.getByRole("article", { name: "The sheet" });
    await sheet.waitFor({ timeout: PATIENCE_ms });
    return sheet;
  }
}
