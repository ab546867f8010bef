import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { HAPPENING_KINDS, METHODS, WALK_KINDS } from "./kinds.ts";
import { ReadingSource } from "./reading.ts";
import { Id, Line, measureOf } from "./text.ts";

export const Method = z.enum(METHODS);
export type Method = z.infer<typeof Method>;

export const WalkKind = z.enum(WALK_KINDS);
export type WalkKind = z.infer<typeof WalkKind>;

export const HappeningKind = z.enum(HAPPENING_KINDS);
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
      of: Line.describe('What is measured: "length of the split".'),
      allowed: measureOf("length"),
      upTo: measureOf("length").describe("The far end of the rule that is drawn."),
    })
    .optional(),
});
export type Fault = DeepReadonly<z.infer<typeof FaultSource>>;

export const CheckSource = z.strictObject({
  id: Id,
  at: z
    .union([Id, z.array(Id).min(1)], { error: "the id of a point, or a list of ids" })
    .describe("One point, or several at which the same check is made: then one check for each, `id.point`."),
  from: Id.optional().describe("The stance it is made from, where that is not the point's own."),
  title: Line.describe('What to do, in the imperative: "Measure the pressure".'),
  method: Method,
  how: Line.optional().describe("How to look, touch, move … so that a miss shows."),
  shouldBe: Line.describe("What right looks like."),
  why: Line,
  faults: z.array(FaultSource).default([]),
  hazard: z.strictObject({ severity: Severity, ifMissed: Line }),
  evidence: z
    .enum(["look", "reading", "photo"])
    .default("look")
    .describe("Whether a look suffices, or a figure or a photo must be left."),
  walks: z.array(WalkKind).min(1),
  holds: z
    .strictObject({ until: z.array(HappeningKind), atMost: measureOf("time").optional() })
    .describe("When a look no longer counts."),
  after: z.array(Id).default([]).describe("Checks that must be done before this one."),
  reading: ReadingSource.optional(),
  since: z
    .int()
    .min(1)
    .optional()
    .describe(
      "The revision in which what is asked became another thing: a look from before it does not count any more.",
    ),
  least: measureOf("time").prefault("2 s").describe("The least time in which it can honestly be done."),
  oneSided: Line.optional().describe(
    'Why the other side has no such check, where the point has a mirror image: "the only drain is on the left".',
  ),
  /** A picture of what right looks like; it travels beside the book. */
  photo: z
    .string()
    .regex(/^[0-9a-f]{64}$/, {
      error: "the SHA-256 of a picture: 64 characters of 0-9 and a-f, as `witnessmark book pack` tells it",
    })
    .optional()
    .describe("SHA-256 of a picture of what right looks like, hexadecimal."),
  /** Four figures of the FAA JASC table. */
  jasc: z
    .string()
    .regex(/^\d{4}$/, { error: "four figures of the JASC table, in quotes" })
    .optional(),
});
export type CheckSource = DeepReadonly<z.infer<typeof CheckSource>>;
