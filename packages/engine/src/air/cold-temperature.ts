import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { roundToSafeSide } from "../units/round.ts";
import { ELEVATION_m } from "./inputs.ts";

const DOC_8168: QuantitySource = {
  title: "ICAO Doc 8168, altimeter corrections for temperature; formula of the FAA's cold temperature table",
  locator: "d = H (15 − t0) / (273 + t0 − 0.5 L (H + Hss)), L = 0.00198 °C/ft",
  status: "published",
};

const AIM_COLD: QuantitySource = {
  title: "FAA Aeronautical Information Manual, ICAO Cold Temperature Error Table",
  edition: "2021, 2023",
  locator: "chapter 7 section 3, TBL 7-3-1 (7-2-3 in older editions)",
  status: "published",
};

const LAPSE_degCPerFt = 0.00198;
const FIVE_THOUSAND_FT = 5000;

/** The formula of ICAO Doc 8168, in its own units. */
const error_ft = (height_ft: number, temperature_degC: number, elevation_ft: number): number => {
  const atSeaLevel_degC = temperature_degC + LAPSE_degCPerFt * elevation_ft;
  const mean = 273 + atSeaLevel_degC - 0.5 * LAPSE_degCPerFt * (height_ft + elevation_ft);
  return Math.max(0, (height_ft * (15 - atSeaLevel_degC)) / mean);
};

const HEIGHT_ABOVE_AIRPORT_m = {
  name: "heightAboveAirport_m",
  unit: "m",
  range: [0, toSI(15_000, "ft")],
  meaning: "height above the airport that gives the altimeter setting",
} as const;

const AIRPORT_TEMPERATURE_K = {
  name: "reportedTemperature_K",
  unit: "K",
  range: [203.15, 313.15],
  meaning: "temperature reported at that airport",
} as const;

const ADDITION = "Is added to published altitudes, never to an altimeter setting.";

export const coldTemperatureError = defineQuantity({
  id: "cold-temperature-error",
  title: "How much an altimeter shows too much in cold air, by the formula",
  inputs: [HEIGHT_ABOVE_AIRPORT_m, AIRPORT_TEMPERATURE_K, ELEVATION_m],
  output: { name: "correction_m", unit: "m" },
  formula:
    "d = H (15 − t0) / (273 + t0 − 0.00099 (H + elevation)) ft, t0 = t + 0.00198 elevation; at least 0",
  sources: [DOC_8168],
  notes: [ADDITION, "US pilots use the table of the AIM, which asks for as much or more."],
  compute: ({ heightAboveAirport_m, reportedTemperature_K, elevation_m }) =>
    toSI(
      error_ft(
        fromSI(heightAboveAirport_m, "ft"),
        fromSI(reportedTemperature_K, "degC"),
        fromSI(elevation_m, "ft"),
      ),
      "ft",
    ),
});

const TABLE_HEIGHTS_ft = [
  200,
  300,
  400,
  500,
  600,
  700,
  800,
  900,
  1000,
  1500,
  2000,
  3000,
  4000,
  FIVE_THOUSAND_FT,
];
const TABLE_TEMPERATURES_degC = [-50, -40, -30, -20, -10, 0, 10];
const NOISE = 1e-9;

export const coldTemperatureTable = defineQuantity({
  id: "cold-temperature-table",
  title: "Cold temperature correction as the table of the AIM gives it",
  inputs: [HEIGHT_ABOVE_AIRPORT_m, { ...AIRPORT_TEMPERATURE_K, range: [223.15, 313.15] }],
  output: { name: "correction_m", unit: "m" },
  formula:
    "the cell at the next higher height and the next colder temperature: formula for sea level, up to 10 ft",
  sources: [AIM_COLD, DOC_8168],
  notes: [
    ADDITION,
    "Above 5,000 ft the column for 5,000 ft is used, as the AIM has it; nothing is said below −50 °C.",
    "From 10 °C up the row for 10 °C is used up to 15 °C; in warmer air there is no correction.",
  ],
  compute: ({ heightAboveAirport_m, reportedTemperature_K }) => {
    const asked_ft = fromSI(heightAboveAirport_m, "ft");
    const asked_degC = fromSI(reportedTemperature_K, "degC");
    if (asked_degC > 15 || asked_ft === 0) return 0;
    const height_ft = TABLE_HEIGHTS_ft.find((height) => height >= asked_ft - NOISE) ?? FIVE_THOUSAND_FT;
    const row_degC = TABLE_TEMPERATURES_degC.findLast((row) => row <= asked_degC + NOISE);
    return toSI(roundToSafeSide(error_ft(height_ft, row_degC ?? Number.NaN, 0), 10, "up"), "ft");
  },
});

export const coldTemperatureRule = defineQuantity({
  id: "cold-temperature-rule",
  title: "Cold temperature correction by the rule of 4 % for each 10 °C below standard",
  inputs: [
    HEIGHT_ABOVE_AIRPORT_m,
    { ...AIRPORT_TEMPERATURE_K, range: [258.15, 313.15] },
    { ...ELEVATION_m, range: [-600, 4500] },
  ],
  output: { name: "correction_m", unit: "m" },
  formula:
    "4 ft for each 1,000 ft and each °C below standard at the airport (15 °C − 2 °C per 1,000 ft); at least 0",
  sources: [{ ...DOC_8168, locator: "rule of 4 %, above −15 °C", status: "common practice" }],
  crossCheckOnly: true,
  notes: ["Not below −15 °C."],
  compute: ({ heightAboveAirport_m, reportedTemperature_K, elevation_m }) => {
    const standard_degC = 15 - (2 * fromSI(elevation_m, "ft")) / 1000;
    return heightAboveAirport_m * 0.004 * Math.max(0, standard_degC - fromSI(reportedTemperature_K, "degC"));
  },
});

/** To what a correction may be rounded before it is added. */
export interface ColdCorrectionRounding {
  /** For segments before the final one: to the nearest hundred feet, or up. */
  readonly segments_m: readonly number[];
  /** For a decision altitude or minimum descent altitude: as it is, or up to the hundred; never down. */
  readonly minimums_m: readonly number[];
}

const HUNDRED_FT_M = toSI(100, "ft");

/** @source FAA AIM chapter 7 section 3, acceptable use of the table */
export function coldCorrectionRounding(correction_m: number): ColdCorrectionRounding {
  const up_m = roundToSafeSide(correction_m, HUNDRED_FT_M, "up");
  const down_m = roundToSafeSide(correction_m, HUNDRED_FT_M, "down");
  const nearest_m = up_m - correction_m <= correction_m - down_m ? up_m : down_m;
  const either = (a: number, b: number): readonly number[] => (a === b ? [a] : [a, b]);
  return { segments_m: either(nearest_m, up_m), minimums_m: either(correction_m, up_m) };
}
