import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { COUNTER_OWNERS, KINDS_OF_OPERATION, TIMED_SUBJECTS } from "./kinds.ts";
import { Id, IsoDate, Line, measureOf } from "./text.ts";

const OneOrMore = z.int().min(1).max(10_000);

/** What counts up while the aircraft, a part of it or its pilot is used. */
export const Counter = z.strictObject({
  id: Id,
  name: Line,
  of: z.enum(COUNTER_OWNERS),
  unit: z.enum(["h", "1"]).describe("Hours, or a plain number: landings, starts, cycles."),
  proxyFor: Line.optional().describe(
    "What it stands for, where it is not the thing itself: a meter for time in service.",
  ),
});

const TimedLimit = z.discriminatedUnion("by", [
  z
    .strictObject({ by: z.literal("calendar-months"), months: OneOrMore })
    .describe("To the last day of the so-many-th month after the one it was done in."),
  z.strictObject({ by: z.literal("months"), months: OneOrMore }).describe("Date to date."),
  z.strictObject({ by: z.literal("days"), days: OneOrMore }),
  z.strictObject({ by: z.literal("date"), on: IsoDate }).describe("The last day on which it is good."),
  z
    .strictObject({ by: z.literal("counter"), counter: Id, every: z.number().gt(0).max(1_000_000) })
    .describe("So many hours, landings or cycles after it was done, in the unit of the counter."),
  z.strictObject({ by: z.literal("data-cycle") }).describe("The 28-day cycle of aeronautical data."),
  z
    .strictObject({ by: z.literal("printed") })
    .describe("Until the day that is printed on the paper itself, written down each time it is renewed."),
]);

const Tolerance = z.strictObject({
  hours: measureOf("time").optional(),
  days: OneOrMore.optional(),
  months: OneOrMore.optional(),
  countsFrom: z.enum(["due", "done"]).describe("Where the next interval begins when the tolerance was used."),
  rule: Line,
  onlyWhen: Line.optional().describe("What it may be used for: to reach a place where the work can be done."),
});

/** What runs out: by date, hours, landings or cycles. */
export const TimedItem = z.strictObject({
  id: Id,
  name: Line,
  about: z.enum(TIMED_SUBJECTS),
  component: Id.optional().describe("The piece of equipment that it belongs to, and moves with."),
  rule: Line.optional().describe("The rule, or the section of the manual, that asks for it."),
  limits: z.array(TimedLimit).min(1).max(6),
  combine: z
    .enum(["first", "later"])
    .default("first")
    .describe("Whichever comes first, or whichever comes later."),
  tolerance: Tolerance.optional(),
  recurring: z.boolean().default(true),
  endsLife: z.boolean().default(false).describe("The end of a life: nothing extends it."),
  neededFor: z
    .array(z.enum(KINDS_OF_OPERATION))
    .min(1)
    .optional()
    .describe("The kinds of flight that it is needed for; every flight when left out."),
  atLeast: OneOrMore.optional().describe(
    "For a pilot's recency: how many are asked within the days of the limit.",
  ),
  counts: z
    .enum(["landings", "night-landings", "tailwheel-landings", "approaches"])
    .optional()
    .describe("For a pilot's recency: what is counted."),
  instead: Line.optional().describe("What may be done without it."),
  why: Line,
  warn: z.strictObject({ days: OneOrMore.optional(), hours: measureOf("time").optional() }).optional(),
});

export type Counter = DeepReadonly<z.infer<typeof Counter>>;
export type TimedItem = DeepReadonly<z.infer<typeof TimedItem>>;
export type TimedLimit = TimedItem["limits"][number];
