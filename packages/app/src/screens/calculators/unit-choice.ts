import { type Dimension, UNITS, type UnitId } from "@witnessmark/engine";
import type { Preferences } from "../../preferences/preferences.ts";

/** The unit that the trade reads a dimension in, where the name says nothing nearer. */
const TRADE: Readonly<Record<Dimension, UnitId>> = {
  pressure: "bar",
  temperature: "degC",
  length: "m",
  area: "m2",
  mass: "kg",
  volume: "L",
  speed: "kt",
  time: "h",
  angle: "deg",
  frequency: "rpm",
  voltage: "V",
  current: "A",
  charge: "Ah",
  density: "kgPerL",
  "volume-flow": "LPerMin",
  "mass-flow": "kgPerH",
  force: "N",
  torque: "Nm",
  "mass-moment": "kgm",
  "floor-load": "kgPerM2",
  power: "kW",
  ratio: "1",
  count: "count",
};

/** What a name says of the unit it is read in. A person's own choice of a length is for gauges, not for heights. */
const BY_NAME: readonly (readonly [RegExp, UnitId])[] = [
  [
    /(altitude|elevation|height|beyondScale|indication|adjustment|freezingLevel|cloudBase|level)\w*_m$/i,
    "ft",
  ],
  [/(qnh|setting|stationPressure|vapour|ambient|tracheal|alveolar|oxygenPressure)\w*_Pa$/i, "hPa"],
  [/julian\w*_s$/i, "d"],
  [/reaction\w*_s$/i, "s"],
  [/rateOfClimb\w*_mPerS$|descent\w*_mPerS$/i, "ftPerMin"],
  [/endurance\w*_m3$/i, "L"],
  [/density\w*_kgPerM3$/i, "kgPerM3"],
];

/**
 * The unit that a field of a calculator begins with.
 *
 * @param name registered, with its unit at the end: `elevation_m`
 */
export function startUnit(name: string, unit: UnitId, chosen: Preferences["units"]): UnitId {
  const { dimension } = UNITS[unit];
  const byName = BY_NAME.find(
    ([pattern, to]) => pattern.test(name) && UNITS[to].dimension === dimension,
  )?.[1];
  return byName ?? chosen[dimension] ?? TRADE[dimension];
}

/** How a unit is offered: its sign, or what it is where it has none. */
export const unitName = (unit: UnitId): string => UNITS[unit].symbol || (unit === "1" ? "plain" : "number");
