import axe from "axe-core";
import type { Page } from "playwright-core";

const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** What axe objects to on the page as it stands: rule, and where. */
export const axeFindings = (page: Page): Promise<readonly string[]> =>
  runAxe(page, { runOnly: { type: "tag", values: TAGS } });

/** The colours alone, for a page whose other claims were looked at in the other theme. */
export const axeColours = (page: Page): Promise<readonly string[]> =>
  runAxe(page, { runOnly: { type: "rule", values: ["color-contrast"] } });

async function runAxe(page: Page, options: axe.RunOptions): Promise<readonly string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  const { violations, passes } = await page.evaluate(
    // axe was put into the page by the line above
    (given) => (window as unknown as { axe: typeof axe }).axe.run(document, given),
    options,
  );
  if (passes.length === 0) throw new Error("axe: expected at least one rule that could look at something");
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id} (${help}): ${target.join(" ")}`),
  );
}
