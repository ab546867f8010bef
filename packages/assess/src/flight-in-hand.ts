import { type AircraftState, plannedFlight } from "@witnessmark/ledger";
import type { Flight } from "./assessment.ts";

/** A flight that should have begun longer ago than this, and of which nobody said that it was flown, is given up. */
const PAST_ms = 12 * 3_600_000;

/**
 * The flight that the aircraft is being made ready for: the one planned last, unless it was flown, or its time is long
 * past.
 *
 * @param now_ms milliseconds since 1970 UTC
 */
export function flightInHand(state: AircraftState, now_ms: number): Flight | null {
  const found = plannedFlight(state);
  if (found === undefined) return null;
  const offBlocks_ms = Date.parse(found.planned.offBlocks);
  if (Number.isNaN(offBlocks_ms) || now_ms - offBlocks_ms > PAST_ms) return null;
  // flown after it was planned for: then it was this one
  const flown = state.happenings.some(({ kind, at_ms }) => kind === "flown" && at_ms > offBlocks_ms);
  return flown ? null : found.planned;
}
