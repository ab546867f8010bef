import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { beginningOf_ms } from "./calendar.ts";
import { CIVIL_TWILIGHT_rad, SUN_EDGE_ON_HORIZON_rad } from "./sun-crossings.ts";
import { noonOf_ms, passageOf } from "./sun-day.ts";
import { DATE, LATITUDE_rad, LONGITUDE_rad, MEEUS } from "./sun-position.ts";

const ALMANAC: QuantitySource = {
  title: "US Naval Observatory, definitions of rise, set and twilight",
  locator: "sunrise and sunset: centre 90° 50′ from the zenith; civil twilight: 96°",
  status: "published",
};

const INPUTS = [
  LATITUDE_rad,
  LONGITUDE_rad,
  ...DATE,
  {
    name: "utcOffset_s",
    unit: "s",
    range: [-64_800, 64_800],
    meaning: "how far the clock of the place is ahead of universal time",
  },
] as const;

interface Given {
  readonly latitude_rad: number;
  readonly longitude_rad: number;
  readonly year_count: number;
  readonly month_count: number;
  readonly day_count: number;
  readonly utcOffset_s: number;
}

const NOTES = [
  "The horizon of the sea; the height of the place is left out, as in almanacs.",
  "Of the day of the sun whose noon falls on the date; a time past 24 h lies on the next date.",
] as const;

function afterMidnight_s(id: string, given: Given, way: "up" | "down", elevation_rad: number): number {
  const date = { year: given.year_count, month: given.month_count, day: given.day_count };
  const midnight_ms = beginningOf_ms(date, id) - given.utcOffset_s * 1000;
  const at = passageOf(given, noonOf_ms(given, date, given), way, elevation_rad);
  if (typeof at === "number") return (at - midnight_ms) / 1000;
  throw new InputError("out-of-range", "date", {
    quantity: id,
    expected: "a date on which the sun passes this height",
    received: `a sun that ${at} it ${way === "up" ? "from midnight to noon" : "from noon to midnight"}`,
  });
}

export const sunrise = defineQuantity({
  id: "sunrise",
  title: "Sunrise, after local midnight",
  inputs: INPUTS,
  output: { name: "sunrise_s", unit: "s" },
  formula: "when the sun's centre is 50′ below the horizon on its way up",
  sources: [ALMANAC, MEEUS],
  notes: NOTES,
  compute: (given) => afterMidnight_s("sunrise", given, "up", SUN_EDGE_ON_HORIZON_rad),
});

export const sunset = defineQuantity({
  id: "sunset",
  title: "Sunset, after local midnight",
  inputs: INPUTS,
  output: { name: "sunset_s", unit: "s" },
  formula: "when the sun's centre is 50′ below the horizon on its way down",
  sources: [ALMANAC, MEEUS],
  notes: NOTES,
  compute: (given) => afterMidnight_s("sunset", given, "down", SUN_EDGE_ON_HORIZON_rad),
});

export const civilDawn = defineQuantity({
  id: "civil-dawn",
  title: "Beginning of morning civil twilight, after local midnight",
  inputs: INPUTS,
  output: { name: "civilDawn_s", unit: "s" },
  formula: "when the sun's centre is 6° below the horizon on its way up",
  sources: [ALMANAC, MEEUS],
  notes: NOTES,
  compute: (given) => afterMidnight_s("civil-dawn", given, "up", CIVIL_TWILIGHT_rad),
});

export const civilDusk = defineQuantity({
  id: "civil-dusk",
  title: "End of evening civil twilight, after local midnight",
  inputs: INPUTS,
  output: { name: "civilDusk_s", unit: "s" },
  formula: "when the sun's centre is 6° below the horizon on its way down",
  sources: [ALMANAC, MEEUS],
  notes: NOTES,
  compute: (given) => afterMidnight_s("civil-dusk", given, "down", CIVIL_TWILIGHT_rad),
});
