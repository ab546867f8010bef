import type { ReleaseRole } from "@witnessmark/ledger";
import type { CabinPoint } from "./cabin-profile.ts";
import type { Ceiling } from "./ceiling.ts";
import type { NightDefinitionId } from "./night.ts";
import type { EquipmentOf, FlightKind, ReliefInput, ReliefRuling } from "./relief.ts";
import type { RuledSteps } from "./ruled-steps.ts";
import type { Ruling } from "./ruling.ts";

/**
 * One authority's rules for a private flight, as data and small functions over plain numbers in SI.
 *
 * Every function is total: it answers for any input, and with one missing it says which. A third pack is one more
 * folder and one more line in `rule-packs.ts`.
 */
export interface RulePack {
  /** As a book or a flight names it: `us-part-91`. */
  readonly id: string;
  readonly title: string;
  /** Which night each of its rules means. */
  readonly nights: Readonly<Record<NightUse, NightDefinitionId>>;
  /** The span around the arrival in which a destination's weather is looked at. */
  readonly arrivalWindow: { readonly before_s: number; readonly after_s: number };
  /** Which breathing space is left at the end of the flight, and at which burn. */
  finalReserveTime(input: ReserveInput): Ruling<ReserveTime>;
  alternateNeeded(input: AlternateNeededInput): Ruling<{ readonly needed: boolean }>;
  alternateUsable(input: AlternateUsableInput): Ruling<AlternateUsable>;
  /** Who must use and have oxygen, and how much of it in person-time. */
  oxygen(input: OxygenInput): Ruling<OxygenNeed>;
  /** Visibility and distance from cloud in the air. */
  visualMinima(input: VisualMinimaInput): Ruling<VisualMinima>;
  /** Whether one may take off or land by sight at a field. */
  visualAtField(input: VisualAtFieldInput): Ruling<{ readonly permitted: boolean }>;
  takeOffWithDeposits(input: DepositsInput): Ruling<DepositsAnswer>;
  /** Whether a flight may be made with something that does not work, every step of it. */
  relief(input: ReliefInput): ReliefRuling;
  /**
   * Whether a release after something was put right is one that the rules know: by whom, on which authority. Absent
   * where the entry of who approved it for return to service says all that the rules ask.
   */
  release?(input: ReleaseInput): RuledSteps;
  /** What the rules ask for on a kind of flight, by the names that a book's equipment gives as `ruleItem`. */
  requiredEquipment(kind: FlightKind, of: EquipmentOf): readonly string[];
  /** What the rule adds to a distance; `none` for private flight, with the published advice beside it. */
  distanceFactor(): Ruling<{ readonly compulsory: false }>;
}

export interface ReleaseInput {
  readonly as?: ReleaseRole | undefined;
  /** Number of the licence or approval; left out where it was not said. */
  readonly authority?: string | undefined;
  readonly maxTakeOff_kg?: number | undefined;
  /** What was answered, by the name of the question; what is not there is not known. */
  readonly said: Readonly<Record<string, boolean | undefined>>;
}

export type NightUse = "fuel" | "visual-minima" | "lights" | "passenger-recency";

export type FlightRules = "VFR" | "IFR";

export interface ReserveInput {
  readonly flightRules?: FlightRules | undefined;
  /** Whether any of the flight is by night, by the definition of `nights.fuel`. */
  readonly night?: boolean | undefined;
  /** Takes off and lands at the same field and stays in sight of it. */
  readonly local?: boolean | undefined;
  /** Day of the flight, UTC, `2026-11-12`: which text of the rule applies. */
  readonly on?: string | undefined;
}

/** The burn that a reserve is reckoned at. */
export type ReserveBurn = "normal-cruise" | "holding" | "max-continuous-cruise";

export interface ReserveTime {
  readonly time_s: number;
  readonly burn: ReserveBurn;
}

export interface AlternateNeededInput {
  readonly flightRules?: FlightRules | undefined;
  readonly on?: string | undefined;
  /** The destination has a published instrument approach that can be flown. */
  readonly approach?: boolean | undefined;
  /** Lowest in the arrival window, above the field. */
  readonly ceiling_m?: Ceiling | undefined;
  readonly visibility_m?: number | undefined;
  /** Decision or minimum descent height of that approach, above the field. */
  readonly approachMinimum_m?: number | undefined;
  /** In the older European text: approach and landing can be made in visual conditions. */
  readonly visualConditions?: boolean | undefined;
}

export type ApproachKind = "precision" | "non-precision" | "none";

