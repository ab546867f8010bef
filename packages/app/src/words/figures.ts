import { type UnitId, unitFromText, withSymbol } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";

const MINUS = "−";

/** A number as it is set in type: a true minus, thousands apart by a comma, so many decimals. */
export function figure(value: number, decimals = 0): string {
  const [whole = "0", part] = Math.abs(value).toFixed(decimals).split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ",");
  const text = part === undefined ? grouped : `${grouped}.${part}`;
  return value < 0 && Number(text.replaceAll(",", "")) !== 0 ? `${MINUS}${text}` : text;
}

export type TypedFigure =
  | { readonly ok: true; readonly value: number; readonly unit?: UnitId }
  | { readonly ok: false; readonly why: string };

/** `1,500`: a thousand and a half, or one and a half. `0,125` is no thousand. */
const TWO_WAYS = /^[-+−]?[1-9]\d{0,2},\d{3}(?![\d.,])/u;
/** `1,500.5`, `1,500,000`: a point, or a second comma, says what the first one is. */
const GROUPED = /^[-+−]?\d{1,3}(?:,\d{3})+(?:\.|(?<=,\d{3},\d{3})(?!\d))/u;

const FIGURE = /^([-+−]?)(\d*)(?:[.,](\d*))?\s*(\S.*)?$/u;

/**
 * Reads what a person types into a figure: point or comma, a true or a typed minus, and a unit after it if they like.
 * What can be read in two ways is refused: 9,000 ft are not nine.
 *
 * @param text as typed
 * @param example a value that would be right, for the answer that says what was expected
 */
export function readFigure(text: string, example: string): TypedFigure {
  const tidy = text.trim();
  if (tidy === "") return { ok: false, why: `Type a number, such as ${example}.` };
  const [twoWays] = TWO_WAYS.exec(tidy) ?? [];
  if (twoWays !== undefined) {
    const [thousands, point] = [twoWays.replaceAll(",", ""), twoWays.replace(",", ".")];
    return { ok: false, why: `“${tidy}” can be read in two ways. Write ${thousands} or ${point}.` };
  }
  const found = FIGURE.exec(GROUPED.test(tidy) ? tidy.replaceAll(",", "") : tidy);
  const [, sign = "", whole = "", part = "", tail] = found ?? [];
  if (found === null || `${whole}${part}` === "") {
    return { ok: false, why: `“${tidy}” is not a number. Type one such as ${example}.` };
  }
  const size = Number(`${whole || "0"}.${part || "0"}`);
  if (!Number.isFinite(size))
    return { ok: false, why: `“${tidy}” is too long. Type one such as ${example}.` };
  const value = sign === "-" || sign === MINUS ? -size : size;
  if (tail === undefined) return { ok: true, value };
  const unit = unitFromText(tail);
  return unit === undefined
    ? { ok: false, why: `“${tail}” is not a unit known here. Type a number such as ${example}.` }
    : { ok: true, value, unit };
}

/** A figure as it was said: so many decimals, and never fewer than it has. */
export const figureSaid = (value: number, decimals = 0): string =>
  figure(value, Math.max(String(value).split(".")[1]?.length ?? 0, decimals));

/** `Understood: 9,000 ft` */
export const understoodText = ({ value, unit }: Read, decimals = 0): string =>
  `Understood: ${withSymbol(figureSaid(value, decimals), unit)}`;

const SMALL_NUMBERS = [
  "No",
  "One",
  "Two",
  "Three",
  "Four",
  "Five",
  "Six",
  "Seven",
  "Eight",
  "Nine",
  "Ten",
  "Eleven",
  "Twelve",
];

/** "Five checks", "One check", "13 checks": a count that opens a sentence. */
export function countOf(count: number, one: string, many = `${one}s`): string {
  return `${SMALL_NUMBERS[count] ?? figure(count)} ${count === 1 ? one : many}`;
}

/** "5 checks", "1 check". */
export function tally(count: number, one: string, many = `${one}s`): string {
  return `${figure(count)} ${count === 1 ? one : many}`;
}
