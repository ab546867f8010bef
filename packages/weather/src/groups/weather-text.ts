import { PHENOMENA, precipitates, type WeatherCode } from "./weather-code.ts";

const VICINITY = "in the vicinity (5 to 10 SM)";

const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;

/** Shallow fog, patches of fog, blowing snow, freezing fog: the descriptor before what it describes. */
function described({ descriptor, phenomena }: WeatherCode): string {
  const what = list(phenomena.map((one) => PHENOMENA[one]));
  if (descriptor === undefined) return what;
  const before = {
    MI: "shallow ",
    PR: "partial ",
    BC: "patches of ",
    DR: "low drifting ",
    BL: "blowing ",
    FZ: "freezing ",
    SH: "shower of ",
    TS: "thunderstorm with ",
  }[descriptor];
  return `${before}${what}`;
}

/** One group in words: "+TSRA" is a thunderstorm with heavy rain, not a heavy thunderstorm. */
export function weatherText(weather: WeatherCode): string {
  const { descriptor, phenomena, intensity, vicinity, code } = weather;
  if (vicinity !== undefined) {
    const what = descriptor === "TS" ? "thunderstorm" : descriptor === "SH" ? "showers" : described(weather);
    return `${what} ${VICINITY}`;
  }
  if (code === "+FC") return "tornado or waterspout";
  if (descriptor === "TS" && phenomena.length === 0) return "thunderstorm without precipitation";
  const strength = intensity === undefined ? "" : `${intensity} `;
  if (!precipitates(weather)) return `${strength}${described(weather)}`;
  const names = phenomena.map((one) => PHENOMENA[one]);
  if (descriptor === "TS") return `thunderstorm with ${strength}${list(names)}`;
  if (descriptor === "SH")
    return names.length === 1 ? `${strength}${names[0] ?? ""} shower` : `${strength}shower of ${list(names)}`;
  return list(
    names.map((name, index) => `${strength}${descriptor === "FZ" && index === 0 ? "freezing " : ""}${name}`),
  );
}
