import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { AIRSPACE_CLASSES, APPROACH_KINDS, SURFACES } from "./kinds.ts";
import { Line, measureOf } from "./text.ts";

const RunwaySource = z.strictObject({
  name: z.string().regex(/^(0[1-9]|[12]\d|3[0-6])[LCR]?$/, {
    error: "01 to 36, with L, C or R where there are two, in quotes",
  }),
  trueHeading: z.number().min(0).lt(360).describe("Degrees clockwise from true north."),
  tora: measureOf("length").describe("Take-off run available."),
  toda: measureOf("length").describe("Take-off distance available."),
  asda: measureOf("length").describe("Accelerate-stop distance available."),
  lda: measureOf("length").describe("Landing distance available."),
  slope: measureOf("ratio").describe("Rise over length in this direction, up positive: `0.4 %`."),
  surface: z.enum(SURFACES),
});

const ApproachSource = z.strictObject({
  name: Line.describe("As the chart names it: `RNP 29`."),
  kind: z.enum(APPROACH_KINDS).describe("`precision`: with a decision height on a glide path to it."),
  minimum: measureOf("length").describe("Decision or minimum descent height, above the field."),
  visibility: measureOf("length").describe("What the approach asks to be seen."),
});

export const FieldSource = z.strictObject({
  code: z.string().regex(/^[A-Z][A-Z0-9]{3}$/, { error: "four capital letters or figures" }),
  name: Line,
  latitude: z.number().min(-90).max(90).describe("Degrees, north positive."),
  longitude: z.number().min(-180).max(180).describe("Degrees, east positive."),
  elevation: measureOf("length"),
  magneticVariation: z.number().min(-180).max(180).describe("Degrees, east positive."),
  lights: z.boolean().describe("Whether a runway has lights for night."),
  approach: z.boolean().describe("Whether it has an instrument approach that this aircraft can fly."),
  airspace: z
    .enum(AIRSPACE_CLASSES)
    .optional()
    .describe("Class of the airspace at the surface of the field."),
  approaches: z
    .array(ApproachSource)
    .default([])
    .describe("Approaches by instruments that this aircraft can fly, with the minima of its category."),
  zone: Line.describe("Time zone of the tz database: Etc/UTC."),
  runways: z.array(RunwaySource).min(1),
});
export type FieldSource = DeepReadonly<z.infer<typeof FieldSource>>;

export type Surface = (typeof SURFACES)[number];

export interface Runway {
  readonly name: string;
  readonly trueHeading_deg: number;
  readonly tora_m: number;
  readonly toda_m: number;
  readonly asda_m: number;
  readonly lda_m: number;
  /** Rise over length in this direction, up positive. */
  readonly slope_1: number;
  readonly surface: Surface;
}

export type AirspaceClass = (typeof AIRSPACE_CLASSES)[number];

export interface Approach {
  readonly name: string;
  readonly kind: (typeof APPROACH_KINDS)[number];
  /** Decision or minimum descent height above the field. */
  readonly minimum_m: number;
  readonly visibility_m: number;
}

export interface Field {
  readonly code: string;
  readonly name: string;
  readonly latitude_deg: number;
  readonly longitude_deg: number;
  readonly elevation_m: number;
  /** East positive: magnetic = true − variation. */
  readonly magneticVariation_deg: number;
  readonly lights: boolean;
  readonly approach: boolean;
  /** At the surface; absent where the book does not say. */
  readonly airspace?: AirspaceClass;
  readonly approaches: readonly Approach[];
  /** Time zone of the tz database. */
  readonly zone: string;
  readonly runways: readonly Runway[];
}
