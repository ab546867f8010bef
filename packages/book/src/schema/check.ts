import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { ReadingSource } from "./reading.ts";
import { Id, Line, measureOf } from "./text.ts";

export const Method = z.enum(["look", "touch", "move", "measure", "count", "drain", "listen"]);
export type Method = z.infer<typeof Method>;

export const WalkKind = z.enum(["first-of-day", "turnaround", "after-flight"]);
export type WalkKind = z.infer<typeof WalkKind>;

/** What can happen to an aircraft that makes earlier looks untrue. */
export const HappeningKind = z.enum([
  "fuelled",
  "unattended",
  "rain",
  "frost",
  "maintenance",
  "flown",
  "towed",
  "loaded",
]);
export type HappeningKind = z.infer<typeof HappeningKind>;

/** How bad it is to miss: drives order within a stance, never a verdict. */
export const Severity = z.enum(["high", "medium", "low"]);

/** A way in which this is typically not right, offered in one tap. */
export const FaultSource = z.strictObject({
  id: Id,
  name: Line,
  /** A size to give with it; the book may allow some. */
  measure: z
    .strictObject({
      /** What is measured: "length of the split". */
      of: Line,
      allowed: measureOf("length"),
      /** The far end of the rule that is drawn. */
      upTo: measureOf("length"),
    })
    .optional(),
});
export type Fault = DeepReadonly<z.infer<typeof FaultSource>>;

export const CheckSource = z.strictObject({
  id: Id,
  /** One point, or several at which the same check is made: then one check for each, `id.point`. */
  at: z.union([Id, z.array(Id).min(1)], { error: "the id of a point, or a list of ids" }),
  /** The stance it is made from, where that is not the point's own. */
  from: Id.optional(),
  /** What to do, in the imperative: "Measure the pressure". */
  title: Line,
  method: Method,
  /** How to look, touch, move … so that a miss shows. */
  how: Line.optional(),
  /** What right looks like. */
  shouldBe: Line,
  why: Line,
  faults: z.array(FaultSource).default([]),
  hazard: z.strictObject({ severity: Severity, ifMissed: Line }),
  /** Whether a look suffices, or a figure or a photo must be left. */
  evidence: z.enum(["look", "reading", "photo"]).default("look"),
  walks: z.array(WalkKind).min(1),
  /** When a look no longer counts. */
  holds: z.strictObject({ until: z.array(HappeningKind), atMost: measureOf("time").optional() }),
  /** Checks that must be done before this one. */
  after: z.array(Id).default([]),
  reading: ReadingSource.optional(),
  /** The least time in which it can honestly be done. */
  least: measureOf("time").default({ value: 2, unit: "s", valueSI: 2 }),
  /** Why the other side has no such check, where the point has a mirror image: "the only drain is on the left". */
  oneSided: Line.optional(),
  /** Four figures of the FAA JASC table. */
  jasc: z
    .string()
    .regex(/^\d{4}$/, { error: "four figures of the JASC table, in quotes" })
    .optional(),
});
export type CheckSource = DeepReadonly<z.infer<typeof CheckSource>>;
