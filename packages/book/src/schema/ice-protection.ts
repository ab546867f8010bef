import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { Line } from "./text.ts";

export const IceProtection = z.strictObject({
  known: z.boolean().describe("Whether flight into known icing is allowed at all."),
  parts: z.array(Line).describe("What is protected, and how."),
  conditions: Line.describe("What it is good for, and what it is not."),
});
export type IceProtection = DeepReadonly<z.infer<typeof IceProtection>>;
