import { defineQuantity } from "../registry/define-quantity.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { ALTIMETER_SETTING_Pa, ELEVATION_m, STATION_PRESSURE_Pa } from "./inputs.ts";
import { SMITHSONIAN } from "./sources.ts";
import { LAPSE_KPerM, SEA_LEVEL_PA } from "./standard-atmosphere-model.ts";

const US_EXPONENT_1 = 0.190284;
const US_SEA_LEVEL_K = 288;
const US_OFFSET_PA = 30;
const usTerm = (elevation_m: number): number =>
  (SEA_LEVEL_PA ** US_EXPONENT_1 * LAPSE_KPerM * elevation_m) / US_SEA_LEVEL_K;

export const stationPressureUs = defineQuantity({
  id: "station-pressure-us",
  title: "Station pressure from a US altimeter setting",
  inputs: [ELEVATION_m, ALTIMETER_SETTING_Pa],
  output: { name: "stationPressure_Pa", unit: "Pa" },
  formula: "p = (A^n − p0^n 0.0065 h / 288)^(1/n) + 0.3 hPa, n = 0.190284",
  sources: [SMITHSONIAN],
  crossCheckOnly: true,
  compute: ({ elevation_m, altimeterSetting_Pa }) =>
    (altimeterSetting_Pa ** US_EXPONENT_1 - usTerm(elevation_m)) ** (1 / US_EXPONENT_1) + US_OFFSET_PA,
});

export const altimeterSettingUs = defineQuantity({
  id: "altimeter-setting-us",
  title: "US altimeter setting from the station pressure",
  inputs: [ELEVATION_m, STATION_PRESSURE_Pa],
  output: { name: "altimeterSetting_Pa", unit: "Pa" },
  formula: "A = ((p − 0.3 hPa)^n + p0^n 0.0065 h / 288)^(1/n), n = 0.190284",
  sources: [SMITHSONIAN],
  crossCheckOnly: true,
  compute: ({ elevation_m, stationPressure_Pa }) =>
    ((stationPressure_Pa - US_OFFSET_PA) ** US_EXPONENT_1 + usTerm(elevation_m)) ** (1 / US_EXPONENT_1),
});

export const altimeterSettingSimple = defineQuantity({
  id: "altimeter-setting-simple",
  title: "Altimeter setting from the station pressure by the simple power formula",
  inputs: [ELEVATION_m, STATION_PRESSURE_Pa],
  output: { name: "altimeterSetting_Pa", unit: "Pa" },
  formula: "A = (P^N + 1.313e-5 Z)^(1/N), N = 0.1903, P and A in inHg, Z in ft",
  sources: [
    {
      title: "Weather-station forum thread comparing two altimeter setting formulas",
      edition: "July 2011",
      status: "common practice",
    },
  ],
  crossCheckOnly: true,
  compute: ({ elevation_m, stationPressure_Pa }) =>
    toSI(
      (fromSI(stationPressure_Pa, "inHg") ** 0.1903 + 1.313e-5 * fromSI(elevation_m, "ft")) ** (1 / 0.1903),
      "inHg",
    ),
});
