import type { RemarkPlace } from "./remark.ts";

const two = (figure: number): string => String(figure).padStart(2, "0");

/**
 * The time of a remark: hhmm, or mm alone, which is the last such minute before the report.
 *
 * @returns `undefined` when it is no time of day
 */
export function remarkClock(digits: string, { hour, minute }: RemarkPlace): string | undefined {
  if (/^\d{2}$/u.test(digits)) {
    const at = Number(digits);
    if (at > 59) return undefined;
    return `${two(at > minute ? (hour + 23) % 24 : hour)}${digits}`;
  }
  if (!/^\d{4}$/u.test(digits) || Number(digits.slice(0, 2)) > 23 || Number(digits.slice(2)) > 59)
    return undefined;
  return digits;
}
