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
  const { violations, passed } = await page.evaluate(
    async (given) => {
      // axe was put into the page by the line above
      const found = await (window as unknown as { axe: typeof axe }).axe.run(document, given);
      // what is told here is words: the whole of what axe hands back, with every element that is right, is large
      return {
        violations: found.violations.flatMap(({ id, help, nodes }) =>
          nodes.map(({ target }) => `${id} (${help}): ${target.join(" ")}`),
        ),
        passed: found.passes.length,
      };
    },
    // every rule looks at everything; of those that hold, one element is named
    { ...options, resultTypes: ["violations"] } satisfies axe.RunOptions,
  );
  if (passed === 0) throw new Error("axe: expected at least one rule that could look at something");
  return violations;
}
