import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { WALK_KINDS } from "./kinds.ts";
import { Id, Line, Metres } from "./text.ts";

const OrderStep = z.union(
  [Id, z.strictObject({ check: Id, at: Id.optional() }), z.strictObject({ groundGear: Id })],
  { error: "the id of a stance, `{ check: … }`, `{ check: …, at: … }` or `{ groundGear: … }`" },
);
export type OrderStepSource = DeepReadonly<z.infer<typeof OrderStep>>;

/** The order of the approved manual: the walk follows it. */
export const OrderSource = z.strictObject({
  source: Line.describe("The manual, its edition, and where the order stands in it."),
  walks: z
    .array(z.enum(WALK_KINDS))
    .min(1)
    .default([...WALK_KINDS])
    .describe("The walks it holds for; all of them when left out."),
  steps: z
    .array(OrderStep)
    .min(1)
    .describe(
      "A stance stands for all that is done there and is not named by itself; what is not named at all is done at its stance.",
    ),
});
export type OrderSource = DeepReadonly<z.infer<typeof OrderSource>>;

export const HAZARD_KINDS = ["chock", "step", "inlet", "exhaust", "antenna"] as const;

/** What stands round the aircraft, or keeps one away from it, and is not in its shape. */
export const Hazard = z.strictObject({
  name: Line,
  kind: z
    .enum(HAZARD_KINDS)
    .describe("One walks round a chock or a step, and never stands before an inlet, an exhaust, an antenna."),
  place: z.tuple([Metres, Metres]).describe("[x, y], metres."),
  radius: Metres.positive().describe("How far it reaches, metres."),
});
export type Hazard = DeepReadonly<z.infer<typeof Hazard>>;
