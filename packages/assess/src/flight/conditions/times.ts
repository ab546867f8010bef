import { UNITS } from "@witnessmark/engine";
import type { Flight } from "../../assessment.ts";
import { rulePacks } from "../../rules/rule-packs.ts";
import { typedSI, type Wanted } from "./faults.ts";
import { type Figure, figureOf, lacking } from "./figure.ts";
import type { FieldRole } from "./role.ts";

/** From off blocks to take-off, because no book says it. Common practice. */
export const TAXI_S = 600;
const HOUR_S = 3600;
const DAY_S = 86_400;

/** When a field is used, and the span of time whose weather counts for it. Milliseconds since 1970 UTC. */
export interface FieldTime {
  readonly planned_ms: number;
  readonly from_ms: number;
  readonly to_ms: number;
  /** From off blocks until then: the latest off blocks is that much before an end. */
  readonly afterOffBlocks_ms: number;
}

const TIME: Omit<Wanted, "name"> = {
  dimension: UNITS.s.dimension,
  range: [0, 2 * DAY_S],
  unit: "h",
  step: 1,
};

type Plan = NonNullable<Flight["plan"]>;

function spanOf_s(plan: Plan, role: FieldRole): Figure<number> {
  if (role === "departure") return figureOf(TAXI_S);
  const { route } = plan;
  if (route === undefined) return lacking({ what: "the route and its time", root: "route" });
  const time = typedSI(route.time, { ...TIME, name: "time from take-off to landing" });
  if ("says" in time) return lacking({ what: `the time of the route (${time.says})`, root: "time" });
  if (role === "destination") return figureOf(TAXI_S + time.value);
  if (route.alternateTime === undefined)
    return lacking({ what: "the time from the destination to the alternate", root: "time" });
  const more = typedSI(route.alternateTime, { ...TIME, name: "time to the alternate" });
  if ("says" in more) return lacking({ what: `the time to the alternate (${more.says})`, root: "time" });
  return figureOf(TAXI_S + time.value + more.value);
}

/**
 * When a field is used. A flight whose off blocks is past leaves now at the earliest, so that an answer moves on with
 * the clock. At the departure the weather counts from off blocks to an hour after take-off; at the others for the
 * span of the rule pack around the arrival.
 */
export function fieldTime(flight: Flight, plan: Plan, role: FieldRole, now_ms: number): Figure<FieldTime> {
  const planned = Date.parse(flight.offBlocks);
  if (!Number.isFinite(planned)) return lacking({ what: "the time off blocks", root: "time" });
  const offBlocks_ms = Math.max(planned, now_ms);
  const span = spanOf_s(plan, role);
  if (span.value === undefined) return { from: [], missing: span.missing };
  const afterOffBlocks_ms = span.value * 1000;
  const planned_ms = offBlocks_ms + afterOffBlocks_ms;
  const window = rulePacks.get(plan.rulePack)?.arrivalWindow ?? { before_s: HOUR_S, after_s: HOUR_S };
  const from_ms = role === "departure" ? offBlocks_ms : planned_ms - window.before_s * 1000;
  return figureOf({ planned_ms, from_ms, to_ms: planned_ms + window.after_s * 1000, afterOffBlocks_ms });
}
