import { type Dimension, InputError, type Measure, parseMeasure } from "@witnessmark/engine";
import { z } from "zod";

/** Short name used in references: lower-case words joined by hyphens. */
export const Id = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, { error: "lower-case letters and figures joined by hyphens" })
  .max(60, { error: "at most 60 characters" })
  .meta({ description: "Lower-case letters and figures joined by hyphens." });

/** A line that a person reads; never empty. */
export const Line = z
  .string()
  .trim()
  .min(1, { error: "at least one word" })
  .max(400, { error: "at most 400 characters" });

/** A value with its unit, written as text: `5.20 bar`; of one of the dimensions where several will do. */
export function measureOf(
  ...dimensions: readonly [Dimension, ...Dimension[]]
): z.ZodType<Measure, string | number> {
  const what = dimensions.join(" or a ");
  return z
    .union([z.string(), z.number()], { error: `a ${what} with its unit` })
    .transform((written, context): Measure => read(written, dimensions, context))
    .meta({ description: `A ${what} with its unit, for example written as "5.20 bar".` });
}

/** Written where the approved manual gives no such limit: said outright, since a limit left out is one forgotten. */
export const NONE_GIVEN = "none given";

/** A limit with its unit, or the word that the manual gives none; that is `null`. */
export function limitOf(dimension: Dimension): z.ZodType<Measure | null, string | number> {
  return z
    .union([z.string(), z.number()], { error: `a ${dimension} with its unit, or ${NONE_GIVEN}` })
    .transform((written, context): Measure | null =>
      written === NONE_GIVEN ? null : read(written, [dimension], context),
    )
    .meta({
      description: `A ${dimension} with its unit; "${NONE_GIVEN}" where the manual has no such limit.`,
    });
}

function read(
  written: string | number,
  dimensions: readonly [Dimension, ...Dimension[]],
  context: z.RefinementCtx,
): Measure {
  try {
    return parseMeasure(String(written), dimensions, dimensions.join(" or a "));
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    context.addIssue(refusal(error, written));
    return z.NEVER;
  }
}

/** What the engine refused, as an issue of the schema: its message is what was expected. */
export function refusal(error: InputError, input: unknown, path: (string | number)[] = []) {
  const { expected, received, remedy } = error.detail;
  return { code: "custom" as const, message: expected, input, path, params: { received, remedy } };
}

/** Calendar date, ISO 8601. */
export const IsoDate = z.iso.date();

/** Metres in the book's own axes: x aft of the datum, y right, z up from the ground. */
const FARTHEST_m = 100;
export const Metres = z
  .number()
  .min(-FARTHEST_m, { error: "metres, at most 100 from the datum" })
  .max(FARTHEST_m, { error: "metres, at most 100 from the datum" });

/** [x, y, z] in the book's axes, metres. */
export const Place = z.tuple([Metres, Metres, Metres]);

export const Side = z.enum(["left", "right", "centre"]);
export type Side = z.infer<typeof Side>;