export interface AlternateUsableInput {
  readonly on?: string | undefined;
  readonly approach?: ApproachKind | undefined;
  /** At the time of arrival there (US), or lowest in the arrival window (Europe), above the field. */
  readonly ceiling_m?: Ceiling | undefined;
  readonly visibility_m?: number | undefined;
  /** Alternate minima printed for that field (US); they take the place of the standard ones. */
  readonly published?: PublishedMinima | "not-authorised" | undefined;
  /** Decision or minimum descent height, and the visibility that the approach asks (Europe). */
  readonly approachMinimum_m?: number | undefined;
  readonly approachVisibility_m?: number | undefined;
  /** With no approach: descent from the minimum en-route altitude, approach and landing can be made by sight (US). */
  readonly visualFromEnRoute?: boolean | undefined;
  /** With no approach: the least safe height under instrument rules, above the field (Europe). */
  readonly safeHeight_m?: number | undefined;
}

export interface PublishedMinima {
  readonly ceiling_m: number;
  readonly visibility_m: number;
}

export interface AlternateUsable {
  readonly usable: boolean;
  /** What was asked; absent where no figures are. */
  readonly asked?: PublishedMinima;
}

export interface OxygenInput {
  /** Cabin altitude over the flight as planned. */
  readonly cabin?: readonly CabinPoint[] | undefined;
  /** For a pressurised cabin: the same after it has let go at the worst place of the flight (Europe). */
  readonly afterLoss?: readonly CabinPoint[] | undefined;
  readonly pressurised?: boolean | undefined;
  /** Highest pressure altitude flown. */
  readonly highestLevel_m?: number | undefined;
  /** Flight crew that the type needs. */
  readonly crew_count?: number | undefined;
  /** Everybody else aboard. */
  readonly passengers_count?: number | undefined;
  readonly pilotsAtControls_count?: number | undefined;
  /** Every pilot's mask goes on with one hand within 5 s. */
  readonly quickDonningMasks?: boolean | undefined;
  /** Can get down safely to a pressure altitude of 13,000 ft within 4 minutes (Europe). */
  readonly downIn4Min?: boolean | undefined;
}

/** One reason for carrying oxygen: so many persons, each for so long. */
export interface OxygenPart {
  readonly id: "crew" | "passengers" | "descent";
  readonly persons_count: number;
  readonly time_s: number;
  readonly why: string;
}

export interface OxygenNeed {
  /** Each of the crew must use it for so long. */
  readonly crewUse_s: number;
  /** Each passenger must use it for so long. */
  readonly passengerUse_s: number;
  /** Everybody aboard must have it at hand for so long. */
  readonly everyoneProvided_s: number;
  readonly parts: readonly OxygenPart[];
  /** The sum of persons times time. */
  readonly personTime_s: number;
  /** One pilot at the controls must wear and use a mask. */
  readonly maskWorn: boolean;
}

export type AirspaceClass = "A" | "B" | "C" | "D" | "E" | "F" | "G";

export interface VisualMinimaInput {
  readonly airspace?: AirspaceClass | undefined;
  /** Above mean sea level. */
  readonly altitude_m?: number | undefined;
  /** Above the surface beneath. */
  readonly height_m?: number | undefined;
  /** By the definition of `nights["visual-minima"]`. */
  readonly night?: boolean | undefined;
  /** Europe: where it is below 10,000 ft, FL 100 takes that one's place. */
  readonly transitionAltitude_m?: number | undefined;
  readonly pressureAltitude_m?: number | undefined;
}

export type CloudDistance =
  | { readonly kind: "clear-of-cloud" }
  | {
      readonly kind: "distance";
      readonly below_m: number;
      readonly above_m: number;
      readonly horizontal_m: number;
    };

export type VisualMinima =
  | { readonly permitted: false }
  | {
      readonly permitted: true;
      readonly visibility_m: number;
      readonly cloud: CloudDistance;
      /** The surface must be kept in sight. */
      readonly surfaceInSight: boolean;
      /** Where the rule asks for a ceiling too. */
      readonly ceiling_m?: number;
    };

export interface VisualAtFieldInput {
  /** Class of the airspace at the surface of the field. */
  readonly airspace?: AirspaceClass | undefined;
  readonly night?: boolean | undefined;
  readonly ceiling_m?: Ceiling | undefined;
  readonly visibility_m?: number | undefined;
}

export type DepositPlace =
  | "propeller"
  | "windshield"
  | "stabilizing or control surface"
  | "powerplant installation"
  | "airspeed, altimeter, rate of climb or attitude instrument system"
  | "wing upper surface"
  | "wing lower surface at the tanks";

export interface DepositsInput {
  /** Where frost, ice or snow adheres; empty when somebody has looked and there is none. */
  readonly adheringTo?: readonly DepositPlace[] | undefined;
  /** The frost has been polished smooth. */
  readonly polished?: boolean | undefined;
  /** The flight manual or the authority allows frost beneath the wing at the tanks, as it is. */
  readonly underWingAllowed?: boolean | undefined;
}

export interface DepositsAnswer {
  readonly takeOff: "forbidden" | "not-hindered";
  /** A paragraph that binds this aeroplane says so, or a manual and a duty of care do. */
  readonly basis: "rule" | "guidance";
}
