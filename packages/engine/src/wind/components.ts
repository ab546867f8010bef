import { defineQuantity } from "../registry/define-quantity.ts";
import { arcShares, onCircle_rad } from "./circle.ts";
import {
  RUNWAY_HEADING_rad,
  SECTOR_FROM_rad,
  SECTOR_TO_rad,
  WIND_FROM_rad,
  WIND_SPEED_mPerS,
  WIND_TRIANGLE,
} from "./inputs.ts";

export const headwindComponent = defineQuantity({
  id: "headwind-component",
  title: "Headwind on a runway; below zero it is a tailwind",
  inputs: [RUNWAY_HEADING_rad, WIND_FROM_rad, WIND_SPEED_mPerS],
  output: { name: "headwind_mPerS", unit: "mPerS" },
  formula: "speed cos(wind − runway)",
  sources: [WIND_TRIANGLE],
  notes: ["Both directions from the same north: reports and forecasts are true, a tower's wind is magnetic."],
  compute: ({ runwayHeading_rad, windFrom_rad, windSpeed_mPerS }) =>
    windSpeed_mPerS * Math.cos(windFrom_rad - runwayHeading_rad),
});

export const crosswindComponent = defineQuantity({
  id: "crosswind-component",
  title: "Crosswind on a runway; above zero it comes from the right",
  inputs: [RUNWAY_HEADING_rad, WIND_FROM_rad, WIND_SPEED_mPerS],
  output: { name: "crosswind_mPerS", unit: "mPerS" },
  formula: "speed sin(wind − runway)",
  sources: [WIND_TRIANGLE],
  notes: ["A limit is compared with the gust, where one is reported."],
  compute: ({ runwayHeading_rad, windFrom_rad, windSpeed_mPerS }) =>
    windSpeed_mPerS * Math.sin(windFrom_rad - runwayHeading_rad),
});

export const sectorHeadwind = defineQuantity({
  id: "sector-headwind",
  title: "Least headwind of a wind that varies between two directions; below zero it is a tailwind",
  inputs: [RUNWAY_HEADING_rad, SECTOR_FROM_rad, SECTOR_TO_rad, WIND_SPEED_mPerS],
  output: { name: "headwind_mPerS", unit: "mPerS" },
  formula: "least of speed cos(direction − runway), clockwise through the sector",
  sources: [{ title: "Least favourable direction of a reported sector", status: "common practice" }],
  notes: ["Take the steady wind for a headwind that is counted on, the gust for a tailwind."],
  compute: ({ runwayHeading_rad, sectorFrom_rad, sectorTo_rad, windSpeed_mPerS }) =>
    windSpeed_mPerS *
    arcShares({ from_rad: sectorFrom_rad, to_rad: sectorTo_rad }, runwayHeading_rad).leastAhead_1,
});

export const sectorCrosswind = defineQuantity({
  id: "sector-crosswind",
  title: "Greatest crosswind of a wind that varies between two directions, from whichever side",
  inputs: [RUNWAY_HEADING_rad, SECTOR_FROM_rad, SECTOR_TO_rad, WIND_SPEED_mPerS],
  output: { name: "crosswind_mPerS", unit: "mPerS" },
  formula: "greatest of |speed sin(direction − runway)|, clockwise through the sector",
  sources: [{ title: "Least favourable direction of a reported sector", status: "common practice" }],
  compute: ({ runwayHeading_rad, sectorFrom_rad, sectorTo_rad, windSpeed_mPerS }) =>
    windSpeed_mPerS *
    arcShares({ from_rad: sectorFrom_rad, to_rad: sectorTo_rad }, runwayHeading_rad).mostAcross_1,
});

const METEOROLOGICAL_CONVENTION = {
  title:
    "Meteorological convention: u towards the east, v towards the north, direction is where the wind is from",
  status: "common practice",
} as const;

export const windTowardsEast = defineQuantity({
  id: "wind-towards-east",
  title: "Part of the wind that blows towards the east (u)",
  inputs: [WIND_FROM_rad, WIND_SPEED_mPerS],
  output: { name: "east_mPerS", unit: "mPerS" },
  formula: "u = −speed sin(direction)",
  sources: [METEOROLOGICAL_CONVENTION],
  compute: ({ windFrom_rad, windSpeed_mPerS }) => -windSpeed_mPerS * Math.sin(windFrom_rad),
});

export const windTowardsNorth = defineQuantity({
  id: "wind-towards-north",
  title: "Part of the wind that blows towards the north (v)",
  inputs: [WIND_FROM_rad, WIND_SPEED_mPerS],
  output: { name: "north_mPerS", unit: "mPerS" },
  formula: "v = −speed cos(direction)",
  sources: [METEOROLOGICAL_CONVENTION],
  compute: ({ windFrom_rad, windSpeed_mPerS }) => -windSpeed_mPerS * Math.cos(windFrom_rad),
});

export const trueDirection = defineQuantity({
  id: "true-direction",
  title: "True direction of a magnetic one",
  inputs: [
    {
      name: "magneticDirection_rad",
      unit: "rad",
      range: [0, 2 * Math.PI],
      meaning: "direction from magnetic north, clockwise",
    },
    {
      name: "variation_rad",
      unit: "rad",
      range: [-Math.PI, Math.PI],
      meaning: "magnetic variation, east above zero",
    },
  ],
  output: { name: "trueDirection_rad", unit: "rad" },
  formula: "true = magnetic + variation, on the circle",
  sources: [{ title: "Definition of magnetic variation", status: "common practice" }],
  compute: ({ magneticDirection_rad, variation_rad }) => onCircle_rad(magneticDirection_rad + variation_rad),
});
