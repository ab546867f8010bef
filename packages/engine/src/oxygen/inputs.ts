import { AMBIENT_PRESSURE_Pa } from "../gas/inputs.ts";
import { WATER_AT_BODY_PA } from "../gas/reference-states.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";

/** What the quantities of this folder have in common. Pressures are those of the cabin, never of the air outside it. */

export const CABIN_PRESSURE_Pa = {
  ...AMBIENT_PRESSURE_Pa,
  meaning: "pressure in the cabin, from the cabin altitude",
} as const;

/** The share of oxygen in dry air. Sources also print 0.209, 0.2093 and 0.21. */
export const AIR_OXYGEN_1 = 0.2095;

export const OXYGEN_FRACTION_1 = {
  name: "oxygenFraction_1",
  unit: "1",
  range: [0.1, 1],
  meaning: "share of oxygen in what is breathed, dry; 0.2095 for air",
} as const;

export const MINUTE_VOLUME_m3PerS = {
  name: "minuteVolume_m3PerS",
  unit: "m3PerS",
  range: [1e-5, 2e-3],
  meaning: "volume breathed in a time, at body temperature, saturated (BTPS)",
} as const;

export const PERSONS_count = {
  name: "persons_count",
  unit: "count",
  range: [0, 30],
  meaning: "persons on oxygen",
} as const;

/** Flows of one person or of all, in free oxygen. */
export const FLOW_RANGE_m3PerS = [0, 5e-3] as const;

export const TIME_s = {
  name: "time_s",
  unit: "s",
  range: [0, 86_400],
  meaning: "time for which oxygen is breathed",
} as const;

/**
 * What is left of the pressure once the windpipe has added its water vapour.
 *
 * @throws {InputError} `out-of-range` where the vapour alone would be more than the air (above some 19 km)
 */
export function dryPressure_Pa(quantity: string, ambientPressure_Pa: number): number {
  const dry_Pa = ambientPressure_Pa - WATER_AT_BODY_PA;
  refuseDerived(quantity, "dryPressure_Pa", dry_Pa, "Pa", [0, AMBIENT_PRESSURE_Pa.range[1]]);
  return dry_Pa;
}

export const TRACHEAL_EQUATION: QuantitySource = {
  title: "Applied Biofluid Mechanics",
  locator: "sections 3.9.2 and 3.9.3: partial pressures in the windpipe, 47 mmHg of water vapour at 37 °C",
  status: "published",
};

/** Read in the European text; the United States text has the same figures. */
export const LEAST_FLOW_RULE: QuantitySource = {
  title: "CS 25.1443 and 14 CFR 25.1443: minimum mass flow of supplemental oxygen",
  edition: "ED Decision 2003/2/RM",
  locator: "(a), (b), (c)",
  status: "published",
};
