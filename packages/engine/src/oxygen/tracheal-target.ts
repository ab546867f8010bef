import type { QuantitySource } from "../registry/quantity.ts";
import { toSI } from "../units/convert.ts";
import { LEAST_FLOW_RULE } from "./inputs.ts";

/** Who breathes, and by what: crew on continuous flow or on demand masks, passengers on continuous flow. */
export type TrachealTargetFor = "crew-continuous-flow" | "crew-demand" | "passenger";

/** What the airworthiness rule wants held in the windpipe, and the breathing it reckons with. */
export interface TrachealTarget {
  readonly for: TrachealTargetFor;
  /** The band of cabin altitudes: above the first, up to and including the second. */
  readonly above_m: number;
  readonly upTo_m: number;
  readonly oxygenPressure_Pa: number;
  readonly minuteVolume_m3PerS: number;
  /** Air at about this altitude gives the same pressure in the windpipe. */
  readonly likeAirAt_m: number;
  readonly source: QuantitySource;
}

const target = (
  person: TrachealTargetFor,
  above_ft: number,
  upTo_ft: number,
  pressure_mmHg: number,
  minuteVolume_LPerMin: number,
  likeAirAt_ft: number,
): TrachealTarget => ({
  for: person,
  above_m: toSI(above_ft, "ft"),
  upTo_m: toSI(upTo_ft, "ft"),
  oxygenPressure_Pa: toSI(pressure_mmHg, "mmHg"),
  minuteVolume_m3PerS: toSI(minuteVolume_LPerMin, "LPerMin"),
  likeAirAt_m: toSI(likeAirAt_ft, "ft"),
  source: LEAST_FLOW_RULE,
});

/** Below its first band a person is not reckoned to need any; the crew's bands begin at sea level to be on the safe side. */
export const TRACHEAL_TARGETS: readonly TrachealTarget[] = [
  target("crew-continuous-flow", 0, 40_000, 149, 15, 0),
  target("crew-demand", 0, 35_000, 122, 20, 5000),
  target("passenger", 10_000, 18_500, 100, 15, 10_000),
  target("passenger", 18_500, 40_000, 83.8, 30, 14_000),
];

export type TrachealTargetFound =
  | { readonly ok: true; readonly target: TrachealTarget }
  | { readonly ok: false; readonly why: "below-the-bands" | "above-the-bands" | "not-a-number" };

/**
 * The target of 14 CFR 25.1443 (and the older 23.1443) for a person at a cabin altitude.
 *
 * Above 35,000 ft the rule asks 95 % oxygen of a demand mask instead of a pressure: that is above the bands here.
 *
 * @param cabinAltitude_m pressure altitude of the cabin
 */
export function trachealTarget(person: TrachealTargetFor, cabinAltitude_m: number): TrachealTargetFound {
  if (!Number.isFinite(cabinAltitude_m)) return { ok: false, why: "not-a-number" };
  const bands = TRACHEAL_TARGETS.filter((band) => band.for === person);
  const found = bands.find(({ above_m, upTo_m }) => cabinAltitude_m > above_m && cabinAltitude_m <= upTo_m);
  if (found !== undefined) return { ok: true, target: found };
  const below = bands.every(({ above_m }) => cabinAltitude_m <= above_m);
  return { ok: false, why: below ? "below-the-bands" : "above-the-bands" };
}
