import { doubtful, type Fault, impossible, type Problem } from "./aspect.ts";
import { type Elements, settingsDisagree } from "./elements.ts";
import { type Group, problemOf } from "./group.ts";
import type { Part } from "./groups/part.ts";
import { precipitates, type WeatherCode } from "./groups/weather-code.ts";
import { inSector } from "./groups/wind.ts";

/** Groups of which there is one; two that differ contradict each other. */
const SINGLE: readonly { readonly is: Part["is"]; readonly fault: (lower: string) => Fault }[] = [
  { is: "wind", fault: () => doubtful("two winds that disagree; the stronger is shown", "wind", "gust") },
  {
    is: "visibility",
    fault: (lower) => doubtful(`two visibilities that disagree; take ${lower}`, "visibility"),
  },
  {
    is: "temperature",
    fault: () => impossible("two temperatures that disagree; neither is used", "temperature", "dew point"),
  },
  {
    is: "pressure",
    fault: () => impossible("two altimeter settings that disagree; neither is used", "pressure"),
  },
  { is: "sky", fault: () => doubtful("two statements on the sky that disagree", "ceiling") },
  { is: "sector", fault: () => doubtful("two sectors of the wind", "wind") },
  { is: "shear layer", fault: () => doubtful("two layers of wind shear", "wind") },
];

function disagree(is: Part["is"], groups: readonly Group[]): boolean {
  if (is !== "pressure") return new Set(groups.map(({ text }) => text)).size > 1;
  return settingsDisagree(groups.flatMap(({ part }) => (part?.is === "pressure" ? [part.setting] : [])));
}

const lowestText = (groups: readonly Group[]): string => {
  const metres = ({ part }: Group): number => (part?.is === "visibility" ? part.visibility.visibility_m : 0);
  return groups.toSorted((one, other) => metres(one) - metres(other))[0]?.text.replace("SM", " SM") ?? "";
};

function repeated(groups: readonly Group[], period: number | undefined): readonly Problem[] {
  return SINGLE.flatMap(({ is, fault }) => {
    const same = groups.filter(({ part }) => part?.is === is);
    if (same.length < 2 || !disagree(is, same)) return [];
    const text = same.map((group) => group.text).join(" / ");
    return [problemOf(text, fault(is === "visibility" ? lowestText(same) : ""), period)];
  });
}

const feet = (value_ft: number): string => `${value_ft.toLocaleString("en-US")} ft`;

function skyFaults(groups: readonly Group[], said: Elements): readonly (readonly [string, Fault])[] {
  const faults: (readonly [string, Fault])[] = [];
  const layers = groups.filter(({ part }) => part?.is === "cloud");
  const bases = said.clouds.map(({ base_ft }) => base_ft);
  const known = bases.filter((base) => base !== null);
  if (known.some((base, index) => base < (known[index - 1] ?? 0))) {
    const { ceiling } = said;
    const lowest = ceiling?.kind === "height" ? `; ceiling is the lowest, ${feet(ceiling.height_ft)}` : "";
    faults.push([
      layers.map(({ text }) => text).join(" "),
      doubtful(`layers out of order${lowest}`, "ceiling"),
    ]);
  }
  const statement = said.cavok ? "CAVOK" : said.sky;
  const hidden = said.verticalVisibility_ft !== undefined;
  if (statement !== undefined && (layers.length > 0 || hidden || said.cloudsNotObserved))
    faults.push([statement, doubtful("says that there is no cloud, and there is a cloud group", "ceiling")]);
  return faults;
}

function windFaults({ wind }: Elements, groups: readonly Group[]): readonly (readonly [string, Fault])[] {
  const sector = wind?.sector_degTrue;
  if (wind === undefined || sector === undefined) return [];
  const text = groups.find(({ part }) => part?.is === "sector")?.text ?? "";
  if (wind.kind === "calm") return [[text, doubtful("the wind is calm and varies", "wind", "gust")]];
  if (wind.from_degTrue !== undefined && !inSector(wind.from_degTrue, sector))
    return [[text, doubtful("the mean direction lies outside the sector of the wind", "wind")]];
  return [];
}

/** Fog is below 5/8 SM, mist from there. @source FAA-H-8083-28B, 27.4.2.7.3 */
const FOG_BELOW_SM = 0.625;
/** Nothing freezes on what it meets in air this warm. Common practice. */
const WARM_C = 5;

type Faults = readonly (readonly [string, Fault])[];

/** Rain without FZ in air below zero, and freezing in air that is warm. */
function freezingFaults(text: string, weather: WeatherCode, { temperature }: Elements): Faults {
  if (temperature === undefined) return [];
  const { descriptor, phenomena } = weather;
  const liquid = phenomena.includes("RA") ? "rain" : phenomena.includes("DZ") ? "drizzle" : undefined;
  if (temperature.belowZero && liquid !== undefined && descriptor !== "FZ" && precipitates(weather)) {
    const cold = temperature.coded_degC === 0 ? "just below 0" : temperature.coded_degC;
    const says = `${liquid} reported at ${cold} C without FZ: treat as freezing ${liquid} until confirmed`;
    return [[text, doubtful(says, "weather")]];
  }
  if (descriptor !== "FZ" || temperature.coded_degC < WARM_C) return [];
  const says = `freezing at ${temperature.coded_degC} C: one of the two is wrong`;
  return [[text, doubtful(says, "weather", "temperature")]];
}

/** Whole fog in what is mist's visibility, and the other way round. Reports in metres have other limits. */
function fogFaults(text: string, weather: WeatherCode, { visibility }: Elements): Faults {
  const { descriptor, phenomena, vicinity } = weather;
  const whole = vicinity === undefined && (descriptor === undefined || descriptor === "FZ");
  if (visibility?.coded.unit !== "mi" || !whole || weather.code === "FZBR") return [];
  const thin = visibility.coded.value >= FOG_BELOW_SM;
  if (phenomena.includes("FG") && thin)
    return [[text, doubtful("fog with 5/8 SM or more, which is coded as mist (BR) today")]];
  if (phenomena.includes("BR") && !thin)
    return [
      [text, doubtful("mist with less than 5/8 SM, which is coded as fog (FG)", "visibility", "weather")],
    ];
  return [];
}

function weatherFaults(groups: readonly Group[], said: Elements): Faults {
  const faults = groups.flatMap(({ part, text }) =>
    part?.is === "weather"
      ? [...freezingFaults(text, part.weather, said), ...fogFaults(text, part.weather, said)]
      : [],
  );
  const present = said.weather.find(({ vicinity }) => vicinity === undefined);
  if ((!said.cavok && !said.noSignificantWeather) || present === undefined) return faults;
  const says = `says that there is no significant weather, and there is ${present.code}`;
  return [...faults, [said.cavok ? "CAVOK" : "NSW", doubtful(says, "weather")]];
}

/** Where groups that say the same thing, or belong together, contradict one another. */
export function crossChecks(groups: readonly Group[], said: Elements, period?: number): readonly Problem[] {
  const faults = [...skyFaults(groups, said), ...windFaults(said, groups), ...weatherFaults(groups, said)];
  return [...repeated(groups, period), ...faults.map(([text, fault]) => problemOf(text, fault, period))];
}
