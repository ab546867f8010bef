import { readFigure, type TypedFigure } from "../../words/figures.ts";

/** `1,500`: a thousand and a half, or one and a half. */
const TWO_WAYS = /^[-+−]?\d{1,3}(,\d{3})+(?!\d)/u;

/**
 * As `readFigure`, and refuses what can be read in two ways: where heights and masses of thousands are typed, a comma is
 * not always a decimal point.
 */
export function readTyped(text: string, example: string): TypedFigure {
  const tidy = text.trim();
  const hasPoint = tidy.includes(".");
  if (!hasPoint && TWO_WAYS.test(tidy)) {
    const [thousands, point] = [tidy.replaceAll(",", ""), tidy.replace(",", ".")];
    return { ok: false, why: `“${tidy}” can be read in two ways. Write ${thousands} or ${point}.` };
  }
  return readFigure(hasPoint ? tidy.replaceAll(",", "") : tidy, example);
}
