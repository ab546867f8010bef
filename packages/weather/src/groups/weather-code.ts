import { doubtful, impossible, notObserved, notUnderstood } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";

export const DESCRIPTORS = {
  MI: "shallow",
  PR: "partial",
  BC: "patches",
  DR: "low drifting",
  BL: "blowing",
  SH: "showers",
  TS: "thunderstorm",
  FZ: "freezing",
} as const;
export type Descriptor = keyof typeof DESCRIPTORS;

export const PRECIPITATION = {
  DZ: "drizzle",
  RA: "rain",
  SN: "snow",
  SG: "snow grains",
  IC: "ice crystals",
  PL: "ice pellets",
  GR: "hail",
  GS: "small hail or snow pellets",
  UP: "unknown precipitation",
} as const;
export const OBSCURATIONS = {
  BR: "mist",
  FG: "fog",
  FU: "smoke",
  VA: "volcanic ash",
  DU: "dust",
  SA: "sand",
  HZ: "haze",
  PY: "spray",
} as const;
export const OTHERS = {
  PO: "dust whirls",
  SQ: "squall",
  FC: "funnel cloud",
  SS: "sandstorm",
  DS: "dust storm",
} as const;
export const PHENOMENA = { ...PRECIPITATION, ...OBSCURATIONS, ...OTHERS } as const;
export type Phenomenon = keyof typeof PHENOMENA;

/** One present-weather group. */
export interface WeatherCode {
  /** As it stands in the report, without RE. */
  readonly code: string;
  /** Only where the code can say one: of precipitation, dust storms, sandstorms and funnel clouds. */
  readonly intensity?: "light" | "moderate" | "heavy";
  readonly vicinity?: true;
  readonly descriptor?: Descriptor;
  readonly phenomena: readonly Phenomenon[];
}

const FORM =
  /^([-+]|VC)?(MI|PR|BC|DR|BL|SH|TS|FZ)?((?:DZ|RA|SN|SG|IC|PL|GR|GS|UP|BR|FG|FU|VA|DU|SA|HZ|PY|PO|SQ|FC|SS|DS)*)$/u;

/** What may follow each descriptor; the descriptors that may stand alone are in `WHOLE`. */
const AFTER: Readonly<Record<Descriptor, readonly Phenomenon[]>> = {
  MI: ["FG"],
  PR: ["FG"],
  BC: ["FG"],
  DR: ["SN", "SA", "DU"],
  BL: ["SN", "SA", "DU", "PY"],
  SH: ["RA", "SN", "PL", "GR", "GS", "UP"],
  TS: ["RA", "SN", "PL", "GR", "GS", "UP"],
  FZ: ["DZ", "RA", "UP", "FG", "PL", "SN"],
};
const IN_VICINITY = new Set(["TS", "SH", "FG", "PO", "FC", "VA", "DS", "SS", "BLSN", "BLSA", "BLDU"]);

const isPrecipitation = (phenomenon: Phenomenon): boolean => Object.hasOwn(PRECIPITATION, phenomenon);
export const precipitates = ({ phenomena, descriptor, vicinity }: WeatherCode): boolean =>
  vicinity === undefined && descriptor !== "BL" && descriptor !== "DR" && phenomena.some(isPrecipitation);

/** Whether the parts of a code may stand together. @source FAA-H-8083-28B, table 27-4 and chapter 24 */
function holds(sign: string, descriptor: Descriptor | undefined, phenomena: readonly Phenomenon[]): boolean {
  if (sign === "VC") return IN_VICINITY.has(`${descriptor ?? ""}${phenomena.join("")}`);
  if (phenomena.length === 0) return descriptor === "TS" && sign === "";
  if (new Set(phenomena).size !== phenomena.length) return false;
  const falling = phenomena.filter(isPrecipitation).length;
  const drifting = descriptor === "BL" || descriptor === "DR";
  if (falling === 0 || drifting) {
    if (phenomena.length > 1) return false;
    const signed = ["FC", "SS", "DS"].includes(phenomena[0] ?? "");
    if (sign !== "" && !(signed && (sign === "+" || phenomena[0] !== "FC"))) return false;
  } else if (falling !== phenomena.length || phenomena.length > 3) return false;
  if (descriptor === undefined) return true;
  return drifting || falling === 0
    ? AFTER[descriptor].includes(phenomena[0] ?? "BR")
    : phenomena.some((one) => AFTER[descriptor].includes(one));
}

const STRENGTH = { "-": "light", "+": "heavy" } as const;

/** The group as a weather code, or `undefined` when no table knows it. */
export function weatherCodeOf(text: string): WeatherCode | undefined {
  const found = FORM.exec(text);
  if (found === null || text === "") return undefined;
  const [, sign = "", descriptorText, joined = ""] = found;
  // FORM admits the keys of these two tables and nothing else
  const descriptor = descriptorText as Descriptor | undefined;
  const phenomena = (joined.match(/../gu) ?? []) as readonly Phenomenon[];
  if (!holds(sign, descriptor, phenomena)) return undefined;
  const graded =
    sign !== "VC" &&
    descriptor !== "BL" &&
    descriptor !== "DR" &&
    phenomena.some(
      (one) => isPrecipitation(one) || one === "SS" || one === "DS" || (one === "FC" && sign === "+"),
    );
  return {
    code: text,
    ...(graded ? { intensity: sign === "+" || sign === "-" ? STRENGTH[sign] : "moderate" } : {}),
    ...(sign === "VC" ? { vicinity: true } : {}),
    ...(descriptor === undefined ? {} : { descriptor }),
    phenomena,
  };
}

/** Freezing mist is no valid code, and what it tries to say is a hazard. */
const FREEZING_MIST: WeatherCode = { code: "FZBR", descriptor: "FZ", phenomena: ["BR"] };

export const readWeather: Reader = (place) => {
  const token = tokenAt(place);
  if (token === "//")
    return faulty(notObserved("present weather not observed", "weather"), { is: "weather not observed" });
  if (token === "NSW") return used({ is: "no significant weather" });
  if (token === "FZBR")
    return faulty(
      doubtful(
        "not a valid combination; freezing mist at or below 0 C treated as an icing hazard",
        "weather",
      ),
      { is: "weather", weather: FREEZING_MIST },
    );
  if (token.startsWith("RE") && token.length > 2) {
    if (token === "RE//") return faulty(notObserved("recent weather not observed", "weather"));
    const recent = weatherCodeOf(token.slice(2));
    if (recent !== undefined) return used({ is: "recent weather", weather: recent });
  }
  const weather = weatherCodeOf(token);
  if (weather !== undefined) {
    const before = place.tokens[place.at - 1] ?? "";
    if (/SM[+-]$/u.test(before) && precipitates(weather)) {
      const sign = before.at(-1) ?? "";
      return faulty(doubtful(`intensity may have been separated (${sign}${token}?)`, "weather"), {
        is: "weather",
        weather,
      });
    }
    return used({ is: "weather", weather });
  }
  if (FORM.test(token) && token !== "")
    return faulty(impossible("a combination of weather that no table knows; not used", "weather"));
  if (/^(?:[-+]|VC)?(?:(?:MI|PR|BC|DR|BL|SH|TS|FZ|DZ|RA|SN|SG|IC|PL|GR|GS|UP|BR|FG)){2,4}\w?$/u.test(token))
    return faulty(notUnderstood("weather not understood", "weather"));
  return undefined;
};
