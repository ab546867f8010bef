import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { measureOf } from "./text.ts";

/** An unpressurised cabin is written as such: what is not written is not known. */
export const CabinSource = z.discriminatedUnion("pressurised", [
  z.strictObject({ pressurised: z.literal(false) }),
  z.strictObject({
    pressurised: z.literal(true),
    altitudes: z
      .array(z.strictObject({ level: measureOf("length"), cabin: measureOf("length") }))
      .min(2)
      .describe("Cabin altitude against pressure altitude, ascending; straight between two rows."),
    maxDifferential: measureOf("pressure"),
    emergencyDescent: z.strictObject({ rate: measureOf("speed"), to: measureOf("length") }),
  }),
]);
export type CabinSource = DeepReadonly<z.infer<typeof CabinSource>>;

export type Cabin =
  | { readonly pressurised: false }
  | {
      readonly pressurised: true;
      /** Ascending in both; straight between two rows, nothing beyond the last. */
      readonly altitudes: readonly { readonly level_m: number; readonly cabin_m: number }[];
      readonly maxDifferential_Pa: number;
      readonly emergencyDescent: { readonly rate_mPerS: number; readonly to_m: number };
    };
