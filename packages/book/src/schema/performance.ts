import type { Table } from "@witnessmark/engine";
import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { PERFORMANCE_QUANTITIES, RUNWAY_CONDITIONS, SURFACES, TABLE_AXES } from "./kinds.ts";
import { Id, Line, limitOf, measureOf } from "./text.ts";

const Axis = z.strictObject({
  name: z.enum(TABLE_AXES),
  unit: z
    .string()
    .default("")
    .describe("The unit of the values; none for a slope written as a plain number."),
  values: z.array(z.number()).min(1).describe("Ascending."),
});

const PerformanceTable = z.strictObject({
  id: Id,
  quantity: z.enum(PERFORMANCE_QUANTITIES),
  title: Line,
  flaps: Line.optional(),
  speed: measureOf("speed")
    .optional()
    .describe("Calibrated airspeed that the figures are for; for a climb it makes ft/min and wind of them."),
  upToMass: measureOf("mass")
    .optional()
    .describe("Of a table for one mass: at it and less the figures hold, above it there is none."),
  groundRoll: z
    .number()
    .optional()
    .describe("Of a table over 50 ft: the ground roll as a share of its distances, rounded up; 0.58."),
  axes: z
    .array(Axis)
    .min(1)
    .max(5)
    .describe("The first is the outermost list of `cells`, the last runs fastest."),
  unit: z.string().default("").describe("The unit of the cells: m, ft, kt; none or % for a gradient."),
  cells: z
    .array(z.unknown())
    .describe("Lists in lists, one level for each axis; a figure that does not exist is `null`."),
});
export type PerformanceTableSource = DeepReadonly<z.infer<typeof PerformanceTable>>;

const Factor = z.strictObject({
  id: Id,
  quantities: z.array(z.enum(PERFORMANCE_QUANTITIES)).min(1),
  when: z
    .strictObject({ surface: z.enum(SURFACES).optional(), condition: z.enum(RUNWAY_CONDITIONS).optional() })
    .describe("Both must hold where both are given."),
  factor: z.number(),
  of: z
    .enum(["ground-roll", "total"])
    .describe(
      "Whether the factor is on the ground roll alone, and what it adds goes on the total, or on all.",
    ),
  source: Line,
});

/** What the aircraft can do, as its tables have it. */
export const PerformanceSource = z.strictObject({
  tables: z.array(PerformanceTable).min(1),
  factors: z.array(Factor).default([]),
  crosswind: z.strictObject({ value: measureOf("speed"), kind: z.enum(["limit", "demonstrated"]) }),
  tailwindMax: limitOf("speed").describe('"none given" where the manual gives no limit.'),
  approachFactor: z.number().default(1.3).describe("Approach speed over stall speed."),
  liftOffFactor: z
    .number()
    .optional()
    .describe("Lift-off speed over stall speed with take-off flap; for the point at which to stop."),
  touchdownFactor: z
    .number()
    .optional()
    .describe("Touchdown speed over stall speed with landing flap; for stopping after a take-off."),
  slope: z
    .strictObject({
      max: measureOf("ratio").describe("Beyond it, either way, there is no figure."),
      takeOffUp: z.number().describe("Added share of a take-off distance for 1 % up; 0.05 is 5 %."),
      landingDown: z.number().describe("Added share of a landing distance for 1 % down."),
    })
    .optional()
    .describe("For tables without an axis of slope. A helpful slope counts nothing."),
  windInTable: z
    .boolean()
    .default(false)
    .describe("The tables count half of a headwind and half as much again of a tailwind already."),
  headwindCredit: z
    .number()
    .optional()
    .describe("Share of a headwind that is counted; 0.5 unless the table does it."),
  tailwindCharge: z
    .number()
    .optional()
    .describe("Multiple of a tailwind that is counted; 1.5 unless the table does it."),
});
export type PerformanceSource = DeepReadonly<z.infer<typeof PerformanceSource>>;

export type PerformanceQuantity = (typeof PERFORMANCE_QUANTITIES)[number];
export type RunwayCondition = (typeof RUNWAY_CONDITIONS)[number];

/** The names that the axes of a table have once they are in SI. */
export type TableAxisName = "mass_kg" | "pressureAltitude_m" | "oat_K" | "headwind_mPerS" | "slope_1";

/** A table in SI that `interpolateTable` reads. Cells are row-major, the last axis fastest; null is no figure. */
export interface PerformanceTable extends Table {
  readonly id: string;
  readonly quantity: PerformanceQuantity;
  readonly title: string;
  readonly flaps?: string;
  /** Calibrated airspeed that the figures are for. */
  readonly speed_mPerS?: number;
  readonly axes: readonly { readonly name: TableAxisName; readonly values: readonly number[] }[];
  /** SI unit of the cells. */
  readonly unit: "m" | "mPerS" | "1";
}

export interface PerformanceFactor {
  readonly id: string;
  readonly quantities: readonly PerformanceQuantity[];
  readonly when: {
    readonly surface?: (typeof SURFACES)[number];
    readonly condition?: RunwayCondition;
  };
  readonly factor_1: number;
  readonly of: "ground-roll" | "total";
  readonly source: string;
}

/** What the aircraft can do, in SI. */
export interface Performance {
  readonly tables: readonly PerformanceTable[];
  readonly factors: readonly PerformanceFactor[];
  readonly crosswind: { readonly value_mPerS: number; readonly kind: "limit" | "demonstrated" };
  /** Absent where the book says that the manual gives none. */
  readonly tailwindMax_mPerS?: number;
  readonly approachFactor_1: number;
  /** Of the stall speed with the flap of the take-off tables. */
  readonly liftOffFactor_1?: number;
  /** Of the stall speed with the flap of the landing tables. */
  readonly touchdownFactor_1?: number;
  /** Added share of a distance for each unit of adverse slope: 5 is 5 % for 1 %. None for a helpful one. */
  readonly slope?: { readonly max_1: number; readonly takeOffUp_1: number; readonly landingDown_1: number };
  /** The tables count wind with its safety already; then credit and charge are 1. */
  readonly windInTable: boolean;
  readonly headwindCredit_1: number;
  readonly tailwindCharge_1: number;
}
