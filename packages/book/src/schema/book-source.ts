import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { CabinSource } from "./cabin.ts";
import { CheckSource } from "./check.ts";
import { DrawnFrom } from "./drawn-from.ts";
import { FieldSource } from "./field.ts";
import { FuelSource } from "./fuel.ts";
import { Gauge } from "./gauge.ts";
import { Geometry } from "./geometry.ts";
import { IceProtection } from "./ice-protection.ts";
import { AIRCRAFT_CLASSES, ENGINES, GEARS } from "./kinds.ts";
import { LoadingSource } from "./loading.ts";
import { OxygenSource } from "./oxygen.ts";
import { PerformanceSource } from "./performance.ts";
import { Certification, EquipmentNeeds, Relief } from "./relief.ts";
import { Id, IsoDate, Line, Metres, Place, Side } from "./text.ts";
import { Counter, TimedItem } from "./timed-item.ts";
import { Hazard, OrderSource } from "./walk-order.ts";

/** Which aircraft this is. */
const Identity = z.strictObject({
  registration: z
    .string()
    .regex(/^[A-Z0-9]+(-[A-Z0-9]+)*$/, { error: "capital letters and figures, as painted on the aircraft" })
    .max(16, { error: "at most 16 characters" }),
  type: Line,
  description: Line.describe('What kind of aircraft it is: "pressurised single-engine turboprop".'),
  engine: z.enum(ENGINES).describe("`none` for a glider."),
  engines: z.int().min(0).max(4),
  gear: z.enum(GEARS),
  retractable: z.boolean(),
  class: z
    .enum(AIRCRAFT_CLASSES)
    .optional()
    .describe("As licences name it; left out, a land plane with as many engines."),
  carburettor: z
    .boolean()
    .optional()
    .describe("Whether a piston engine draws its air through a carburettor; left out, it may."),
  typeRating: Line.optional().describe("The type, where its pilot needs a rating for it."),
  seats: z.int().min(1).max(20),
  certification: Certification.optional(),
});

const Area = z.strictObject({ id: Id, name: Line });

const Point = z.strictObject({
  id: Id,
  name: Line.describe('Names its side where it has one: "Right main tyre".'),
  area: Id,
  label: Line.max(24, { error: "at most 24 characters" })
    .optional()
    .describe("What stands beside it on a drawing; left out, as short as its name allows."),
  side: Side,
  place: Place.describe("[x, y, z], metres."),
  stance: Id,
  mirrors: Id.optional().describe("The point on the other side whose mirror image this is."),
});

const Stance = z.strictObject({
  id: Id,
  name: Line,
  place: z.tuple([Metres, Metres]).describe("[x, y], metres."),
  facing: z.number().min(0).lt(360).describe("Where the toes point, degrees clockwise from the nose."),
  posture: z.enum(["stand", "crouch", "inside"]),
  inArc: Line.optional().describe(
    "Why one must stand where a propeller turns: only what can be done nowhere else is done there, with caution.",
  ),
});

const GroundGear = z.strictObject({
  id: Id,
  name: Line,
  count: z.int().min(1).max(20),
  point: Id,
  stance: Id.optional(),
  stowedIn: z.array(Line).min(1).describe("Where it may be put away; the first is what is usual."),
  why: Line,
});

const Equipment = z.strictObject({
  id: Id,
  name: Line,
  jasc: z.string().regex(/^\d{4}$/, { error: "four figures of the JASC table, in quotes" }),
  points: z.array(Id).default([]),
  ...EquipmentNeeds,
});

/**
 * A book as it is written in YAML. The order of `stances` is one in which the walk can be walked; it is walked in the
 * manual's where `order` gives it, else as it is planned.
 */
export const BookSource = z.strictObject({
  witnessmark: z.literal(1),
  revision: z.int().min(1),
  issued: z.strictObject({ on: IsoDate, by: Line }),
  notice: Line.describe("Shown wherever the book is used: what it is fit for."),
  aircraft: Identity,
  drawnFrom: DrawnFrom.optional().describe("The first figures, from which shape and points were made."),
  geometry: Geometry,
  gauges: z.array(Gauge),
  areas: z.array(Area).min(1),
  stances: z.array(Stance).min(1),
  points: z.array(Point).min(1),
  checks: z.array(CheckSource).min(1),
  groundGear: z.array(GroundGear).default([]),
  equipment: z.array(Equipment).default([]),
  order: OrderSource.optional(),
  last: z.array(Id).min(1).optional().describe("Stances at which one looks last, once all else is done."),
  hazards: z.array(Hazard).optional(),
  relief: Relief.optional(),
  counters: z.array(Counter).default([]),
  timedItems: z.array(TimedItem).default([]),
  loading: LoadingSource.optional(),
  fuel: FuelSource.optional(),
  oxygen: OxygenSource.optional(),
  cabin: CabinSource.optional(),
  performance: PerformanceSource.optional(),
  iceProtection: IceProtection.optional(),
  fields: z.array(FieldSource).min(1).optional(),
});
export type BookSource = DeepReadonly<z.infer<typeof BookSource>>;

export type Point = DeepReadonly<z.infer<typeof Point>>;
export type Stance = DeepReadonly<z.infer<typeof Stance>>;
export type Area = DeepReadonly<z.infer<typeof Area>>;
export type GroundGearItem = DeepReadonly<z.infer<typeof GroundGear>>;
export type Equipment = DeepReadonly<z.infer<typeof Equipment>>;
export type Identity = DeepReadonly<z.infer<typeof Identity>>;
