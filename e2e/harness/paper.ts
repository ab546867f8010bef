import type { Page } from "playwright-core";

/** How many pages a PDF has. */
export const pagesOf = (pdf: Buffer): number =>
  pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;

/** What the print has over every page, left and right, as CSS strings; empty where a screen is not made for paper. */
export const pageMargins = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const { style } = document.documentElement;
    return ["--page-left", "--page-right"].map((name) => style.getPropertyValue(name));
  });
