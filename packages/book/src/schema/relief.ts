import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { KINDS_OF_OPERATION } from "./kinds.ts";
import { Id, IsoDate, Line, measureOf } from "./text.ts";

/** How the type is certified: what decides which relief there can be. */
export const Certification = z.strictObject({
  basis: z.enum(["type-certified", "amateur-built", "light-sport"]),
  maxTakeOff: measureOf("mass").optional(),
  masterList: z.boolean().describe("Whether a master minimum equipment list exists for the type."),
  certifiedOn: IsoDate.optional().describe(
    "The day of the type's certification: some equipment is asked of later ones only.",
  ),
  altitudeEngine: z
    .boolean()
    .default(false)
    .describe("A piston engine that keeps its rated power above sea level."),
});

/** What every piece of equipment may say of when it is needed. */
export const EquipmentNeeds = {
  neededFor: z
    .array(z.enum(KINDS_OF_OPERATION))
    .min(1)
    .optional()
    .describe("Kinds of flight that the type's equipment list or kinds-of-operations list asks it for."),
  typeEquipment: z
    .boolean()
    .default(false)
    .describe("Part of the type's certified equipment for visual flight by day."),
  ruleItem: Id.optional().describe("What the rules' own list calls it: `anticollision-lights`."),
  directive: Line.optional().describe("The airworthiness directive that asks for it."),
};

const MelItem = z.strictObject({
  equipment: Id,
  category: z.enum(["A", "B", "C", "D"]),
  days: z.int().min(1).max(365).optional().describe("Category A: how many days."),
  installed: z.int().min(1).max(100),
  needed: z.int().min(0).max(100),
  notFor: z.array(z.enum(KINDS_OF_OPERATION)).default([]),
  provisos: z.array(Line).default([]),
  maintenance: Line.optional().describe("What maintenance must have done."),
  operation: Line.optional().describe("What the pilot does otherwise."),
  placard: Line.optional(),
});

export const Relief = z.strictObject({
  kindsList: z.boolean().default(false).describe("Whether the type has a kinds-of-operations list."),
  minimumEquipmentList: z
    .strictObject({ approvedOn: IsoDate, letterAboard: z.boolean(), items: z.array(MelItem).min(1) })
    .optional(),
});

export type Certification = DeepReadonly<z.infer<typeof Certification>>;
export type MelItem = DeepReadonly<z.infer<typeof MelItem>>;
export type Relief = DeepReadonly<z.infer<typeof Relief>>;
