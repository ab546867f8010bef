import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { Metres, Place } from "./text.ts";

/** [x, half width, top z, bottom z], metres; stations run aft. */
const Station = z.tuple([Metres, Metres.nonnegative(), Metres, Metres]);
/** [from, to] in metres, low end first. */
const Span = z.tuple([Metres, Metres]);
/** A point of a side outline: [x, z], metres. */
const SidePoint = z.tuple([Metres, Metres]);
const ChordFraction = z.number().min(0).max(1);

/** One end of a wing or tailplane half; y is measured from the centre line, always positive. */
const SurfaceEnd = z.strictObject({
  y: Metres.nonnegative(),
  leadingEdge: Metres,
  chord: Metres.positive(),
  z: Metres,
});

/** A movable surface on the trailing edge: from y to y, hinged at a fraction of the chord. */
const Hinged = z.strictObject({ from: Metres.nonnegative(), to: Metres.positive(), hinge: ChordFraction });

/** A brace from the fuselage to the wing, on the right; the left has its mirror image. */
const Strut = z.strictObject({
  foot: Place.describe("Where it leaves the fuselage, [x, y, z], metres."),
  head: Place.describe("Where it meets the wing, [x, y, z], metres."),
});

const Wing = z.strictObject({
  root: SurfaceEnd,
  kinks: z
    .array(SurfaceEnd)
    .optional()
    .describe("Where taper, sweep or rise change between root and tip, from the inside out."),
  tip: SurfaceEnd,
  tipRound: Metres.nonnegative().describe("How far the rounded tip reaches past the tip station, metres."),
  flap: Hinged.optional(),
  aileron: Hinged.optional(),
  boot: z
    .strictObject({ span: Span, joints: z.array(Metres) })
    .optional()
    .describe("Leading-edge ice protection: span, and the joints between its segments."),
  tank: Span.optional(),
  struts: z.array(Strut).optional(),
});

const Tailplane = z.strictObject({
  root: SurfaceEnd,
  tip: SurfaceEnd,
  tipRound: Metres.nonnegative(),
  elevator: ChordFraction.describe("Hinge line of the elevator as a fraction of the chord."),
  boot: z.boolean().optional(),
  trimTab: z.enum(["left", "right", "both"]).optional(),
});

const Fin = z.strictObject({
  span: Span.describe("Where the fin begins and ends in plan, metres aft."),
  outline: z.array(SidePoint).min(3),
  hinge: z.tuple([SidePoint, SidePoint]),
});

const Nacelle = z.strictObject({ y: Metres, stations: z.array(Station).min(2) });

const Propeller = z.strictObject({
  x: Metres,
  y: Metres,
  z: Metres.positive(),
  radius: Metres.positive(),
  spinner: z.boolean(),
  blades: z.int().min(2).max(6).optional().describe("Two when not given."),
});

const Wheel = z.strictObject({
  x: Metres,
  y: Metres,
  width: Metres.positive(),
  diameter: Metres.positive(),
  top: Metres.positive().describe("Where the leg meets the airframe, metres above the ground."),
  rake: Metres.optional().describe("How much further aft the top of the leg is than the wheel, metres."),
  topY: Metres.optional().describe(
    "y of the top of the leg, metres; when not given, above the wheel, or at the fuselage where nothing is above it.",
  ),
  cover: z
    .enum(["spat", "door"])
    .optional()
    .describe("A fairing round a wheel that stays out, or the door on the leg of one that goes up."),
});

const Window = z.strictObject({ x: Span, z: Span });

/** The shape of the aircraft in metres: x aft of the datum, y right, z up from the ground. It draws; it does not fly. */
export const Geometry = z.strictObject({
  fuselage: z.array(Station).min(3),
  wing: Wing,
  tailplane: Tailplane,
  fin: Fin.optional().describe("A V tail has none: its tailplane rises instead."),
  nacelles: z.array(Nacelle).default([]),
  propellers: z.array(Propeller).describe("One for each engine."),
  wheels: z.array(Wheel).min(1),
  frames: z
    .array(Metres)
    .default([])
    .describe("Where a frame or cowling joint crosses the fuselage, metres aft."),
  exhaust: Metres.optional().describe("Where exhaust stubs leave the cowling, metres aft."),
  windscreen: z
    .strictObject({ x: Span, halfWidth: Metres.positive(), side: z.array(SidePoint).optional() })
    .optional(),
  windows: z.array(Span).default([]).describe("Cabin windows as seen from above: their extent in x."),
  sideWindows: z.array(Window).default([]),
  door: z.strictObject({ x: Span, z: Span, side: z.enum(["left", "right"]) }).optional(),
  hatch: z
    .strictObject({ x: Span, halfWidth: Metres.positive() })
    .optional()
    .describe("Hatch on the fuselage top: extent in x and half its width."),
});
export type Geometry = DeepReadonly<z.infer<typeof Geometry>>;
