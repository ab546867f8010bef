import { addDays } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";
import type { Citations } from "./ruling.ts";

export const INTERVAL_CITATIONS: Citations = [
  {
    title: "Master minimum equipment list, common definitions: repair categories",
    edition: "common text",
    status: "from memory",
    note: "Whether the categories bind a list under a letter of authorization alone must be read from that letter.",
  },
];

const DAYS: Readonly<Record<"B" | "C" | "D", number>> = { B: 3, C: 10, D: 120 };

/**
 * The last day of a repair interval: the day on which the fault was found is not counted.
 *
 * @param days of category A, as the item states; without them there is no last day to tell
 */
export function repairUntil(
  category: "A" | "B" | "C" | "D",
  foundOn: LocalDate,
  days?: number,
): LocalDate | undefined {
  const interval = category === "A" ? days : DAYS[category];
  return interval === undefined ? undefined : addDays(foundOn, interval);
}
