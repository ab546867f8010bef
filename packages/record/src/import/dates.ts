import { isLocalDate } from "@witnessmark/engine";

export type DateOrder = "day-first" | "month-first";

const NUMBERED = /^(\d{1,2})([/.-])(\d{1,2})\2(\d{4})(?=$|[\sT,])/;
const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const NAMED = /^(\d{1,2})[\s.-]+([A-Za-z]{3,9})\.?,?[\s.-]+(\d{4})(?=$|[\sT,])/;
const ISO = /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})(?=$|[\sT,])/;
const TIME =
  /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,3})\d*)?)?\s*([ap]\.?m\.?)?\s*(Z|[+-]\d{2}:?\d{2})?$/i;

/**
 * Which of the first two figures of a column of dates is the day, by all of its cells together. With points between
 * them it is the first, everywhere.
 *
 * @returns `ask` when every date could be read both ways, or two tell different things
 */
export function dateOrderOf(texts: readonly string[]): DateOrder | "ask" | "none" {
  let day = false;
  let month = false;
  let either = false;
  for (const text of texts) {
    const found = NUMBERED.exec(text.trim());
    if (found === null || found[2] === ".") continue;
    const [first, second] = [Number(found[1]), Number(found[3])];
    if (first > 12) day = true;
    else if (second > 12) month = true;
    else if (first !== second) either = true;
  }
  if (day !== month) return day ? "day-first" : "month-first";
  return day || either ? "ask" : "none";
}

const iso = (year: string, month: number, day: string): string =>
  `${year}-${String(month).padStart(2, "0")}-${day.padStart(2, "0")}`;

/** The day that a text begins with, and what is behind it. */
function dayOf(text: string, order: DateOrder): { readonly on: string; readonly rest: string } | undefined {
  const isoFound = ISO.exec(text);
  if (isoFound !== null) {
    const [whole, year = "", month = "", day = ""] = isoFound;
    return { on: iso(year, Number(month), day), rest: text.slice(whole.length) };
  }
  const numbered = NUMBERED.exec(text);
  if (numbered !== null) {
    const [whole, first = "", mark, second = "", year = ""] = numbered;
    const isDayFirst = mark === "." || order === "day-first";
    const on = isDayFirst ? iso(year, Number(second), first) : iso(year, Number(first), second);
    return { on, rest: text.slice(whole.length) };
  }
  const named = NAMED.exec(text);
  if (named === null) return undefined;
  const [whole, day = "", name = "", year = ""] = named;
  const month = MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
  return month === 0 ? undefined : { on: iso(year, month, day), rest: text.slice(whole.length) };
}

/** A day of the calendar, `YYYY-MM-DD`; undefined for what is none. A time behind it is left out. */
export function readDay(text: string, order: DateOrder): string | undefined {
  const found = dayOf(text.trim(), order);
  return found !== undefined && isLocalDate(found.on) ? found.on : undefined;
}

/** Minutes that the local time is ahead of UTC, at this local time. */
export type OffsetAt = (local: string) => number;

/** So a day without a time is kept: in the middle of it. */
const NOON = "12:00";

function clockOf(text: string): { readonly local: string; readonly offset: string | undefined } | undefined {
  const found = TIME.exec(text.trim() === "" ? NOON : text.trim());
  if (found === null) return undefined;
  const [, hour = "", minute = "", second = "00", part = "", half, offset] = found;
  let hours = Number(hour);
  if (half !== undefined) {
    if (hours < 1 || hours > 12) return undefined;
    hours = (hours % 12) + (half.toLowerCase().startsWith("p") ? 12 : 0);
  }
  if (hours > 23 || Number(minute) > 59 || Number(second) > 59) return undefined;
  const local = `${String(hours).padStart(2, "0")}:${minute}:${second}${part === "" ? "" : `.${part}`}`;
  return { local, offset };
}

const offsetText = (minutes: number): string => {
  const size = Math.abs(minutes);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${minutes < 0 ? "-" : "+"}${two(Math.floor(size / 60))}:${two(size % 60)}`;
};

/** A moment with its offset, ISO 8601; of a day without a time, noon. Undefined for what is none. */
export function readMoment(
  text: string,
  time: string,
  order: DateOrder,
  offsetAt: OffsetAt,
): string | undefined {
  const day = dayOf(text.trim(), order);
  if (day === undefined || !isLocalDate(day.on)) return undefined;
  const behind = day.rest.replace(/^[\sT,]+/, "");
  const clock = clockOf(behind === "" ? time : behind);
  if (clock === undefined) return undefined;
  const local = `${day.on}T${clock.local}`;
  const { offset } = clock;
  if (offset === undefined) return `${local}${offsetText(offsetAt(local))}`;
  return `${local}${/^z$/i.test(offset) ? "Z" : offset.replace(/^(.\d{2}):?(\d{2})$/, "$1:$2")}`;
}
