import type { FieldWeather } from "@witnessmark/assess";
import { weatherText } from "@witnessmark/weather";

/** What falls and wets a surface; ice crystals do not. */
const WETS: ReadonlySet<string> = new Set(["DZ", "RA", "SN", "SG", "PL", "GR", "GS", "UP"]);

/** What may fall on a field at its time, in words; undefined where nothing is reported or forecast. */
export function fallingThere({ weather }: Pick<FieldWeather, "weather">): string | undefined {
  const falling = (weather.value ?? []).filter(
    ({ phenomena, vicinity }) => vicinity !== true && phenomena.some((one) => WETS.has(one)),
  );
  const words = [...new Set(falling.map((code) => weatherText(code)))];
  return words.length === 0 ? undefined : words.join(", ");
}
