import { z } from "zod";
import type { DeepReadonly } from "../readonly.ts";
import { MASK_KINDS } from "./kinds.ts";
import { Id, measureOf } from "./text.ts";

const Cylinder = z.strictObject({
  waterVolume: measureOf("volume").optional().describe("What it holds of water: its inner volume."),
  nominal: measureOf("volume").optional().describe("Or what it gives of free gas when full."),
  full: z
    .strictObject({ pressure: measureOf("pressure"), at: measureOf("temperature") })
    .describe("Gauge pressure of the full cylinder, and the temperature it is stated for."),
  gauge: Id,
  residual: measureOf("pressure").describe("What must stay in it, gauge pressure."),
  check: Id.describe("The check whose reading gives its pressure."),
});

const Outlet = z.strictObject({
  id: Id,
  seat: Id.describe("The station whose person breathes from it."),
  mask: z.enum(MASK_KINDS),
  flows: z
    .array(z.strictObject({ cabinAltitude: measureOf("length"), flow: measureOf("volume-flow") }))
    .min(1)
    .describe("Free gas (NTPD) drawn by one person, by cabin altitude ascending; straight between two rows."),
});

export const OxygenSource = z.strictObject({ cylinder: Cylinder, outlets: z.array(Outlet).min(1) });
export type OxygenSource = DeepReadonly<z.infer<typeof OxygenSource>>;

export type MaskKind = (typeof MASK_KINDS)[number];

export interface OxygenOutlet {
  readonly id: string;
  /** The id of a station. */
  readonly seat: string;
  readonly mask: MaskKind;
  /** Free gas (NTPD) for one person, by cabin altitude ascending. */
  readonly flows: readonly { readonly cabinAltitude_m: number; readonly flow_m3PerS: number }[];
}

/** The oxygen of the aircraft, in SI. */
export interface Oxygen {
  readonly cylinder: {
    /** Inner volume; worked out from the nominal contents where the book gives those. */
    readonly waterVolume_m3: number;
    /** Free gas (NTPD) of the full cylinder, where the book gives that instead. */
    readonly nominal_m3?: number;
    readonly fullPressure_Pa: number;
    readonly fullTemperature_K: number;
    readonly gauge: string;
    readonly residual_Pa: number;
    /** Id of a check of the book, as it is after expansion. */
    readonly check: string;
  };
  readonly outlets: readonly OxygenOutlet[];
}
