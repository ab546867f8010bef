import {
  type Dimension,
  InputError,
  type Measure,
  parseMeasure,
  UNITS,
  type UnitId,
  unitFromText,
} from "@witnessmark/engine";
import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { Id, Line } from "./text.ts";

const unitText = z.string().transform((text, context): UnitId => {
  const unit = unitFromText(text);
  if (unit === undefined) {
    context.addIssue({
      code: "custom",
      message: "a unit that Witnessmark knows, such as bar, psi, °C, mm, L, V",
      input: text,
    });
    return z.NEVER;
  }
  return unit;
});

/**
 * An instrument that gives readings. Accuracy and resolution are written in the gauge's own unit: `0.05 bar`.
 * Accuracy is the half width of the interval that the maker states; unless `coverage` says otherwise it is taken as
 * the bound of a rectangular distribution (JCGM 100:2008, 4.3.7).
 */
export const Gauge = z
  .strictObject({
    id: Id,
    name: Line,
    unit: unitText,
    accuracy: z.string(),
    coverage: z.enum(["bound", "95-percent"]).default("bound"),
    resolution: z.string(),
    /** What the gauge can show; a reading outside is refused as a slip. */
    range: z.tuple([z.string(), z.string()]),
  })
  .transform((written, context) => {
    const dimension: Dimension = UNITS[written.unit].dimension;
    const read = (text: string, field: string): Measure => {
      try {
        return parseMeasure(text, dimension, field);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        context.addIssue({ code: "custom", message: error.detail.expected, input: text, path: [field] });
        return z.NEVER;
      }
    };
    const [low, high] = written.range;
    return {
      id: written.id,
      name: written.name,
      unit: written.unit,
      dimension,
      coverage: written.coverage,
      /** Half width of the stated interval; a difference, so never shifted by an offset. */
      accuracy: read(written.accuracy, "accuracy"),
      resolution: read(written.resolution, "resolution"),
      range: [read(low, "range"), read(high, "range")] as const,
    };
  });
export type Gauge = DeepReadonly<z.infer<typeof Gauge>>;
