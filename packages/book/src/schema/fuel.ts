import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { FUEL_KINDS } from "./kinds.ts";
import { Id, measureOf } from "./text.ts";

/** What the aircraft burns, how fast in each phase, and from which tanks in turn. */
export const FuelSource = z.strictObject({
  kind: z.enum(FUEL_KINDS),
  density15: measureOf("density").describe("At 15 °C."),
  burn: z.strictObject({
    taxi: measureOf("mass").describe("From start-up to the take-off run, all of it."),
    climb: measureOf("mass-flow"),
    cruise: measureOf("mass-flow"),
    hold: measureOf("mass-flow"),
    descent: measureOf("mass-flow"),
    maxContinuous: measureOf("mass-flow")
      .optional()
      .describe("At maximum continuous cruise power, 1,500 ft above the field."),
  }),
  totaliser: z
    .strictObject({ accuracy: measureOf("ratio").describe("Of what it has counted: `2 %`.") })
    .optional()
    .describe("Counts what has been burnt since it was set."),
  freezingPoint: measureOf("temperature").optional(),
  minimumFuelTemperature: measureOf("temperature").optional(),
  order: z
    .array(z.array(Id).min(1))
    .min(1)
    .describe("Tanks in the order in which they are burnt; those of one list are burnt together."),
});
export type FuelSource = DeepReadonly<z.infer<typeof FuelSource>>;

export type FuelKind = (typeof FUEL_KINDS)[number];

/** What the aircraft burns, in SI. */
export interface Fuel {
  readonly kind: FuelKind;
  readonly density15_kgPerM3: number;
  readonly burn: {
    readonly taxi_kg: number;
    readonly climb_kgPerS: number;
    readonly cruise_kgPerS: number;
    readonly hold_kgPerS: number;
    readonly descent_kgPerS: number;
    /** At maximum continuous cruise power, 1,500 ft above the field. */
    readonly maxContinuous_kgPerS?: number;
  };
  /** Its accuracy as a share of the greatest amount that it can have counted: all usable fuel. */
  readonly totaliser?: { readonly accuracy_1: number };
  readonly freezingPoint_K?: number;
  readonly minimumFuelTemperature_K?: number;
  /** Tank ids in the order in which they are burnt; those of one list together. */
  readonly order: readonly (readonly string[])[];
}
