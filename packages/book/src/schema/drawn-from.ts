import { z } from "zod";
import { ENGINES, GEARS } from "./kinds.ts";
import { Metres } from "./text.ts";

/** Where the wing meets the fuselage. */
export const WINGS = ["high", "mid", "low"] as const;
/** How the tail is put together. */
export const TAILS = ["conventional", "t", "v"] as const;

/**
 * The few figures that shape and points were made from. With them the drawing can be made anew from other figures, and
 * what was changed by hand is known from what was not. Nothing is judged by them.
 */
export const DrawnFrom = z.strictObject({
  span: Metres.positive().describe("Wing tip to wing tip, metres."),
  length: Metres.positive().describe("Foremost to aftmost part, metres."),
  height: Metres.positive().optional().describe("Ground to the highest part as it stands, metres."),
  datum: Metres.min(-10)
    .max(10)
    .optional()
    .describe("How far aft of the foremost part the datum is, metres; 0 where nothing is said."),
  wing: z.enum(WINGS),
  tail: z.enum(TAILS),
  gear: z.enum(GEARS),
  retractable: z.boolean(),
  engine: z.enum(ENGINES),
  engines: z.int().min(0).max(2),
  seats: z.int().min(1).max(20),
  pressurised: z.boolean(),
  tows: z.boolean(),
});
export type DrawnFrom = z.infer<typeof DrawnFrom>;
