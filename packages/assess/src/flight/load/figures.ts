import type { MassAndArm, MassKnowledge } from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import type { InputFault, InputPlace, Limited, MissingPart } from "../figures.ts";

/** The moments of a flight at which the loaded aircraft is looked at. */
export type LoadMoment = "zero-fuel" | "ramp" | "take-off" | "landing" | "alternate";

/** How far from the edges of the envelope; undefined where it has none at this mass or this arm. */
export interface EdgeMargins {
  readonly forward_m: number | undefined;
  readonly aft_m: number | undefined;
  readonly upper_kg: number | undefined;
  readonly lower_kg: number | undefined;
}

export interface NearestEdge {
  readonly edge: "forward" | "aft";
  /** What is left to it; below zero when past it. */
  readonly left_m: number;
}

/** One line of the sum that a mass and its arm come from. */
export interface LoadPart {
  /** "Surgeon, Seat 2, right front" */
  readonly what: string;
  readonly mass_kg: number;
  /** Undefined for what has no mass: a gear that comes up. */
  readonly arm_m: number | undefined;
  readonly moment_kgm: number;
}

/** The loaded aircraft at one moment. */
export interface LoadState {
  readonly at: LoadMoment;
  readonly mass_kg: number;
  readonly arm_m: number;
  /** Share of the mean aerodynamic chord, where the book has one. */
  readonly mac_1?: number;
  /** Usable fuel aboard. */
  readonly fuel_kg: number;
  /** The mass limit at this moment, and what is left to it; absent where the book has no such limit. */
  readonly mass?: Limited;
  /** Arms that the envelope allows at this mass; absent where it allows none. */
  readonly armRange_m?: readonly [forward_m: number, aft_m: number];
  readonly inEnvelope: boolean;
  readonly nearest?: NearestEdge;
  /** The probability that the edges ahead and behind are kept. */
  readonly chance_1: number;
  /** What the place among the edges is worth by itself; the edges do not hold on the ramp yet. */
  readonly edges: Status;
  readonly status: Status;
  /** What it is the sum of; added up when somebody asks. */
  readonly parts: readonly LoadPart[];
}

/** One point of the burn, for drawing. */
export interface PathPoint extends MassAndArm {
  readonly burnt_kg: number;
}

/** Where in the flight the centre of gravity is nearest to an edge, or furthest past it. */
export interface WorstPoint extends PathPoint {
  readonly edge: "forward" | "aft" | "upper" | "lower";
  /** What is left, metres for forward and aft, kilograms for upper and lower; below zero when past it. */
  readonly left: number;
  /** The moment that it falls on; absent between two. */
  readonly at?: LoadMoment;
  /** With the gear up, where that moves the centre of gravity. */
  readonly gearUp: boolean;
  readonly status: Status;
  /** What it is the sum of; added up when somebody asks. */
  readonly parts: readonly LoadPart[];
}

export interface EnvelopeFigures {
  readonly id: string;
  readonly name: string;
  readonly points: readonly MassAndArm[];
  /** Take-off to landing, at the alternate where one is planned, all of it inside; undefined where it cannot be told. */
  readonly inside: boolean | undefined;
  /** From there until the tanks are dry. */
  readonly insideUntilDry: boolean | undefined;
  /** Where it is nearest to an edge, or furthest past one; looked for when somebody asks. */
  readonly worst: WorstPoint | undefined;
  readonly chance_1?: number;
  readonly status: Status;
}

export interface StationFigures {
  readonly id: string;
  readonly name: string;
  readonly kind: "seat" | "bay";
  readonly mass_kg: number;
  readonly items: readonly string[];
  /** Against the station's own limit; absent where the manual gives none. */
  readonly limit?: Limited;
  /** Against what its floor bears. */
  readonly floor?: Limited;
  readonly status: Status;
}

export interface GroupFigures {
  readonly id: string;
  readonly name: string;
  readonly stations: readonly string[];
  readonly limit: Limited;
}

export interface TankFigures {
  readonly id: string;
  readonly name: string;
  readonly side: "left" | "right" | "centre";
  /** All that is said to be in it; undefined where nothing sound was said. */
  readonly volume_m3: number | undefined;
  readonly mass_kg: number | undefined;
  readonly capacity_m3: number;
  readonly unusable_m3: number;
  /** When the flight lands. */
  readonly atLanding_m3: number | undefined;
}

/** How well one mass is known. */
export interface Knowledge {
  readonly item: string;
  readonly known: MassKnowledge;
  readonly bias_kg: number;
  readonly standardUncertainty_kg: number;
}

/** Everything that a screen of the load shows, worked out from the book and the plan alone. */
export interface LoadFigures {
  readonly status: Status;
  /** The empty aircraft in force. */
  readonly empty?: {
    readonly mass_kg: number;
    readonly arm_m: number;
    readonly on: string;
    readonly by: string;
  };
  /** In the order of the flight, zero fuel first; those that can be worked out. */
  readonly states: readonly LoadState[];
  readonly envelope?: EnvelopeFigures;
  /** From start-up until the tanks are dry: at every corner of a tank's table and every moment of the flight. */
  readonly path: readonly PathPoint[];
  readonly stations: readonly StationFigures[];
  readonly groups: readonly GroupFigures[];
  readonly tanks: readonly TankFigures[];
  readonly fuel: {
    readonly density_kgPerM3: number | undefined;
    /** Whether the temperature of the fuel was given. */
    readonly measured: boolean;
    readonly usable_kg: number | undefined;
    readonly taxi_kg: number | undefined;
    readonly trip_kg: number | undefined;
  };
  /** The lightest that it flies against the least that it may. */
  readonly minimum?: Limited;
  /** The greatest, to either side, from start-up to landing. */
  readonly lateral?: Limited;
  readonly imbalance?: Limited;
  readonly knowledge: readonly Knowledge[];
  /** What cannot be, each at its place. */
  readonly faults: readonly InputFault[];
  /** What is not there. */
  readonly missing: readonly MissingPart[];
  /** Whether everything aboard is known, so that a total is the total. */
  readonly complete: boolean;
}

/** The faults of one item, tank or station. */
export const faultsAt = (
  { faults }: Pick<LoadFigures, "faults">,
  kind: InputPlace["kind"],
  id: string,
): readonly InputFault[] => faults.filter(({ where }) => where.kind === kind && where.id === id);
