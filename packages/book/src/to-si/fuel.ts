import type { Fuel, FuelSource } from "../schema/fuel.ts";
import { given } from "./given.ts";

export function fuelInSI(source: FuelSource): Fuel {
  const { kind, density15, burn, freezingPoint, minimumFuelTemperature, order, totaliser } = source;
  return {
    kind,
    density15_kgPerM3: density15.valueSI,
    burn: {
      taxi_kg: burn.taxi.valueSI,
      climb_kgPerS: burn.climb.valueSI,
      cruise_kgPerS: burn.cruise.valueSI,
      hold_kgPerS: burn.hold.valueSI,
      descent_kgPerS: burn.descent.valueSI,
      ...given("maxContinuous_kgPerS", burn.maxContinuous?.valueSI),
    },
    ...given("totaliser", totaliser && { accuracy_1: totaliser.accuracy.valueSI }),
    ...given("freezingPoint_K", freezingPoint?.valueSI),
    ...given("minimumFuelTemperature_K", minimumFuelTemperature?.valueSI),
    order,
  };
}
