import type { QuantitySource } from "../registry/quantity.ts";

/** What the quantities of this folder have in common. Directions: clockwise from north, where the wind comes from. */

const CIRCLE_RANGE_rad = [0, 2 * Math.PI] as const;

export const RUNWAY_HEADING_rad = {
  name: "runwayHeading_rad",
  unit: "rad",
  range: CIRCLE_RANGE_rad,
  meaning: "heading of the runway, from the same north as the wind",
} as const;

export const WIND_FROM_rad = {
  name: "windFrom_rad",
  unit: "rad",
  range: CIRCLE_RANGE_rad,
  meaning: "direction that the wind comes from; true in reports and forecasts, magnetic from a tower",
} as const;

export const SECTOR_FROM_rad = {
  name: "sectorFrom_rad",
  unit: "rad",
  range: CIRCLE_RANGE_rad,
  meaning: "where the sector of a variable wind begins, going clockwise",
} as const;

export const SECTOR_TO_rad = {
  name: "sectorTo_rad",
  unit: "rad",
  range: CIRCLE_RANGE_rad,
  meaning: "where the sector of a variable wind ends, going clockwise",
} as const;

export const WIND_SPEED_mPerS = {
  name: "windSpeed_mPerS",
  unit: "mPerS",
  range: [0, 120],
  meaning: "speed of the wind",
} as const;

export const CROSSWIND_LIMIT_mPerS = {
  name: "crosswindLimit_mPerS",
  unit: "mPerS",
  range: [0, 60],
  meaning: "crosswind that must not be exceeded",
} as const;

export const WIND_TRIANGLE: QuantitySource = {
  title: "Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25",
  edition: "C (2023)",
  locator: "chapter 11, crosswind and headwind component chart (trigonometry)",
  status: "published",
};
