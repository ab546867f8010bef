import { defineQuantity } from "../registry/define-quantity.ts";
import { toSI } from "../units/convert.ts";
import { ALTIMETER_SETTING_Pa, ELEVATION_m } from "./inputs.ts";
import { AIM, STANDARD_ATMOSPHERE } from "./sources.ts";
import { heightOfPressure_m, pressureAt_Pa } from "./standard-atmosphere-model.ts";

export const pressureAltitude = defineQuantity({
  id: "pressure-altitude",
  title: "Pressure altitude of a place from its elevation and the altimeter setting",
  inputs: [ELEVATION_m, ALTIMETER_SETTING_Pa],
  output: { name: "pressureAltitude_m", unit: "m" },
  formula: "PA = elevation + standard altitude of the setting",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ elevation_m, altimeterSetting_Pa }) => elevation_m + heightOfPressure_m(altimeterSetting_Pa),
});

export const qfe = defineQuantity({
  id: "qfe",
  title: "Pressure at a place from its elevation and the altimeter setting",
  inputs: [ELEVATION_m, ALTIMETER_SETTING_Pa],
  output: { name: "stationPressure_Pa", unit: "Pa" },
  formula: "QFE = standard pressure at the pressure altitude of the place",
  sources: [STANDARD_ATMOSPHERE],
  notes: ["The ICAO relation, without the 0.3 hPa of the US form; the two differ by 8 to 10 ft."],
  compute: ({ elevation_m, altimeterSetting_Pa }) =>
    pressureAt_Pa(elevation_m + heightOfPressure_m(altimeterSetting_Pa)),
});

export const indicationChange = defineQuantity({
  id: "altimeter-indication-change",
  title: "Change of an altimeter's indication when its setting is changed",
  inputs: [
    ALTIMETER_SETTING_Pa,
    { ...ALTIMETER_SETTING_Pa, name: "newAltimeterSetting_Pa", meaning: "altimeter setting afterwards" },
  ],
  output: { name: "indicationChange_m", unit: "m" },
  formula: "standard altitude of the setting before − standard altitude of the setting after",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ altimeterSetting_Pa, newAltimeterSetting_Pa }) =>
    heightOfPressure_m(altimeterSetting_Pa) - heightOfPressure_m(newAltimeterSetting_Pa),
});

export const reportedQnh = defineQuantity({
  id: "reported-qnh",
  title: "QNH as a weather report gives it",
  inputs: [ALTIMETER_SETTING_Pa],
  output: { name: "reportedQnh_Pa", unit: "Pa" },
  formula: "rounded down to the whole hectopascal",
  sources: [
    {
      title: "WMO-No. 306, Manual on Codes, FM 15 METAR; ICAO Annex 3",
      locator: "pressure group",
      status: "from memory",
    },
  ],
  compute: ({ altimeterSetting_Pa }) => Math.floor(altimeterSetting_Pa / 100) * 100,
});

const SCALE_LOW_PA = toSI(28, "inHg");
const SCALE_HIGH_PA = toSI(31, "inHg");

export const settingBeyondScale = defineQuantity({
  id: "altimeter-setting-beyond-scale",
  title: "How far an altimeter setting lies outside 28.00 to 31.00 inHg",
  inputs: [ALTIMETER_SETTING_Pa],
  output: { name: "beyondScale_Pa", unit: "Pa" },
  formula: "below zero under 28.00 inHg, above zero over 31.00 inHg, zero between",
  sources: [{ ...AIM, locator: "7-2-2 a and b" }],
  notes: [
    "Outside the scale many altimeters cannot be set; above 31.00 the true altitude is higher than shown.",
  ],
  compute: ({ altimeterSetting_Pa }) =>
    Math.min(0, altimeterSetting_Pa - SCALE_LOW_PA) + Math.max(0, altimeterSetting_Pa - SCALE_HIGH_PA),
});

const CHECK_LIMIT_M = toSI(75, "ft");

export const altimeterCheckMargin = defineQuantity({
  id: "altimeter-check-margin",
  title: "What is left of the 75 ft of a preflight altimeter check",
  inputs: [
    ELEVATION_m,
    {
      name: "indicatedAltitude_m",
      unit: "m",
      range: [-1000, 10_000],
      meaning: "what the altimeter shows at the place",
    },
  ],
  output: { name: "margin_m", unit: "m" },
  formula: "75 ft − |indicated − elevation|",
  sources: [{ ...AIM, locator: "7-2-3", status: "common practice" }],
  notes: ["Guidance, not a limit of Part 91."],
  compute: ({ elevation_m, indicatedAltitude_m }) =>
    CHECK_LIMIT_M - Math.abs(indicatedAltitude_m - elevation_m),
});

const FLIGHT_LEVEL_BANDS = [
  { from_inHg: 29.92, adjustment_ft: 0 },
  { from_inHg: 29.42, adjustment_ft: 500 },
  { from_inHg: 28.92, adjustment_ft: 1000 },
  { from_inHg: 28.42, adjustment_ft: 1500 },
  { from_inHg: 27.92, adjustment_ft: 2000 },
] as const;

export const flightLevelAdjustment = defineQuantity({
  id: "flight-level-adjustment",
  title: "What a low altimeter setting adds to the lowest usable flight level",
  inputs: [
    {
      name: "altimeterSetting_Pa",
      unit: "Pa",
      range: [toSI(27.92, "inHg"), 110_000],
      meaning: "lowest altimeter setting along the route",
    },
  ],
  output: { name: "adjustment_m", unit: "m" },
  formula: "0 ft from 29.92 inHg, 500 from 29.42, 1,000 from 28.92, 1,500 from 28.42, 2,000 from 27.92",
  sources: [
    {
      title: "FAA Order JO 7110.65, lowest usable flight level (compare 14 CFR 91.121)",
      locator: "Table 4-5-3",
      status: "published",
    },
  ],
  compute: ({ altimeterSetting_Pa }) => {
    const band = FLIGHT_LEVEL_BANDS.find(({ from_inHg }) => altimeterSetting_Pa >= toSI(from_inHg, "inHg"));
    return toSI(band?.adjustment_ft ?? Number.NaN, "ft");
  },
});
