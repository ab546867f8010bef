/** What the quantities of this folder have in common. */

export const ELEVATION_m = {
  name: "elevation_m",
  unit: "m",
  range: [-600, 9000],
  meaning: "elevation above mean sea level",
} as const;

export const ALTIMETER_SETTING_Pa = {
  name: "altimeterSetting_Pa",
  unit: "Pa",
  range: [85_000, 110_000],
  meaning: "altimeter setting (QNH)",
} as const;

export const STATION_PRESSURE_Pa = {
  name: "stationPressure_Pa",
  unit: "Pa",
  range: [30_000, 120_000],
  meaning: "pressure of the air at the place itself (QFE), not the altimeter setting",
} as const;

export const PRESSURE_ALTITUDE_m = {
  name: "pressureAltitude_m",
  unit: "m",
  range: [-1500, 20_000],
  meaning: "pressure altitude",
} as const;

export const OAT_K = {
  name: "oat_K",
  unit: "K",
  range: [183.15, 333.15],
  meaning: "outside air temperature",
} as const;
