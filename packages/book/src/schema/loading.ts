import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { Id, IsoDate, Line, limitOf, measureOf, Place, Side } from "./text.ts";

/** One weighing or change of the empty aircraft. */
const EmptyRevision = z.strictObject({
  on: IsoDate,
  by: Line.optional(),
  mass: measureOf("mass"),
  arm: measureOf("length"),
  lateralArm: measureOf("length").optional(),
  why: Line,
});

const Empty = z.strictObject({
  weighedOn: IsoDate,
  by: Line.optional(),
  mass: measureOf("mass").describe(
    "As weighed: with oil, fitted equipment and the fuel that cannot be used; the rest of the fuel counts in its tank.",
  ),
  arm: measureOf("length").describe("Aft of the datum."),
  lateralArm: measureOf("length").optional().describe("To the right of the centre line."),
  revisions: z
    .array(EmptyRevision)
    .default([])
    .describe("Later changes, oldest first; the last is in force."),
});

const Station = z.strictObject({
  id: Id,
  name: Line,
  kind: z.enum(["seat", "bay"]),
  side: Side,
  arm: measureOf("length").describe("Where what lies here acts, aft of the datum."),
  lateralArm: measureOf("length").optional().describe("To the right; the y of `place` when absent."),
  max: limitOf("mass").describe('What it bears; "none given" for a seat of which the manual gives no limit.'),
  floor: z
    .strictObject({ area: measureOf("area"), maxPerSquareMetre: measureOf("mass") })
    .optional()
    .describe("What the floor bears, where it is less than `max` for a small load."),
  place: Place.describe("[x, y, z], metres: where it is drawn."),
  point: Id.optional().describe("The point of the walk at which it is looked at."),
  crew: z.boolean().default(false).describe("A seat from which the aircraft is flown."),
});

const TankArm = z.strictObject({ volume: measureOf("volume"), arm: measureOf("length") });

const Tank = z.strictObject({
  id: Id,
  name: Line,
  side: Side,
  capacity: measureOf("volume").describe("All it holds, with what cannot be used."),
  unusable: measureOf("volume"),
  arms: z
    .array(TankArm)
    .min(2)
    .describe("The arm of all that is in the tank, from empty to full; straight between two rows."),
  lateralArm: measureOf("length")
    .optional()
    .describe("To the right of the centre line; the y of `place` when absent."),
  gauge: Id.optional().describe("The gauge that shows its contents."),
  readAt: z.array(Id).default([]).describe("Points whose readings tell its contents: gauge, filler."),
  place: Place.describe("[x, y, z], metres: where it is drawn."),
});

const Limits = z.strictObject({
  ramp: measureOf("mass").optional(),
  takeOff: measureOf("mass"),
  zeroFuel: measureOf("mass").optional(),
  landing: measureOf("mass").optional(),
  minimumFlight: measureOf("mass").optional(),
  lateralMoment: measureOf("mass-moment").optional(),
  fuelImbalance: measureOf("mass").optional(),
});

const EnvelopePoint = z.strictObject({ arm: measureOf("length"), mass: measureOf("mass") });

/** Where mass may lie in the aircraft, and what the whole may weigh. */
export const LoadingSource = z.strictObject({
  datum: Line.describe("Where x = 0 is, in words: the book's own datum."),
  mac: z
    .strictObject({ leadingEdge: measureOf("length"), length: measureOf("length") })
    .optional()
    .describe("Mean aerodynamic chord."),
  empty: Empty,
  stations: z.array(Station).min(1),
  tanks: z.array(Tank).default([]).describe("None where there is no engine."),
  limits: Limits,
  groups: z
    .array(z.strictObject({ id: Id, name: Line, stations: z.array(Id).min(2), max: measureOf("mass") }))
    .default([])
    .describe("Stations that share one limit."),
  envelopes: z
    .array(
      z.strictObject({
        id: Id,
        name: Line,
        points: z.array(EnvelopePoint).describe("Corners, one after the other round the edge."),
      }),
    )
    .min(1)
    .describe("The first is in force unless another is chosen."),
  gearMoment: measureOf("mass-moment").optional().describe("Added when the gear comes up; aft is plus."),
});
export type LoadingSource = DeepReadonly<z.infer<typeof LoadingSource>>;

export interface EmptyMass {
  readonly on: string;
  readonly by?: string;
  readonly mass_kg: number;
  readonly arm_m: number;
  readonly lateralArm_m?: number;
  readonly why: string;
}

export interface Station {
  readonly id: string;
  readonly name: string;
  readonly kind: "seat" | "bay";
  readonly side: Side;
  readonly arm_m: number;
  /** To the right of the centre line. */
  readonly lateralArm_m: number;
  /** Absent where the book says that the manual gives none. */
  readonly max_kg?: number;
  readonly floor?: { readonly area_m2: number; readonly max_kgPerM2: number };
  readonly place: readonly [x_m: number, y_m: number, z_m: number];
  readonly point?: string;
  readonly crew: boolean;
}

export interface Tank {
  readonly id: string;
  readonly name: string;
  readonly side: Side;
  readonly capacity_m3: number;
  readonly unusable_m3: number;
  /** Arm of all that is in the tank, by volume ascending: first 0, last the capacity; straight between two rows. */
  readonly arms: readonly { readonly volume_m3: number; readonly arm_m: number }[];
  readonly lateralArm_m: number;
  readonly gauge?: string;
  /** Points whose readings tell its contents. */
  readonly readAt: readonly string[];
  readonly place: readonly [x_m: number, y_m: number, z_m: number];
}

export interface LoadEnvelope {
  readonly id: string;
  readonly name: string;
  /** Corners of a closed polygon that does not cross itself, either way round. */
  readonly points: readonly { readonly arm_m: number; readonly mass_kg: number }[];
}

export interface LoadLimits {
  readonly ramp_kg?: number;
  readonly takeOff_kg: number;
  readonly zeroFuel_kg?: number;
  readonly landing_kg?: number;
  readonly minimumFlight_kg?: number;
  readonly lateralMoment_kgm?: number;
  readonly fuelImbalance_kg?: number;
}

export interface StationGroup {
  readonly id: string;
  readonly name: string;
  readonly stations: readonly string[];
  readonly max_kg: number;
}

/** Where mass may lie and what the whole may weigh, in SI. */
export interface Loading {
  readonly datum: string;
  readonly mac?: { readonly leadingEdge_m: number; readonly length_m: number };
  readonly empty: {
    readonly weighedOn: string;
    readonly by?: string;
    /** With the fuel that cannot be used; the rest counts in its tank. */
    readonly mass_kg: number;
    readonly arm_m: number;
    readonly lateralArm_m?: number;
    /** Oldest first; the last is in force. */
    readonly revisions: readonly EmptyMass[];
  };
  readonly stations: readonly Station[];
  readonly tanks: readonly Tank[];
  readonly limits: LoadLimits;
  readonly groups: readonly StationGroup[];
  /** The first is in force unless another is chosen. */
  readonly envelopes: readonly LoadEnvelope[];
  readonly gearMoment_kgm?: number;
}
