import type { MassAndArm, TankFuel } from "@witnessmark/engine";

/** A seat or a bay. */
export interface FitStation {
  readonly id: string;
  readonly name: string;
  readonly arm_m: number;
  /** To the right of the centre line; 0 where it is left out. */
  readonly lateralArm_m?: number;
  readonly max_kg: number;
  readonly floor?: { readonly area_m2: number; readonly max_kgPerM2: number };
  /** How many items it takes at most, 1 for a seat; any number where it is left out. */
  readonly holds?: number;
}

/** Stations that share one limit. */
export interface FitGroup {
  readonly id: string;
  readonly name: string;
  readonly stations: readonly string[];
  readonly max_kg: number;
}

/** A tank, with what is in it now. */
export interface FitTank extends TankFuel {
  readonly name: string;
}

/** What the whole aircraft may weigh, and how uneven it may be. */
export interface FitLimits {
  readonly ramp_kg?: number;
  readonly takeOff_kg: number;
  readonly zeroFuel_kg?: number;
  /** At landing, with the reserves aboard. */
  readonly landing_kg?: number;
  /** At landing, with the reserves aboard. */
  readonly minimumFlight_kg?: number;
  /** Either way. */
  readonly lateralMoment_kgm?: number;
  /** Right less left, either way. */
  readonly fuelImbalance_kg?: number;
}

/** A closed polygon that does not cross itself, with its corners in order. */
export interface FitEnvelope {
  readonly id: string;
  readonly name: string;
  readonly points: readonly MassAndArm[];
}

/** A person, a bag, or anything else aboard. */
export interface FitItem {
  readonly id: string;
  readonly name: string;
  readonly mass_kg: number;
  /** The station where it is. */
  readonly at: string;
  /** Stations to which it may go, besides the one where it is; left out for what stays: the pilot. */
  readonly mayGo?: readonly string[];
  /** Whether it may be left behind, as a last resort. */
  readonly mayStay?: boolean;
}

/** One load and one flight, in plain numbers. */
export interface FitInput {
  /** With unusable fuel. */
  readonly empty: { readonly mass_kg: number; readonly arm_m: number; readonly lateralArm_m?: number };
  readonly stations: readonly FitStation[];
  readonly groups?: readonly FitGroup[];
  readonly tanks: readonly FitTank[];
  readonly density_kgPerM3: number;
  /** Tanks in the order in which they are burnt; those in one list are drawn at one rate until each is dry. */
  readonly order: readonly (readonly string[])[];
  /** The reserve is aboard at landing. */
  readonly burn: { readonly taxi_kg: number; readonly trip_kg: number; readonly reserve_kg?: number };
  readonly limits: FitLimits;
  /** All those in force at once: commonly one. */
  readonly envelopes: readonly FitEnvelope[];
  /** Added when the gear comes up; the flight is held to its limits with it and without it. */
  readonly gearMoment_kgm?: number;
  readonly items: readonly FitItem[];
  /** What answers are rounded to, on the safe side; 0.1 kg and 0.1 litre where they are left out. */
  readonly steps?: { readonly mass_kg?: number; readonly volume_m3?: number };
}

export const massStep_kg = ({ steps }: FitInput): number => steps?.mass_kg ?? 0.1;
export const volumeStep_m3 = ({ steps }: FitInput): number => steps?.volume_m3 ?? 1e-4;

export const lateralOf = (station: FitStation): number => station.lateralArm_m ?? 0;

/** Stations where an item may be, the one where it is first. */
export const placesOf = ({ at, mayGo = [] }: FitItem): readonly string[] => [...new Set([at, ...mayGo])];
