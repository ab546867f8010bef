import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { toSI } from "../units/convert.ts";
import { beginningOf_ms, julianDayOf_d } from "./calendar.ts";
import { sunInSky, sunPosition } from "./sun-position-model.ts";

export const MEEUS: QuantitySource = {
  title: "Meeus, Astronomical Algorithms; the method of the NOAA solar calculator",
  edition: "2nd edition, 1998",
  locator: "chapter 25, low accuracy; chapters 7, 12, 13, 22",
  status: "published",
};

export const DATE = [
  { name: "year_count", unit: "count", range: [1901, 2099], meaning: "year" },
  { name: "month_count", unit: "count", range: [1, 12], meaning: "month, 1 to 12" },
  { name: "day_count", unit: "count", range: [1, 31], meaning: "day of the month" },
] as const;

/** 1901 to 2099: beyond them the series are as good, and no flight is planned. */
export const JULIAN_DAY_s = {
  name: "julianDay_s",
  unit: "s",
  range: [toSI(2_415_385.5, "d"), toSI(2_488_069.5, "d")],
  meaning: "Julian day with its fraction, universal time",
} as const;

export const LATITUDE_rad = {
  name: "latitude_rad",
  unit: "rad",
  range: [-Math.PI / 2, Math.PI / 2],
  meaning: "latitude, north above zero",
} as const;

export const LONGITUDE_rad = {
  name: "longitude_rad",
  unit: "rad",
  range: [-Math.PI, Math.PI],
  meaning: "longitude, east above zero",
} as const;

export const julianDay = defineQuantity({
  id: "julian-day",
  title: "Julian day of a date at its beginning",
  inputs: DATE,
  output: { name: "julianDay_s", unit: "s" },
  formula: "days since noon of 1 January −4712 (Gregorian calendar counted back), at 0 h",
  sources: [{ ...MEEUS, locator: "chapter 7" }],
  compute: ({ year_count, month_count, day_count }) =>
    toSI(
      julianDayOf_d(beginningOf_ms({ year: year_count, month: month_count, day: day_count }, "julian-day")),
      "d",
    ),
});

const days = (julianDay_s: number): number => julianDay_s / 86_400;

export const sunMeanLongitude = defineQuantity({
  id: "sun-mean-longitude",
  title: "Mean longitude of the sun",
  inputs: [JULIAN_DAY_s],
  output: { name: "meanLongitude_rad", unit: "rad" },
  formula: "L0 = 280.46646° + 36 000.76983° T + 0.0003032° T²",
  sources: [MEEUS],
  compute: ({ julianDay_s }) => toSI(sunPosition(days(julianDay_s)).meanLongitude_deg, "deg"),
});

export const sunMeanAnomaly = defineQuantity({
  id: "sun-mean-anomaly",
  title: "Mean anomaly of the sun",
  inputs: [JULIAN_DAY_s],
  output: { name: "meanAnomaly_rad", unit: "rad" },
  formula: "M = 357.52911° + 35 999.05029° T − 0.0001537° T²",
  sources: [MEEUS],
  compute: ({ julianDay_s }) => toSI(sunPosition(days(julianDay_s)).meanAnomaly_deg, "deg"),
});

export const sunEquationOfCentre = defineQuantity({
  id: "sun-equation-of-centre",
  title: "How far the sun is ahead of its mean place",
  inputs: [JULIAN_DAY_s],
  output: { name: "equationOfCentre_rad", unit: "rad" },
  formula: "C = (1.914602° − 0.004817° T) sin M + (0.019993° − 0.000101° T) sin 2M + 0.000289° sin 3M",
  sources: [MEEUS],
  compute: ({ julianDay_s }) => toSI(sunPosition(days(julianDay_s)).equationOfCentre_deg, "deg"),
});

export const sunApparentLongitude = defineQuantity({
  id: "sun-apparent-longitude",
  title: "Apparent longitude of the sun",
  inputs: [JULIAN_DAY_s],
  output: { name: "apparentLongitude_rad", unit: "rad" },
  formula: "λ = L0 + C − 0.00569° − 0.00478° sin Ω",
  sources: [MEEUS],
  compute: ({ julianDay_s }) => toSI(sunPosition(days(julianDay_s)).apparentLongitude_deg, "deg"),
});

export const sunRightAscension = defineQuantity({
  id: "sun-right-ascension",
  title: "Right ascension of the sun",
  inputs: [JULIAN_DAY_s],
  output: { name: "rightAscension_rad", unit: "rad" },
  formula: "tan α = cos ε sin λ / cos λ",
  sources: [MEEUS],
  compute: ({ julianDay_s }) => toSI(sunPosition(days(julianDay_s)).rightAscension_deg, "deg"),
});

export const sunDeclination = defineQuantity({
  id: "sun-declination",
  title: "Declination of the sun",
  inputs: [JULIAN_DAY_s],
  output: { name: "declination_rad", unit: "rad" },
  formula: "sin δ = sin ε sin λ",
  sources: [MEEUS],
  compute: ({ julianDay_s }) => toSI(sunPosition(days(julianDay_s)).declination_deg, "deg"),
});

export const sunElevation = defineQuantity({
  id: "sun-elevation",
  title: "Height of the sun's centre above the horizon, without refraction",
  inputs: [LATITUDE_rad, LONGITUDE_rad, JULIAN_DAY_s],
  output: { name: "elevation_rad", unit: "rad" },
  formula: "sin h = sin φ sin δ + cos φ cos δ cos H",
  sources: [MEEUS],
  notes: ["The horizon of the sea: mountains and the height of the observer are left out."],
  compute: ({ latitude_rad, longitude_rad, julianDay_s }) =>
    sunInSky({ latitude_rad, longitude_rad }, days(julianDay_s)).elevation_rad,
});

export const sunAzimuth = defineQuantity({
  id: "sun-azimuth",
  title: "True direction in which the sun stands",
  inputs: [LATITUDE_rad, LONGITUDE_rad, JULIAN_DAY_s],
  output: { name: "azimuth_rad", unit: "rad" },
  formula: "tan A = −sin H / (tan δ cos φ − cos H sin φ), clockwise from north",
  sources: [MEEUS],
  notes: ["A low sun along the runway is in the eyes of whoever lands towards it."],
  compute: ({ latitude_rad, longitude_rad, julianDay_s }) =>
    sunInSky({ latitude_rad, longitude_rad }, days(julianDay_s)).azimuth_rad,
});
