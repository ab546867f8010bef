import type { Page } from "playwright-core";

/** What a finger, an eye and a narrow screen need; each answers with what is wrong, in words. */

/** Everything that can be tapped. The label of a file field stands for it; a place in a drawing has its row in a list. */
const CONTROLS =
  "button, a[href], select, textarea, input:not([type=file]), label:has(> input[type=file]), [role=slider]";

/** @param answers_px the least height of the answers to a check */
export const smallTargets = (page: Page, least_px = 48, answers_px = 64): Promise<readonly string[]> =>
  page.evaluate(
    ({ controls, least, answers }) => {
      const tellable = (control: Element) =>
        (control.getAttribute("aria-label") ?? control.textContent ?? "").trim().slice(0, 40);
      /** Whether a finger that lands there reaches the control, also by what lies invisibly about it. */
      const reaches = (control: Element, x: number, y: number) => {
        const hit = document.elementFromPoint(x, y);
        return hit !== null && (control.contains(hit) || hit.contains(control));
      };
      const open = document.querySelector("dialog[open]") ?? document;
      return [...open.querySelectorAll(controls)].flatMap((control) => {
        if (!control.checkVisibility({ visibilityProperty: true })) return [];
        const { width, height } = control.getBoundingClientRect();
        if (width <= 1 || height <= 1) return []; // for screen readers only
        const wanted = control.closest(".answers") === null ? least : answers;
        if (width >= least - 0.5 && height >= wanted - 0.5) return [];
        control.scrollIntoView({ block: "center" });
        const { left, top } = control.getBoundingClientRect();
        const [x, y] = [left + width / 2, top + height / 2];
        const [across, down] = [(Math.max(least, width) - 1) / 2, (Math.max(wanted, height) - 1) / 2];
        const isReached =
          (width >= least - 0.5 || (reaches(control, x - across, y) && reaches(control, x + across, y))) &&
          (height >= wanted - 0.5 || (reaches(control, x, y - down) && reaches(control, x, y + down)));
        return isReached
          ? []
          : [
              `"${tellable(control)}" is ${width.toFixed(1)} by ${height.toFixed(1)} px, expected ${wanted} high`,
            ];
      });
    },
    { controls: CONTROLS, least: least_px, answers: answers_px },
  );

/** Texts under 13 px, but on the paper of a sheet, which is set for print. */
export const smallTexts = (page: Page, least_px = 13): Promise<readonly string[]> =>
  page.evaluate((least) => {
    const found: string[] = [];
    for (const element of document.querySelectorAll("body *")) {
      if (element.closest(".paper") !== null || !element.checkVisibility()) continue;
      const own = [...element.childNodes].filter(({ nodeType }) => nodeType === Node.TEXT_NODE);
      const text = own
        .map(({ textContent }) => textContent ?? "")
        .join("")
        .trim();
      const size_px = Number.parseFloat(getComputedStyle(element).fontSize);
      if (text !== "" && size_px < least - 0.01) found.push(`"${text.slice(0, 30)}" is ${size_px} px`);
    }
    return found;
  }, least_px);

/** Whether the page, or a dialog on it, can be scrolled sideways. */
export const sidewaysScroll = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [document.scrollingElement, ...document.querySelectorAll("main, dialog[open]")].flatMap((element) =>
      element !== null && element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0
        ? [`<${element.localName}> is ${element.scrollWidth} px wide in ${element.clientWidth}`]
        : [],
    ),
  );

/** Texts that carry an answer: what was asked, what right looks like, verdicts, margins, and what one answers with. */
const ANSWERS =
  ".card-in h2, dd, .verdict, .summary h2, .verdicts h3, .verdicts .margin, .answers > *, .acts > *, .read b:not(.unread)";

