import type { QuantitySource } from "../registry/quantity.ts";
import { toSI } from "../units/convert.ts";

/** Shortest and longest time in which a person without oxygen can still help himself. */
export interface TimeSpan {
  readonly shortest_s: number;
  readonly longest_s: number;
}

export interface UsefulConsciousness {
  readonly altitude_m: number;
  /** Climbing at a usual rate, cabin and all. */
  readonly gradual: TimeSpan;
  /** After the cabin pressure has gone at once. */
  readonly rapid: TimeSpan;
}

/** Reproductions of the table differ: elsewhere 22,000 ft is 5 to 10 min, 30,000 ft 1 to 3 min. */
export const USEFUL_CONSCIOUSNESS_SOURCE: QuantitySource = {
  title: "Time of useful consciousness, table of a type training manual (Lancair IV/IVP)",
  edition: "2007",
  locator: "table 1-1, page 23",
  url: "https://manualshive.com/en/manual/lancair/iv/672476?page=24",
  status: "published",
  note: "Average figures at rest; one person on one day may have less, and exercise, smoking and tiredness shorten them.",
};

const row = (
  altitude_ft: number,
  gradual: readonly [shortest_s: number, longest_s: number],
  rapid: readonly [shortest_s: number, longest_s: number],
): UsefulConsciousness => ({
  altitude_m: toSI(altitude_ft, "ft"),
  gradual: { shortest_s: gradual[0], longest_s: gradual[1] },
  rapid: { shortest_s: rapid[0], longest_s: rapid[1] },
});

/** From the lowest altitude up. */
export const USEFUL_CONSCIOUSNESS: readonly UsefulConsciousness[] = [
  row(18_000, [1200, 1800], [600, 900]),
  row(22_000, [600, 600], [300, 300]),
  row(25_000, [180, 300], [90, 210]),
  row(28_000, [150, 180], [75, 90]),
  row(30_000, [60, 120], [30, 60]),
  row(35_000, [30, 60], [15, 30]),
  row(40_000, [15, 20], [7, 10]),
  row(43_000, [9, 12], [5, 5]),
  row(50_000, [9, 12], [5, 5]),
];

/** What a conversion from feet may leave over. */
const ROUNDING_M = 1e-6;

export type UsefulConsciousnessFound =
  | { readonly ok: true; readonly row: UsefulConsciousness; readonly source: QuantitySource }
  | { readonly ok: false; readonly why: "below-the-table" | "above-the-table" | "not-a-number" };

/**
 * The printed row that holds at an altitude: the row itself, or between two rows the higher one, which leaves less
 * time. Below the table no figure is given, which is not the same as no danger.
 */
export function usefulConsciousness(altitude_m: number): UsefulConsciousnessFound {
  if (!Number.isFinite(altitude_m)) return { ok: false, why: "not-a-number" };
  const [lowest] = USEFUL_CONSCIOUSNESS;
  if (lowest === undefined || altitude_m < lowest.altitude_m - ROUNDING_M)
    return { ok: false, why: "below-the-table" };
  const found = USEFUL_CONSCIOUSNESS.find((one) => altitude_m <= one.altitude_m + ROUNDING_M);
  if (found === undefined) return { ok: false, why: "above-the-table" };
  return { ok: true, row: found, source: USEFUL_CONSCIOUSNESS_SOURCE };
}
