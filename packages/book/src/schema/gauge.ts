import {
  type Dimension,
  differenceToSI,
  InputError,
  type Measure,
  parseMeasure,
  UNITS,
  type UnitId,
  unitFromText,
} from "@witnessmark/engine";
import { z } from "zod";
import { didYouMean } from "../faults/did-you-mean.ts";
import type { DeepReadonly } from "../readonly.ts";
import { Id, Line, refusal } from "./text.ts";

const SPELLINGS = Object.values(UNITS).map(({ symbol }) => symbol);

const unitText = z.string().transform((text, context): UnitId => {
  const unit = unitFromText(text);
  if (unit === undefined) {
    context.addIssue({
      code: "custom",
      message: "a unit that Witnessmark knows, such as bar, psi, °C, mm, L, V",
      input: text,
      params: { remedy: didYouMean(text, SPELLINGS) },
    });
    return z.NEVER;
  }
  return unit;
});

/** A difference has no zero point: 0.5 °C is 0.5 K, not 273.65 K. */
export const asDifference = ({ value, unit }: Measure): Measure => ({
  value,
  unit,
  valueSI: differenceToSI(value, unit),
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
    range: z
      .tuple([z.string(), z.string()])
      .optional()
      .describe(
        "What the gauge can show; a reading outside is refused as a slip. Left out, it is told by the rule of the check.",
      ),
    assumed: z
      .literal(true)
      .optional()
      .describe(
        "Accuracy and resolution are those of a common gauge, not of this one: a doubt until its own are put in.",
      ),
  })
  .transform((written, context) => {
    const dimension: Dimension = UNITS[written.unit].dimension;
    const read = (text: string, ...path: (string | number)[]): Measure | undefined => {
      try {
        return parseMeasure(text, dimension, path.join("."));
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        context.addIssue(refusal(error, text, path));
        return undefined;
      }
    };
    const accuracy = read(written.accuracy, "accuracy");
    const resolution = read(written.resolution, "resolution");
    const range = written.range?.map((end, at) => read(end, "range", at));
    if (accuracy === undefined || resolution === undefined || range?.includes(undefined) === true) {
      return z.NEVER;
    }
    const [low, high] = range ?? [];
    return {
      id: written.id,
      name: written.name,
      unit: written.unit,
      dimension,
      coverage: written.coverage,
      /** Half width of the stated interval. */
      accuracy: asDifference(accuracy),
      /** One division, or one step of the last figure. */
      resolution: asDifference(resolution),
      ...(low === undefined || high === undefined ? {} : { range: [low, high] as const }),
      ...(written.assumed === undefined ? {} : { assumed: written.assumed }),
    };
  });
export type Gauge = DeepReadonly<z.infer<typeof Gauge>>;
