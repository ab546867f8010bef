import { dateOfDayNumber, dayNumber } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";

const DAY_MS = 86_400_000;
const MIN_MS = 60_000;

/** The local day of a moment, in a place so far east of UTC. */
export const localDayOf = (at_ms: number, offset_min: number): LocalDate =>
  dateOfDayNumber(Math.floor((at_ms + offset_min * MIN_MS) / DAY_MS));

/** The last millisecond of a local day. */
export const endOfLocalDay_ms = (date: LocalDate, offset_min: number): number =>
  (dayNumber(date) + 1) * DAY_MS - offset_min * MIN_MS - 1;
