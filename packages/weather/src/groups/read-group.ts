import { notUnderstood } from "../aspect.ts";
import { readClouds } from "./clouds.ts";
import { readForecastExtras } from "./forecast-extras.ts";
import { guessAspects } from "./guess-aspects.ts";
import { readPressure } from "./pressure.ts";
import { type GroupRead, type Place, type Reader, tokenAt } from "./read.ts";
import { readRunwayState } from "./runway-state.ts";
import { readRunwayVisualRange } from "./runway-visual-range.ts";
import { readSeaAndColour } from "./sea-and-colour.ts";
import { readTemperature } from "./temperature.ts";
import { readVisibility } from "./visibility.ts";
import { readWeather } from "./weather-code.ts";
import { readSector, readWind } from "./wind.ts";
import { readWindShear } from "./wind-shear.ts";

const READERS: readonly Reader[] = [
  readForecastExtras,
  readWind,
  readSector,
  readVisibility,
  readRunwayVisualRange,
  readRunwayState,
  readClouds,
  readTemperature,
  readPressure,
  readWindShear,
  readSeaAndColour,
  readWeather,
];

/** The group at a place. What no reader takes is told as not understood, with what it may have been about. */
export function readGroup(place: Place): GroupRead {
  for (const read of READERS) {
    const group = read(place);
    if (group !== undefined) return group;
  }
  const token = tokenAt(place);
  return { count: 1, fault: notUnderstood("not understood", ...guessAspects(token)) };
}
