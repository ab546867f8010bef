import { type Breach, breachesOf, type LimitName, placeLimit, sideName, wholeLimit } from "./breaches.ts";
import type { FitInput } from "./fit-input.ts";
import type { Added } from "./flight.ts";

/** One limit that, alone, stands in the way: without it there is an answer, and the answer passes it by so much. */
export interface Conflict {
  readonly limit: LimitName;
  /** The breaches of that answer: all of the one limit. */
  readonly breaches: readonly Breach[];
  readonly says: string;
}

/** Every limit of a load that can be taken away to see what happens. */
export function limitNames(input: FitInput, stations: readonly string[]): readonly LimitName[] {
  const { groups = [], envelopes, limits } = input;
  const places = input.stations.filter(({ id }) => stations.includes(id));
  const whole = (
    ["zero-fuel", "ramp", "take-off", "landing", "minimum-flight", "lateral", "imbalance"] as const
  )
    .filter((family) => {
      const given = {
        "zero-fuel": limits.zeroFuel_kg,
        ramp: limits.ramp_kg,
        "take-off": limits.takeOff_kg,
        landing: limits.landing_kg,
        "minimum-flight": limits.minimumFlight_kg,
        lateral: limits.lateralMoment_kgm,
        imbalance: limits.fuelImbalance_kg,
      }[family];
      return given !== undefined;
    })
    .map((family) => wholeLimit(family));
  return [
    ...places.map(({ id }) => placeLimit(input, "station", id)),
    ...places.filter(({ floor }) => floor !== undefined).map(({ id }) => placeLimit(input, "floor", id)),
    ...places.filter(({ holds }) => holds !== undefined).map(({ id }) => placeLimit(input, "holds", id)),
    ...groups
      .filter((group) => group.stations.some((id) => stations.includes(id)))
      .map(({ id }) => placeLimit(input, "group", id)),
    ...whole,
    ...envelopes.flatMap((envelope) =>
      (["forward", "aft", "envelope-top", "envelope-bottom"] as const).map((side) =>
        sideName(input, envelope, side),
      ),
    ),
  ];
}

/**
 * What an answer without a limit passes it by; undefined where the answer breaks others too, or none.
 *
 * @param input with all its limits, and with the answer in it
 */
export function conflictOf(limit: LimitName, input: FitInput, added?: Added): Conflict | undefined {
  const breaches = breachesOf(input, added);
  if (breaches.length === 0) return undefined;
  if (breaches.some(({ family, id }) => family !== limit.family || id !== limit.id)) return undefined;
  return {
    limit,
    breaches,
    says: `it would fit but for this: ${breaches.map(({ says }) => says).join("; ")}`,
  };
}
