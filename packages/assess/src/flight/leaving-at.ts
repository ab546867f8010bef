import type { PlannedFlight } from "@witnessmark/ledger";
import { wallTimeAt } from "../words/wall-time-at.ts";

/**
 * The flight as it can still be made: one whose off blocks is past leaves now. All that goes by the hour asks of it,
 * night, daylight, reports and what runs out on the way, so that no two answers are of different hours.
 *
 * @param now_ms milliseconds since 1970 UTC
 */
export function leavingAt(flight: PlannedFlight, now_ms: number): PlannedFlight;
export function leavingAt(flight: PlannedFlight | null, now_ms: number): PlannedFlight | null;
export function leavingAt(flight: PlannedFlight | null, now_ms: number): PlannedFlight | null {
  if (flight === null || !(Date.parse(flight.offBlocks) < now_ms)) return flight;
  return { ...flight, offBlocks: wallTimeAt(now_ms, flight.offBlocks) };
}
