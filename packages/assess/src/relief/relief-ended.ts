import type { AircraftState, Discrepancy, ReliefOnRecord } from "@witnessmark/ledger";
import { endOfLocalDay_ms } from "../timed/local-day.ts";
import { reliefOnRecord } from "./relief-in-force.ts";

/** A relief that was in force when something began and is not any more. */
export interface ReliefEnded {
  readonly discrepancy: Discrepancy;
  readonly relief: ReliefOnRecord;
  readonly at_ms: number;
  /** A person ended it, and why; undefined where its last day is over. */
  readonly why: string | undefined;
}

const endsOf = (relief: ReliefOnRecord, offset_min: number): readonly { at_ms: number; why?: string }[] => [
  ...(relief.ended === undefined
    ? []
    : [{ at_ms: Date.parse(relief.ended.recordedAt), why: relief.ended.why }]),
  // the first moment of the day after
  ...(relief.until === undefined ? [] : [{ at_ms: endOfLocalDay_ms(relief.until, offset_min) + 1 }]),
];

function endOf(relief: ReliefOnRecord, offset_min: number): { at_ms: number; why?: string } | undefined {
  const [first, ...more] = endsOf(relief, offset_min);
  return first === undefined
    ? undefined
    : more.reduce((one, two) => (two.at_ms < one.at_ms ? two : one), first);
}

const signed_ms = ({ recordedAt }: ReliefOnRecord): number => Date.parse(recordedAt);

/**
 * The reliefs of open discrepancies that ended between two moments: what a walk that began under them must be told at
 * once. One that was signed anew since is in force again, and is not told.
 */
export const reliefsEnded = (
  state: Pick<AircraftState, "discrepancies">,
  since_ms: number,
  now_ms: number,
  offset_min: number,
): readonly ReliefEnded[] =>
  [...state.discrepancies.values()].flatMap((discrepancy): readonly ReliefEnded[] => {
    if (!discrepancy.isOpen || discrepancy.reliefs.length === 0) return [];
    const standing = reliefOnRecord(discrepancy);
    const end = standing === undefined ? undefined : endOf(standing, offset_min);
    if (standing !== undefined && (end === undefined || end.at_ms > now_ms)) return [];
    const ended = discrepancy.reliefs.flatMap((relief) => {
      const found = endOf(relief, offset_min);
      return found === undefined ||
        found.at_ms <= since_ms ||
        found.at_ms > now_ms ||
        signed_ms(relief) > now_ms
        ? []
        : [{ discrepancy, relief, at_ms: found.at_ms, why: found.why }];
    });
    return ended.toSorted((a, b) => a.at_ms - b.at_ms).slice(-1);
  });

/** The next moment at which a relief ends by its last day; undefined where none does. */
export function nextReliefEnd_ms(
  state: Pick<AircraftState, "discrepancies">,
  now_ms: number,
  offset_min: number,
): number | undefined {
  const ends = [...state.discrepancies.values()].flatMap((discrepancy) => {
    const relief = discrepancy.isOpen ? reliefOnRecord(discrepancy) : undefined;
    const end = relief === undefined ? undefined : endOf(relief, offset_min);
    return end === undefined || end.at_ms <= now_ms ? [] : [end.at_ms];
  });
  return ends.length === 0 ? undefined : Math.min(...ends);
}
