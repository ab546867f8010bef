import type { Cabin } from "@witnessmark/book";
import { toSI } from "@witnessmark/engine";
import type { CabinPoint } from "../../rules/cabin-profile.ts";

/** Time to see that the cabin has let go, and to act: AMC1 CAT.IDE.A.235(e). */
export const RECOGNITION_S = 17;

const DOWN_TO_M = toSI(13_000, "ft");
const DOWN_WITHIN_S = 240;

/** Cabin altitude at a level, in a straight line between two rows; undefined beyond the first and the last. */
export function cabinAltitude_m(cabin: Cabin, level_m: number): number | undefined {
  if (!cabin.pressurised) return level_m;
  const rows = cabin.altitudes;
  const above = rows.find((row) => row.level_m >= level_m - 1e-6);
  const below = rows.findLast((row) => row.level_m <= level_m + 1e-6);
  if (above === undefined || below === undefined) return undefined;
  const span_m = above.level_m - below.level_m;
  if (span_m <= 0) return above.cabin_m;
  return below.cabin_m + ((level_m - below.level_m) / span_m) * (above.cabin_m - below.cabin_m);
}

/** The flight as planned: all of it at the cabin altitude of the cruise, which is never less than the truth. */
export const asPlanned = (cabin_m: number, time_s: number): readonly CabinPoint[] => [
  { time_s: 0, cabinAltitude_m: cabin_m },
  { time_s, cabinAltitude_m: cabin_m },
];

type Descent = Extract<Cabin, { pressurised: true }>["emergencyDescent"];

/** After the cabin has let go at the cruise level: a moment there, the descent of the book, the rest at its end. */
export function afterLoss(
  level_m: number,
  { rate_mPerS, to_m }: Descent,
  time_s: number,
): readonly CabinPoint[] {
  const end_m = Math.min(level_m, to_m);
  const down_s = RECOGNITION_S + (level_m - end_m) / rate_mPerS;
  return [
    { time_s: 0, cabinAltitude_m: level_m },
    { time_s: RECOGNITION_S, cabinAltitude_m: level_m },
    { time_s: down_s, cabinAltitude_m: end_m },
    { time_s: Math.max(down_s, time_s), cabinAltitude_m: end_m },
  ];
}

/** Whether 13,000 ft is reached within 4 minutes, as the European rule asks; whether it is safe there nobody here knows. */
export const isDownIn4Min = (level_m: number, { rate_mPerS, to_m }: Descent): boolean =>
  to_m <= DOWN_TO_M + 1e-6 && RECOGNITION_S + Math.max(0, level_m - DOWN_TO_M) / rate_mPerS <= DOWN_WITHIN_S;
