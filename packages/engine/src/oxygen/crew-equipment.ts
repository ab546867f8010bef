import type { QuantitySource } from "../registry/quantity.ts";
import { toSI } from "../units/convert.ts";

export type CrewOxygenEquipment = "any approved" | "demand" | "pressure demand";

export const CREW_EQUIPMENT_SOURCE: QuantitySource = {
  title: "14 CFR 23.1441: oxygen equipment and supply (before 2017)",
  edition: "Amdt 23-43",
  locator: "(d)",
  status: "published",
};

const DEMAND_ABOVE_M = toSI(25_000, "ft");
const PRESSURE_DEMAND_ABOVE_M = toSI(40_000, "ft");
const ROUNDING_M = 1e-6;

/**
 * The kind of oxygen equipment that a type certified to an altitude must have for its crew: demand above 25,000 ft,
 * pressure demand above 40,000 ft. `undefined` when the altitude is no number.
 */
export function crewOxygenEquipment(certifiedAltitude_m: number): CrewOxygenEquipment | undefined {
  if (!Number.isFinite(certifiedAltitude_m)) return undefined;
  if (certifiedAltitude_m > PRESSURE_DEMAND_ABOVE_M + ROUNDING_M) return "pressure demand";
  return certifiedAltitude_m > DEMAND_ABOVE_M + ROUNDING_M ? "demand" : "any approved";
}
