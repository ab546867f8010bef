import type { Cabin, OxygenOutlet } from "@witnessmark/book";
import {
  descentSupply,
  everyThousandFeet_m,
  flowAt,
  leastAddedOxygenFlow,
  standardPressure,
  toSI,
  trachealTarget,
} from "@witnessmark/engine";
import type { OxygenNeed, OxygenPart } from "../../rules/rule-pack.ts";
import { RECOGNITION_S } from "./cabin-of-flight.ts";
import type { SeatInUse } from "./persons.ts";

/** How much free oxygen (NTPD) something takes, or why no table tells. */
export type Amount =
  | { readonly known: true; readonly volume_m3: number }
  | { readonly known: false; readonly what: string };

const unknown = (what: string): Amount => ({ known: false, what });

const feet = (height_m: number): string =>
  `${Math.round(height_m / toSI(1, "ft")).toLocaleString("en-US")}\u00A0ft`;

/** The greatest flow of an outlet from the bottom of its table up to an altitude. */
function mostFlow(outlet: OxygenOutlet, upTo_m: number): Amount & { readonly flow_m3PerS?: number } {
  const first = outlet.flows[0]?.cabinAltitude_m ?? 0;
  const top = flowAt(outlet.flows, Math.max(upTo_m, first));
  if (!top.ok) {
    return unknown(
      top.why === "off-the-table"
        ? `the flow of ${outlet.id} at ${feet(top.asked_m)}; the nearest in the book is ${feet(top.nearest_m)}`
        : `a table of flows for ${outlet.id}`,
    );
  }
  const below = outlet.flows.filter((row) => row.cabinAltitude_m <= upTo_m).map((row) => row.flow_m3PerS);
  return { known: true, volume_m3: 0, flow_m3PerS: Math.max(top.flow_m3PerS, ...below) };
}

/** What the parts of a rule take, each person at the greatest flow of the flight. */
export function needByRule(need: OxygenNeed, seats: readonly SeatInUse[], highest_m: number): Amount {
  if (need.personTime_s === 0) return { known: true, volume_m3: 0 };
  const flows: { readonly crew: boolean; readonly flow_m3PerS: number }[] = [];
  for (const { station, outlet } of seats) {
    if (outlet === undefined) return unknown(`an outlet at ${station.name}`);
    const most = mostFlow(outlet, highest_m);
    if (!most.known) return most;
    flows.push({ crew: station.crew, flow_m3PerS: most.flow_m3PerS ?? 0 });
  }
  const who = ({ id }: OxygenPart): readonly number[] =>
    flows
      .filter(({ crew }) => id === "descent" || crew === (id === "crew"))
      .map(({ flow_m3PerS }) => flow_m3PerS)
      .toSorted((a, b) => b - a);
  const volume_m3 = need.parts.reduce((sum, part) => {
    const largest = who(part).slice(0, part.persons_count);
    return sum + part.time_s * largest.reduce((total, flow) => total + flow, 0);
  }, 0);
  return { known: true, volume_m3 };
}

type Descent = Extract<Cabin, { pressurised: true }>["emergencyDescent"];

/** What everybody aboard takes from the loss of the cabin to the end of the book's emergency descent. */
export function needOfDescent(
  seats: readonly SeatInUse[],
  level_m: number,
  { rate_mPerS, to_m }: Descent,
): Amount {
  if (level_m <= to_m) return { known: true, volume_m3: 0 };
  let volume_m3 = 0;
  for (const { station, outlet } of seats) {
    if (outlet === undefined) return unknown(`an outlet at ${station.name}`);
    const supply = descentSupply(outlet.flows, {
      from_m: level_m,
      to_m,
      rate_mPerS,
      recognition_s: RECOGNITION_S,
    });
    if (supply.ok) volume_m3 += supply.supply_m3;
    else if (supply.why === "off-the-table")
      return unknown(
        `the flow of ${outlet.id} at ${feet(supply.asked_m)}; the nearest in the book is ${feet(supply.nearest_m)}`,
      );
    else return unknown(`flows and a descent that can be reckoned with, for ${outlet.id}`);
  }
  return { known: true, volume_m3 };
}

/** Free gas is at 21.1 °C (NTPD), the rule's at 0 °C (STPD). */
const NTPD_PER_STPD = 294.261 / 273.15;

/** Outlets by the level at which they were looked at; the same book is asked again and again. */
const known = new WeakMap<OxygenOutlet, Map<number, boolean>>();

/**
 * Whether an outlet gives, at each thousand feet of the descent, the least that holds the oxygen in the windpipe which
 * the airworthiness rule asks for.
 */
function holdsTarget(outlet: OxygenOutlet, crew: boolean, level_m: number, to_m: number): boolean {
  const before = known.get(outlet)?.get(level_m);
  if (before !== undefined) return before;
  const person = !crew
    ? "passenger"
    : outlet.mask === "diluter-demand"
      ? "crew-demand"
      : "crew-continuous-flow";
  const holds = everyThousandFeet_m(level_m, to_m).every((altitude_m) => {
    const found = trachealTarget(person, altitude_m);
    const flow = flowAt(outlet.flows, altitude_m);
    if (!found.ok || !flow.ok) return !found.ok && found.why === "below-the-bands";
    const least = leastAddedOxygenFlow.compute({
      targetPressure_Pa: found.target.oxygenPressure_Pa,
      minuteVolume_m3PerS: found.target.minuteVolume_m3PerS,
      ambientPressure_Pa: standardPressure.compute({ geopotentialAltitude_m: altitude_m }),
    });
    return flow.flow_m3PerS >= least * NTPD_PER_STPD;
  });
  const levels = known.get(outlet) ?? new Map<number, boolean>();
  known.set(outlet, levels.set(level_m, holds));
  return holds;
}

/** The seats whose outlet gives less than holds the oxygen that is asked for; none below 10,000 ft. */
export const tooThin = (seats: readonly SeatInUse[], level_m: number, to_m: number): readonly SeatInUse[] =>
  level_m <= to_m
    ? []
    : seats.filter(
        ({ outlet, station }) => outlet !== undefined && !holdsTarget(outlet, station.crew, level_m, to_m),
      );
