import { MONTH_NAMES, shortName } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";
import { clockText, offset_min } from "../local-time.ts";

/** `12 Nov 2026`: always with its year, as a record is read years later. */
export function dayWords(day: LocalDate): string {
  const [year = "", month = "", date = ""] = day.split("-");
  const name = MONTH_NAMES[Number(month) - 1];
  return name === undefined ? day : `${Number(date)} ${shortName(name)} ${year}`;
}

/** The day that the person who wrote it had: an ISO 8601 time with offset begins with it. */
export const dayOf = (iso: string): LocalDate => iso.slice(0, 10);

/** `12 Nov 2026, 07:20 +01:00`: local time, with its offset from UTC. */
export function momentWords(iso: string): string {
  const east_min = offset_min(iso);
  const zone = east_min === 0 ? "UTC" : iso.slice(-6);
  return `${dayWords(dayOf(iso))}, ${clockText(Date.parse(iso), east_min)} ${zone}`;
}