/** Texts that carry an answer and do not stand out enough from what is behind them. */
export const weakAnswers = (page: Page, least_1 = 7): Promise<readonly string[]> =>
  page.evaluate(
    ({ answers, least }) => {
      const context = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
      if (context === null) throw new Error("look: expected a drawing surface");
      const rgba = (colour: string): readonly [number, number, number, number] => {
        context.clearRect(0, 0, 1, 1);
        context.fillStyle = colour;
        context.fillRect(0, 0, 1, 1);
        const [r = 0, g = 0, b = 0, a = 0] = context.getImageData(0, 0, 1, 1).data;
        return [r, g, b, a / 255];
      };
      // relative luminance and contrast as WCAG 2.2 defines them
      const luminance = ([r, g, b]: readonly [number, number, number, number]) => {
        const part = (value: number) => {
          const share = value / 255;
          return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
        };
        return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
      };
      const behind = (element: Element | null): readonly [number, number, number, number] => {
        for (let at = element; at !== null; at = at.parentElement) {
          const colour = rgba(getComputedStyle(at).backgroundColor);
          if (colour[3] > 0.99) return colour;
        }
        return [255, 255, 255, 1];
      };
      return [...document.querySelectorAll(answers)].flatMap((element) => {
        const text = (element.textContent ?? "").trim();
        const isOff = element instanceof HTMLButtonElement && element.disabled;
        if (text === "" || isOff || !element.checkVisibility()) return [];
        const [front, back] = [luminance(rgba(getComputedStyle(element).color)), luminance(behind(element))];
        const contrast_1 = (Math.max(front, back) + 0.05) / (Math.min(front, back) + 0.05);
        return contrast_1 >= least - 0.005
          ? []
          : [`"${text.slice(0, 40)}" stands out ${contrast_1.toFixed(2)} to 1`];
      });
    },
    { answers: ANSWERS, least: least_1 },
  );

/** How many texts of this page the claim above is about: a claim about none would always hold. */
export const answerCount = (page: Page): Promise<number> =>
  page.evaluate((answers) => document.querySelectorAll(answers).length, ANSWERS);

/** Controls whose edge and words cannot be told from what is behind them, as when colours are forced. */
export const vanishedControls = (page: Page): Promise<readonly string[]> =>
  page.evaluate((controls) => {
    const transparent = (colour: string) => /^rgba\(.*, 0\)$/.test(colour);
    return [...document.querySelectorAll(controls)].flatMap((control) => {
      if (!control.checkVisibility({ visibilityProperty: true })) return [];
      const style = getComputedStyle(control);
      const name = (control.getAttribute("aria-label") ?? control.textContent ?? "").trim().slice(0, 40);
      const hasEdge = ["Top", "Bottom"].some(
        (side) =>
          style.getPropertyValue(`border-${side.toLowerCase()}-style`) !== "none" &&
          Number.parseFloat(style.getPropertyValue(`border-${side.toLowerCase()}-width`)) > 0,
      );
      const hasWords = name !== "" && !transparent(style.color) && style.color !== style.backgroundColor;
      const hasMark = control.querySelector("svg") !== null || control.localName === "svg";
      return hasEdge || hasWords || hasMark ? [] : [`"${name}" has no edge, no words and no mark`];
    });
  }, CONTROLS);

/** Marks whose lines have nearly the colour of the sheet, and so are not there for the eye. */
export const vanishedMarks = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const context = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
    if (context === null) throw new Error("look: expected a drawing surface");
    const grey = (colour: string) => {
      context.clearRect(0, 0, 1, 1);
      context.fillStyle = colour;
      context.fillRect(0, 0, 1, 1);
      const [r = 0, g = 0, b = 0] = context.getImageData(0, 0, 1, 1).data;
      return 0.3 * r + 0.59 * g + 0.11 * b;
    };
    const sheet = grey(getComputedStyle(document.body).backgroundColor);
    return [...document.querySelectorAll("svg.wm polygon")].flatMap((nut) => {
      const { stroke } = getComputedStyle(nut);
      return Math.abs(grey(stroke) - sheet) > 80 ? [] : [`a mark's nut is ${stroke}`];
    });
  });

/** Elements that would move although less motion was asked for. */
export const movingParts = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll("body *")].flatMap((element) => {
      const { transitionDuration, animationDuration, animationName, transitionProperty } =
        getComputedStyle(element);
      const longest_s = (durations: string) => Math.max(...durations.split(",").map(Number.parseFloat));
      const moves =
        (animationName !== "none" && longest_s(animationDuration) > 0.01) ||
        (transitionProperty !== "none" && longest_s(transitionDuration) > 0.01);
      return moves ? [`<${element.localName} class="${element.getAttribute("class") ?? ""}">`] : [];
    }),
  );
