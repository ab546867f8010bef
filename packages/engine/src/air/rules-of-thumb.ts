import { defineQuantity } from "../registry/define-quantity.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { ALTIMETER_SETTING_Pa, ELEVATION_m, OAT_K, STATION_PRESSURE_Pa } from "./inputs.ts";
import { AIM, NWS_DENSITY_ALTITUDE, RULE_OF_THUMB } from "./sources.ts";

/** All of these are shown beside the exact answer, never in its place. */

const LOW_PRESSURE_ALTITUDE_m = {
  name: "pressureAltitude_m",
  unit: "m",
  range: [-1500, 11_000], // the rules know no tropopause
  meaning: "pressure altitude",
} as const;

/** 15 °C less 2 °C for each 1,000 ft. */
const ruleTemperature_degC = (altitude_m: number): number => 15 - (2 * fromSI(altitude_m, "ft")) / 1000;

export const standardTemperatureRule = defineQuantity({
  id: "standard-temperature-rule",
  title: "Standard temperature by the rule of 2 °C per 1,000 ft",
  inputs: [LOW_PRESSURE_ALTITUDE_m],
  output: { name: "temperature_K", unit: "K" },
  formula: "15 °C − 2 °C per 1,000 ft",
  sources: [{ ...AIM, edition: "2021, 2023", locator: "7-3-1 a" }],
  crossCheckOnly: true,
  notes: ["0.2 °C out at 10,000 ft, 0.7 °C at the tropopause."],
  compute: ({ pressureAltitude_m }) => toSI(ruleTemperature_degC(pressureAltitude_m), "degC"),
});

export const pressureAltitudeInchRule = defineQuantity({
  id: "pressure-altitude-rule-inch",
  title: "Pressure altitude by the rule of 1,000 ft per inch of mercury",
  inputs: [ELEVATION_m, ALTIMETER_SETTING_Pa],
  output: { name: "pressureAltitude_m", unit: "m" },
  formula: "PA = elevation + (29.92 − setting in inHg) 1,000 ft",
  sources: [RULE_OF_THUMB],
  crossCheckOnly: true,
  notes: ["Up to about 100 ft out at the ends of the scale."],
  compute: ({ elevation_m, altimeterSetting_Pa }) =>
    elevation_m + toSI((29.92 - fromSI(altimeterSetting_Pa, "inHg")) * 1000, "ft"),
});

export const pressureAltitudeHectopascalRule = defineQuantity({
  id: "pressure-altitude-rule-hectopascal",
  title: "Pressure altitude by the rule of 30 ft per hectopascal",
  inputs: [ELEVATION_m, ALTIMETER_SETTING_Pa],
  output: { name: "pressureAltitude_m", unit: "m" },
  formula: "PA = elevation + (1013 − QNH in hPa) 30 ft",
  sources: [RULE_OF_THUMB],
  crossCheckOnly: true,
  notes: ["27 to 28 ft per hectopascal is true near sea level."],
  compute: ({ elevation_m, altimeterSetting_Pa }) =>
    elevation_m + toSI((1013 - fromSI(altimeterSetting_Pa, "hPa")) * 30, "ft"),
});

export const densityAltitudeRule = defineQuantity({
  id: "density-altitude-rule",
  title: "Density altitude by the rule of 120 ft per °C over standard",
  inputs: [LOW_PRESSURE_ALTITUDE_m, OAT_K],
  output: { name: "densityAltitude_m", unit: "m" },
  formula: "DA = PA + 120 ft per °C over the standard temperature by rule, taken at the pressure altitude",
  sources: [RULE_OF_THUMB],
  crossCheckOnly: true,
  notes: ["Within 100 ft up to 15 °C over standard, 250 to 300 ft high at 30 °C over."],
  compute: ({ pressureAltitude_m, oat_K }) =>
    pressureAltitude_m + toSI(120 * (fromSI(oat_K, "degC") - ruleTemperature_degC(pressureAltitude_m)), "ft"),
});

export const densityAltitudeFahrenheitRule = defineQuantity({
  id: "density-altitude-rule-fahrenheit",
  title: "Density altitude by the rule of 600 ft per 10 °F over standard",
  inputs: [LOW_PRESSURE_ALTITUDE_m, OAT_K],
  output: { name: "densityAltitude_m", unit: "m" },
  formula: "DA = PA + 60 ft per °F over 59 °F − 3.5 °F per 1,000 ft",
  sources: [RULE_OF_THUMB],
  crossCheckOnly: true,
  notes: ["Stated good to 200 to 300 ft."],
  compute: ({ pressureAltitude_m, oat_K }) => {
    const standard_degF = 59 - (3.5 * fromSI(pressureAltitude_m, "ft")) / 1000;
    return pressureAltitude_m + toSI(60 * (fromSI(oat_K, "degF") - standard_degF), "ft");
  },
});

export const densityAltitudeNws = defineQuantity({
  id: "density-altitude-nws",
  title: "Density altitude of moist air by the US weather service's formula",
  inputs: [
    STATION_PRESSURE_Pa,
    OAT_K,
    { name: "dewPoint_K", unit: "K", range: [170, 333.15], meaning: "dew point" },
  ],
  output: { name: "densityAltitude_m", unit: "m" },
  formula:
    "145 366 (1 − (17.326 P / Tv)^0.235) ft, P in inHg, Tv in °F + 459.69, e = 6.11 × 10^(7.5 td / (237.7 + td)) hPa",
  sources: [NWS_DENSITY_ALTITUDE],
  crossCheckOnly: true,
  notes: ["Its constants give 19.5 ft at exactly standard conditions."],
  compute: ({ stationPressure_Pa, oat_K, dewPoint_K }) => {
    const td = fromSI(dewPoint_K, "degC");
    const vapour_hPa = 6.11 * 10 ** ((7.5 * td) / (237.7 + td));
    const virtual_K = oat_K / (1 - (0.378 * vapour_hPa) / fromSI(stationPressure_Pa, "hPa"));
    const virtual_degR = fromSI(virtual_K, "degF") + 459.69; // as the sheet has it; 459.67 would be exact
    const ratio = (17.326 * fromSI(stationPressure_Pa, "inHg")) / virtual_degR;
    return toSI(145_366 * (1 - ratio ** 0.235), "ft");
  },
});

export const cloudBaseRule = defineQuantity({
  id: "cloud-base-rule",
  title: "Base of cumulus from the spread of temperature and dew point",
  inputs: [
    ELEVATION_m,
    OAT_K,
    { name: "dewPoint_K", unit: "K", range: [228.15, 333.15], meaning: "dew point" },
  ],
  output: { name: "cloudBase_m", unit: "m" },
  formula: "elevation + 1,000 ft per 4.4 °F of spread",
  sources: [{ title: "FAA handbooks, convergence rule", status: "from memory" }],
  crossCheckOnly: true,
  notes: ["For cumulus over level ground, mixed from the surface."],
  compute: ({ elevation_m, oat_K, dewPoint_K }) =>
    elevation_m + toSI(((fromSI(oat_K, "degF") - fromSI(dewPoint_K, "degF")) / 4.4) * 1000, "ft"),
});
