import type { Locator, Page } from "playwright-core";
import { PATIENCE_ms } from "./patience.ts";
import type { PictureFile } from "./picture-file.ts";
import { go } from "./screens.ts";

/** One fault of a book, as the screen tells it. */
export interface ToldFault {
  readonly line: number;
  readonly column: number;
  readonly words: string;
}

/** The screen that takes a book from a file. */
export class AddAircraft {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  get wrong(): Locator {
    return this.page.getByRole("region", { name: "What is wrong with the book" });
  }

  async open(): Promise<void> {
    await go(this.page, "#/");
    await go(this.page, "#/add");
    await this.page.getByRole("heading", { level: 1, name: "Add an aircraft", exact: true }).waitFor();
  }

  /** Hands over a file, and waits until it was read. */
  async choose(file: PictureFile): Promise<void> {
    await this.page.getByLabel("Choose a book").setInputFiles(file);
  }

  /** Every fault that is told, in the order of the screen. */
  async faults(): Promise<readonly ToldFault[]> {
    await this.wrong.waitFor({ timeout: PATIENCE_ms });
    const told = await this.wrong.getByRole("listitem").allTextContents();
    return told.map((words) => {
      const [, line = "0", column = "0"] = /Line (\d+), column (\d+)/.exec(words) ?? [];
      return { line: Number(line), column: Number(column), words };
    });
  }

  /** What is said of the file as a whole. */
  async said(): Promise<string> {
    return (await this.wrong.getByRole("alert").textContent()) ?? "";
  }
}
