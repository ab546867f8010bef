import { type Measure, UNITS } from "@witnessmark/engine";
import type { Fuel, FuelSource } from "../schema/fuel.ts";
import { given } from "./given.ts";

export function fuelInSI(source: FuelSource): Fuel {
  const { kind, density15, burn, freezingPoint, minimumFuelTemperature, order, totaliser } = source;
  /** By volume as handbooks have it, or by mass: the book's density makes one of the other, here and nowhere else. */
  const inMass = ({ unit, valueSI }: Measure): number =>
    UNITS[unit].dimension.startsWith("volume") ? valueSI * density15.valueSI : valueSI;
  const flow = (written: Measure | undefined) => (written === undefined ? undefined : inMass(written));
  const cruise_kgPerS = inMass(burn.cruise);
  return {
    kind,
    density15_kgPerM3: density15.valueSI,
    burn: {
      taxi_kg: inMass(burn.taxi),
      ...given("climb_kgPerS", flow(burn.climb ?? burn.maxContinuous)),
      cruise_kgPerS,
      hold_kgPerS: flow(burn.hold) ?? cruise_kgPerS,
      descent_kgPerS: flow(burn.descent) ?? cruise_kgPerS,
      takenAsCruise: (["hold", "descent"] as const).filter((phase) => burn[phase] === undefined),
      ...given("maxContinuous_kgPerS", flow(burn.maxContinuous)),
    },
    ...given("totaliser", totaliser && { accuracy_1: totaliser.accuracy.valueSI }),
    ...given("freezingPoint_K", freezingPoint?.valueSI),
    ...given("minimumFuelTemperature_K", minimumFuelTemperature?.valueSI),
    order,
  };
}
