export type DecimalMark = "point" | "comma";

const SIGNED = /^[-+−]?/;
const SPACES = /[\s\u00A0\u202F'’](?=\d{3}(?:\D|$))/g;

/** Which mark one text shows to be the decimal one; `either` when it can be read both ways. */
function shown(text: string): DecimalMark | "either" | "none" {
  const figures = text.trim().replace(SIGNED, "").replace(SPACES, "");
  const marks = figures.match(/[.,]/g) ?? [];
  const last = marks.at(-1);
  if (last === undefined || !/^[\d.,]+$/.test(figures)) return "none";
  const named = last === "." ? "point" : "comma";
  if (marks.length === 1) {
    // 1,234 is twelve hundred or one and a bit; 0,234 and 12345,678 can only be a decimal
    return /^[1-9]\d{0,2}[.,]\d{3}$/.test(figures) ? "either" : named;
  }
  if (new Set(marks).size === 2) return named;
  return named === "point" ? "comma" : "point"; // several of one kind part thousands
}

/**
 * The decimal mark of a column, by all of its cells together.
 *
 * @returns `ask` when no cell tells, or two tell different things
 */
export function decimalMarkOf(texts: readonly string[]): DecimalMark | "ask" | "none" {
  const found = new Set(texts.map(shown));
  const point = found.has("point");
  const comma = found.has("comma");
  if (point !== comma) return point ? "point" : "comma";
  return point || found.has("either") ? "ask" : "none";
}

/** A number with this decimal mark; undefined for what is none. Thousands may be parted in threes. */
export function readNumber(text: string, mark: DecimalMark): number | undefined {
  const [decimal, group] = mark === "point" ? [".", ","] : [",", "."];
  const sign = /^[-−]/.test(text.trim()) ? -1 : 1;
  const figures = text.trim().replace(SIGNED, "").replace(SPACES, "");
  const [whole = "", part, ...more] = figures.split(decimal);
  if (more.length > 0 || (part !== undefined && !/^\d+$/.test(part))) return undefined;
  const inThrees = new RegExp(`^[1-9]\\d{0,2}(\\${group}\\d{3})+$`);
  const plain = inThrees.test(whole) ? whole.replaceAll(group, "") : whole;
  if (!/^\d+$/.test(plain)) return undefined;
  const value = sign * Number(part === undefined ? plain : `${plain}.${part}`);
  return Number.isFinite(value) ? value : undefined;
}

export const MARK_WORDS: Readonly<Record<DecimalMark, string>> = {
  point: "a decimal point, as 5.24",
  comma: "a decimal comma, as 5,24",
};
