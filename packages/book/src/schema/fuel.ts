import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { FUEL_KINDS } from "./kinds.ts";
import { Id, measureOf } from "./text.ts";

/** By mass or by volume, as the handbook has it. */
const FLOW = measureOf("mass-flow", "volume-flow");

/** What the aircraft burns, how fast in each phase, and from which tanks in turn. */
export const FuelSource = z.strictObject({
  kind: z.enum(FUEL_KINDS),
  density15: measureOf("density").describe("At 15 °C; what is burnt by volume becomes mass by it."),
  burn: z.strictObject({
    taxi: measureOf("mass", "volume").describe("From start-up to the take-off run, all of it."),
    climb: FLOW.optional().describe(
      "Left out, the most power is taken; without that too, the fuel of a flight is open unless its trip fuel is planned.",
    ),
    cruise: FLOW,
    hold: FLOW.optional().describe("Left out, that of the cruise is taken."),
    descent: FLOW.optional().describe("Left out, that of the cruise is taken."),
    maxContinuous: FLOW.optional().describe("At maximum continuous cruise power, 1,500 ft above the field."),
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
    /** The most power where the book has none for the climb; absent where it has neither. */
    readonly climb_kgPerS?: number;
    readonly cruise_kgPerS: number;
    readonly hold_kgPerS: number;
    readonly descent_kgPerS: number;
    /** Phases of which the book says nothing: they burn less than the cruise, and are taken as it. */
    readonly takenAsCruise: readonly ("hold" | "descent")[];
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
