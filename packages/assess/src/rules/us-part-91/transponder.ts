import { holdsWhen } from "../relief.ts";
import type { AirspaceClass } from "../rule-pack.ts";
import { type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

export const TRANSPONDER_CITATIONS: Citations = [
  {
    title: "14 CFR 91.215 and 91.225: transponder, altitude reporting, position broadcast",
    edition: "2021 consolidation",
    status: "published",
  },
];

const FOOT_m = 0.3048;
/** At and above it, unless near the surface. @source 14 CFR 91.215(b)(5) */
const HIGH_m = 10_000 * FOOT_m;
/** At and below it above the surface none is asked for. */
const NEAR_SURFACE_m = 2500 * FOOT_m;
/** A conversion's, not an altimeter's. */
const ROUNDING_m = 1e-6;

export interface TransponderInput {
  readonly airspace?: AirspaceClass | undefined;
  /** Above mean sea level. */
  readonly altitude_m?: number | undefined;
  readonly terrain_m?: number | undefined;
  /** Within 30 NM of the airports that the rule lists, or above class B or C airspace; false where it is left out. */
  readonly nearListedAirspace?: boolean | undefined;
}

/** Whether a transponder with altitude reporting is asked for, in the 48 states. Undefined: not known. */
export function transponderRequired(input: TransponderInput): boolean | undefined {
  const { airspace, altitude_m, terrain_m, nearListedAirspace } = input;
  if (airspace === "A" || airspace === "B" || airspace === "C" || nearListedAirspace === true) return true;
  if (altitude_m === undefined) return undefined;
  if (altitude_m < HIGH_m - ROUNDING_m) return airspace === undefined ? undefined : false;
  if (terrain_m === undefined) return undefined;
  const high = altitude_m - terrain_m > NEAR_SURFACE_m + ROUNDING_m;
  return high ? true : airspace === undefined ? undefined : false;
}

/** How long before the flight leave is to be asked for, when there is none aboard. */
const BEFORE_MS = 3_600_000;

export interface DeviationInput {
  readonly state?: "does-not-work" | "not-installed" | undefined;
  readonly asked_ms?: number | undefined;
  readonly flight_ms?: number | undefined;
}

/** Whether leave to fly without is asked for in time: any time when it has failed, an hour before when there is none. */
export function deviationInTime({ state, asked_ms, flight_ms }: DeviationInput): RuledSteps {
  const inTime =
    state === "does-not-work"
      ? true
      : state === undefined || asked_ms === undefined || flight_ms === undefined
        ? undefined
        : flight_ms - asked_ms >= BEFORE_MS;
  return ruledSteps(
    [
      {
        rule: "91.215(d), 91.225(g)",
        words:
          "Air traffic control is asked: any time when it has failed, an hour before when none is installed",
        holds: holdsWhen(inTime, true),
      },
    ],
    TRANSPONDER_CITATIONS,
  );
}
