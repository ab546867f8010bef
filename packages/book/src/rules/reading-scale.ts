import { fromSI, type Measure, measure, roundStep, roundToSafeSide } from "@witnessmark/engine";
import type { Gauge } from "../schema/gauge.ts";

/** Room beyond a limit, as a share of it: what a tyre or a cylinder gains or loses between a frost and a hot day. */
const ROOM_1 = 0.25;
/** A temperature has no zero to take a share of. */
const ROOM_K = 5;
/** About so many figures stand along a rule. */
const DIVISIONS = 10;

/**
 * The ends of a rule that holds a limit, where the book has none: from the limit's ends, with room to show a reading
 * outside them, on whole figures of the gauge's unit. Drawn by it, never judged by it.
 *
 * @param ends every value that the limit names; at least one
 */
export function scaleAround(ends: readonly Measure[], gauge: Gauge): readonly [Measure, Measure] {
  const values = ends.map(({ valueSI }) => fromSI(valueSI, gauge.unit));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const isTemperature = gauge.dimension === "temperature";
  const wanted = Math.max(
    (most - least) / 2,
    ROOM_1 * Math.max(Math.abs(least), Math.abs(most)),
    isTemperature ? ROOM_K : 0,
  );
  const room = wanted > 0 ? wanted : 1;
  const from = least >= 0 && !isTemperature ? Math.max(0, least - room) : least - room;
  const to = most + room;
  const step = roundStep((to - from) / DIVISIONS, "down");
  const low = measure(roundToSafeSide(from, step, "down"), gauge.unit);
  const high = measure(roundToSafeSide(to, step, "up"), gauge.unit);
  const [lowest, highest] = gauge.range ?? [low, high];
  return [lowest.valueSI > low.valueSI ? lowest : low, highest.valueSI < high.valueSI ? highest : high];
}
