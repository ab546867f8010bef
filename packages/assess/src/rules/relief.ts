import type { KindOfOperation } from "@witnessmark/book";
import type { Citations } from "./ruling.ts";

/** The four kinds that lists of required equipment know; a flight is one of them. */
export type FlightKind = Extract<KindOfOperation, "vfr-day" | "vfr-night" | "ifr-day" | "ifr-night">;
export const FLIGHT_KINDS: readonly FlightKind[] = ["vfr-day", "vfr-night", "ifr-day", "ifr-night"];

/** What of the aircraft decides which relief there is; what is left out is not known. */
export interface ReliefAircraft {
  readonly engine?: "piston" | "turboprop" | "none" | undefined;
  readonly maxTakeOff_kg?: number | undefined;
  /** Whether a master minimum equipment list was developed for the type. */
  readonly masterList?: boolean | undefined;
  /** Whether this operator has an approved (Europe: notified) list of their own. */
  readonly ownList?: boolean | undefined;
  readonly letterAboard?: boolean | undefined;
}

/** What of the aircraft and its flight decides what the list asks; left out is taken as so, which asks for more. */
export interface EquipmentOf {
  readonly oilPressureSystem?: boolean | undefined;
  readonly cooling?: "air" | "liquid" | undefined;
  /** A piston engine that keeps its rated power above sea level. */
  readonly altitudeEngine?: boolean | undefined;
  readonly retractable?: boolean | undefined;
  /** Small civil aeroplane certificated after 11 March 1996 under part 23. */
  readonly certifiedAfter1996?: boolean | undefined;
  readonly forHireOverWater?: boolean | undefined;
  readonly locatorRequired?: boolean | undefined;
  readonly usesFuses?: boolean | undefined;
  readonly forHire?: boolean | undefined;
  /** Local date. */
  readonly manufacturedOn?: string | undefined;
}

/** What of the thing that does not work decides it; what is left out is not known. */
export interface ReliefItem {
  readonly inOwnList?: boolean | undefined;
  /** Part of the type's certified equipment for visual flight by day. */
  readonly typeEquipment?: boolean | undefined;
  /** Asked by the type's equipment list or kinds-of-operations list, for the flight's kind. */
  readonly listed?: boolean | undefined;
  /** Asked by a rule of the air for the flight's kind. */
  readonly ruleRequires?: boolean | undefined;
  readonly directive?: boolean | undefined;
  /** Dangerous in itself, whatever the lists say. */
  readonly endangers?: boolean | undefined;
  /** Essential under the type's certification for every operation; nothing is asked of it where it is left out. */
  readonly essential?: boolean | undefined;
  /** More than one is installed, and those that still work are as many as a rule and the list ask for. */
  readonly restServes?: boolean | undefined;
  /** It is the emergency locator, which may be away for repair. */
  readonly locator?: boolean | undefined;
}

/** What was done about it, as the pilot or the mechanic says; what is left out was not asked yet. */
export interface ReliefSaid {
  readonly action?: "removed" | "deactivated" | "none" | undefined;
  readonly placard?: boolean | undefined;
  readonly deactivationIsMaintenance?: boolean | undefined;
  /** Written in the maintenance record. */
  readonly recorded?: boolean | undefined;
  readonly noHazardBy?: "pilot" | "mechanic" | "certifying-staff" | "owner" | "nobody" | undefined;
  /** A record of it is at hand for the pilot. */
  readonly recordAtHand?: boolean | undefined;
  /** Every proviso of the list is met, the kind of flight among them. */
  readonly provisosMet?: boolean | undefined;
  readonly permit?: boolean | undefined;
}

export interface ReliefInput {
  readonly aircraft: ReliefAircraft;
  readonly item: ReliefItem;
  readonly said: ReliefSaid;
}

/** One step of a rule: what it asks, and whether it holds. Unknown is never a permission. */
export interface RuledStep {
  /** `91.213(d)(2)(iii)` */
  readonly rule: string;
  /** What it asks, as a plain line that holds when the step holds. */
  readonly words: string;
  readonly holds: boolean | "unknown";
  /** The part of what is said that would answer it, when it is the pilot's to say. */
  readonly asks?: keyof ReliefSaid;
}

export interface ReliefRuling {
  /** `91.213(d)` */
  readonly path: string;
  /** Every step holds. */
  readonly allowed: boolean;
  readonly steps: readonly RuledStep[];
  /** The rules of the steps that do not hold. */
  readonly failing: readonly string[];
  readonly citations: Citations;
  readonly whoMayDetermine: readonly NonNullable<ReliefSaid["noHazardBy"]>[];
}

export function rulingOf(
  path: string,
  steps: readonly RuledStep[],
  citations: Citations,
  whoMayDetermine: ReliefRuling["whoMayDetermine"],
): ReliefRuling {
  return {
    path,
    allowed: steps.every(({ holds }) => holds === true),
    steps,
    failing: steps.flatMap(({ rule, holds }) => (holds === false ? [rule] : [])),
    citations,
    whoMayDetermine,
  };
}

/** A step that holds when a thing is so, or is not so. */
export const holdsWhen = (said: boolean | undefined, wanted: boolean): boolean | "unknown" =>
  said === undefined ? "unknown" : said === wanted;
