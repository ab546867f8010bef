import {
  coldTemperatureTable,
  densityAltitude,
  freezingLevelRule,
  pressureAltitude,
  toSI,
} from "@witnessmark/engine";
import type { FlightField } from "../field-of.ts";
import type { AirTemperature, FieldWeather } from "./field-weather.ts";
import { derived, derivedFromTwo, type Figure } from "./figure.ts";

/** What the air at a field does to an altimeter and to the numbers. */
export interface AirFigures {
  readonly pressureAltitude_m: Figure<number>;
  /** At the hottest that the report leaves. */
  readonly densityAltitude_m: Figure<number>;
  /** By the rule of 2 °C in 1,000 ft, from the coldest; an inversion makes it wrong. */
  readonly freezingLevel_m: Figure<number>;
  /** What is added to a height of 1,000 ft above the field, in cold air. */
  readonly coldCorrection_m: Figure<number>;
}

/** The height above the field for which the correction is told. */
export const CORRECTED_HEIGHT_M = toSI(1000, "ft");

export function airFigures({ elevation_m }: FlightField, { oat, qnh_Pa }: FieldWeather): AirFigures {
  const pressure = derived(qnh_Pa, "the pressure altitude", (altimeterSetting_Pa) =>
    pressureAltitude.compute({ elevation_m, altimeterSetting_Pa }),
  );
  const withAir = <T>(what: string, compute: (air: AirTemperature) => T): Figure<T> =>
    derived(oat, what, compute);
  return {
    pressureAltitude_m: pressure,
    densityAltitude_m: derivedFromTwo(
      pressure,
      oat,
      "the density altitude",
      (pressureAltitude_m, { hottest_K }) =>
        densityAltitude.compute({ pressureAltitude_m, oat_K: hottest_K }),
    ),
    freezingLevel_m: withAir("the freezing level", ({ coldest_K }) =>
      freezingLevelRule.compute({ elevation_m, oat_K: coldest_K }),
    ),
    coldCorrection_m: withAir("the correction of the altimeter in cold air", ({ coldest_K }) =>
      coldTemperatureTable.compute({
        heightAboveAirport_m: CORRECTED_HEIGHT_M,
        reportedTemperature_K: Math.min(coldest_K, toSI(40, "degC")),
      }),
    ),
  };
}
