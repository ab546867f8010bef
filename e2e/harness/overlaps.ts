import type { Page } from "playwright-core";

/** What a text may reach into its neighbour: letters are lower than the line that they stand on. */
const SLACK_px = 1.5;

/**
 * Pairs of texts inside an element that lie on each other, and texts that stick out of their cell or frame; each text is
 * measured line by line, as high as its small letters.
 */
export const overprinted = (page: Page, inside: string): Promise<readonly string[]> =>
  page.evaluate(
    ({ selector, slack }) => {
      const root = document.querySelector(selector);
      if (root === null) throw new Error(`overlaps: expected ${selector}`);
      interface Line {
        readonly text: string;
        readonly node: Node;
        readonly box: DOMRect;
        readonly frame: DOMRect;
      }
      const linesOf = (node: Node): readonly Line[] => {
        const { parentElement, textContent } = node;
        const text = (textContent ?? "").trim();
        if (text === "" || parentElement?.checkVisibility() !== true) return [];
        if (parentElement.closest(".out-of-sight") !== null) return [];
        const cell = parentElement.closest("td, th, .paper-frame, .paper-slip > div") ?? root;
        const range = document.createRange();
        range.selectNodeContents(node);
        return [...range.getClientRects()].map(({ x, y, width, height }) => ({
          text: text.slice(0, 40),
          node,
          box: new DOMRect(x, y + height / 4, width, height / 2),
          frame: cell.getBoundingClientRect(),
        }));
      };
      const isOn = (one: DOMRect, other: DOMRect): boolean =>
        Math.min(one.right, other.right) - Math.max(one.left, other.left) > slack &&
        Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > slack;
      const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
      const lines: Line[] = [];
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
        lines.push(...linesOf(node));
      return lines.flatMap(({ text, node, box, frame }, index) => [
        ...(box.right > frame.right + slack || box.left < frame.left - slack
          ? [`"${text}" sticks out of its frame`]
          : []),
        ...lines
          .slice(index + 1)
          .filter((other) => other.node !== node && isOn(box, other.box))
          .map((other) => `"${text}" and "${other.text}" lie on each other`),
      ]);
    },
    { selector: inside, slack: SLACK_px },
  );
