import type { Dimension, Measure } from "@witnessmark/engine";
import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { Id, Line, measureOf } from "./text.ts";

/** What a reading outside its limit means, where the book says something milder than stop. */
const Outside = z.strictObject({
  status: z.enum(["stop", "caution"]).default("stop"),
  advice: Line.optional(),
});

/**
 * The reading that a check asks for. Limit values are text with a unit of the gauge's dimension; they are turned into
 * measures once the gauge is known (`resolve.ts`).
 */
const LimitSource = z.discriminatedUnion("by", [
  /** The same at every temperature. */
  z.strictObject({ by: z.literal("fixed"), low: z.string().optional(), high: z.string().optional() }),
  /** Gauge pressure of a gas in a closed volume, ideal gas: tyres other than by service pressure, struts, accumulators. */
  z.strictObject({
    by: z.literal("gas-law"),
    at: measureOf("temperature"),
    low: z.string().optional(),
    high: z.string().optional(),
  }),
  /** Gauge pressure of a cylinder of real gas, at constant contents. */
  z.strictObject({
    by: z.literal("cylinder"),
    gas: z.enum(["oxygen", "nitrogen"]),
    at: measureOf("temperature"),
    low: z.string().optional(),
    high: z.string().optional(),
  }),
  /** A tyre, judged by what it has lost against its service pressure at a temperature. */
  z.strictObject({ by: z.literal("tyre"), service: z.string(), at: measureOf("temperature") }),
  /** Rows against temperature, joined by straight lines, never extended. */
  z.strictObject({
    by: z.literal("table"),
    rows: z
      .array(
        z.strictObject({
          at: measureOf("temperature"),
          low: z.string().optional(),
          high: z.string().optional(),
        }),
      )
      .min(2),
  }),
]);

export const ReadingSource = z.strictObject({
  gauge: Id,
  quantity: Line.describe('What is measured, as a noun: "tyre pressure".'),
  temperatureOf: Line.optional().describe(
    'Whose temperature moves the limit: "tyre", "cylinder", "oil". Absent when none does.',
  ),
  limit: LimitSource,
  outside: Outside.default({ status: "stop" }),
  scale: z
    .tuple([z.string(), z.string()])
    .optional()
    .describe(
      "The ends of the rule that is drawn; it should hold the band at every likely temperature. Left out, they are made from the limit.",
    ),
  step: z.string().optional().describe("What one press of − or + does; the gauge's resolution when absent."),
});
export type ReadingSource = DeepReadonly<z.infer<typeof ReadingSource>>;

interface Band {
  readonly low?: Measure;
  readonly high?: Measure;
}
export type Limit =
  | ({ readonly by: "fixed" } & Band)
  | ({ readonly by: "gas-law"; readonly at: Measure } & Band)
  | ({ readonly by: "cylinder"; readonly gas: "oxygen" | "nitrogen"; readonly at: Measure } & Band)
  | { readonly by: "tyre"; readonly service: Measure; readonly at: Measure }
  | { readonly by: "table"; readonly rows: readonly ({ readonly at: Measure } & Band)[] };

/** A reading as the program uses it: every value is a measure of the gauge's dimension. */
export interface Reading {
  readonly gauge: string;
  readonly quantity: string;
  readonly dimension: Dimension;
  readonly temperatureOf?: string;
  readonly limit: Limit;
  readonly outside: { readonly status: "stop" | "caution"; readonly advice?: string };
  readonly scale: readonly [Measure, Measure];
  readonly step: Measure;
}
