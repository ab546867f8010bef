import type { Locator, Page } from "playwright-core";
import { go } from "./screens.ts";

/** The pages of what the rules say. */
export class Rules {
  readonly #page: Page;
  /** What the rule says, in one line. */
  readonly says: Locator;
  readonly steps: Locator;
  readonly heading: Locator;

  constructor(page: Page) {
    this.#page = page;
    this.says = page.getByRole("region", { name: "What the rule says" }).getByRole("status");
    this.steps = page.getByRole("region", { name: "Step by step" }).getByRole("listitem");
    this.heading = page.getByRole("heading", { level: 1, name: "What the rules say", exact: true });
  }

  async open(id?: string): Promise<void> {
    await go(this.#page, id === undefined ? "#/rules" : `#/rules/${id}`);
    await this.heading.waitFor();
    await this.#page.getByRole("main").waitFor();
  }

  /** The answers to one question by yes or no. */
  of(asks: string | RegExp): Locator {
    return this.#page.getByRole("group", { name: asks });
  }

  async say(asks: string | RegExp, answer: "Yes" | "No" | "Not known"): Promise<void> {
    await this.of(asks).getByRole("button", { name: answer, exact: true }).tap();
  }
}
