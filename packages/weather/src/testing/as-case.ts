import { fromSI, type Measure } from "@witnessmark/engine";
import { clockOf, dayTimeText } from "../day-time.ts";
import type { Elements } from "../elements.ts";
import { flightCategory } from "../flight-category.ts";
import type { CloudLayer } from "../groups/clouds.ts";
import type { RangeValue, RunwayVisualRange } from "../groups/runway-visual-range.ts";
import type { Visibility } from "../groups/visibility.ts";
import { DESCRIPTORS, PHENOMENA, type WeatherCode } from "../groups/weather-code.ts";
import type { Wind } from "../groups/wind.ts";
import type { Remark } from "../remarks/remark.ts";
import { type Forecast, isKnown, type Observation } from "../report.ts";

// The check values were written down in a shape of their own. Here a decode is put into that shape, whole: what the
// case does not expect makes the comparison fail just as what it does not find.

type Shape = Record<string, unknown>;
const when = (condition: unknown, shape: Shape): Shape => (condition ? shape : {});
const round = (value: number, digits: number): number => Number(value.toFixed(digits));

const speedShape = (name: string, { value, unit, valueSI }: Measure): Shape =>
  unit === "kt"
    ? { [`${name}_kt`]: value }
    : { [`${name}_mps`]: value, [`${name}_kt`]: round(fromSI(valueSI, "kt"), 1) };

export function windShape(wind: Wind): Shape {
  if (wind.kind === "calm") return { calm: true, speed_kt: 0 };
  return {
    ...(wind.kind === "variable" ? { variable: true } : { direction_degT: wind.from_degTrue }),
    ...speedShape("speed", wind.coded.speed),
    ...when(wind.speedAtLeast, { speedBound: "at least" }),
    ...(wind.coded.gust === undefined ? {} : speedShape("gust", wind.coded.gust)),
    ...when(wind.sector_degTrue, { sector_degT: wind.sector_degTrue }),
  };
}

export const visibilityShape = ({ coded, bound }: Visibility): Shape => ({
  [coded.unit === "mi" ? "value_SM" : "value_m"]: coded.value,
  ...when(bound, { bound }),
});

function rangeShape({ runway, lowest, highest, tendency }: RunwayVisualRange): Shape {
  const unit = (value: RangeValue): string => value.coded.unit;
  const shape: Shape =
    highest === undefined
      ? { [`value_${unit(lowest)}`]: lowest.coded.value, ...when(lowest.bound, { bound: lowest.bound }) }
      : {
          [`lowest_${unit(lowest)}`]: lowest.coded.value,
          ...when(lowest.bound, { lowestBound: lowest.bound }),
          [`highest_${unit(highest)}`]: highest.coded.value,
          ...when(highest.bound, { highestBound: highest.bound }),
        };
  return { runway, ...shape, ...when(tendency, { tendency }) };
}

export const weatherShape = ({ code, intensity, vicinity, descriptor, phenomena }: WeatherCode): Shape => ({
  code,
  ...when(intensity, { intensity }),
  ...when(vicinity, { vicinity }),
  ...(descriptor === undefined ? {} : { descriptor: DESCRIPTORS[descriptor] }),
  ...when(phenomena.length > 0, { phenomena: phenomena.map((one) => PHENOMENA[one]) }),
});

const cloudShape = ({ amount, base_ft, type }: CloudLayer): Shape => ({
  amount,
  base_ft,
  ...(type === undefined ? {} : { type }),
});

const runwayStateShape = ({ friction_1, ...rest }: Elements["runwayStates"][number]): Shape => ({
  ...rest,
  ...(friction_1 === undefined ? {} : { frictionCoefficient: friction_1 }),
});

export function elementsShape(said: Elements): Shape {
  const list = (name: string, items: readonly unknown[]): Shape => when(items.length > 0, { [name]: items });
  return {
    ...(said.wind === undefined ? {} : { wind: windShape(said.wind) }),
    ...when(said.cavok, { cavok: true }),
    ...(said.visibility === undefined
      ? {}
      : {
          visibility: {
            ...visibilityShape(said.visibility),
            ...(said.minimumVisibility === undefined
              ? {}
              : {
                  minimum: {
                    ...visibilityShape(said.minimumVisibility),
                    direction: said.minimumVisibility.direction,
                  },
                }),
          },
        }),
    ...list("rvr", said.runwayVisualRanges.map(rangeShape)),
    ...(said.noSignificantWeather
      ? { weather: said.weather.map(weatherShape), noSignificantWeather: true }
      : list("weather", said.weather.map(weatherShape))),
    ...when(said.weatherNotObserved, { presentWeatherSensor: "no information" }),
    ...list("clouds", said.clouds.map(cloudShape)),
    ...when(said.sky, { skyStatement: said.sky }),
    ...when(said.verticalVisibility_ft !== undefined, { verticalVisibility_ft: said.verticalVisibility_ft }),
    ...(said.temperature === undefined ? {} : { temperature_C: said.temperature.coded_degC }),
    ...(said.dewPoint === undefined ? {} : { dewpoint_C: said.dewPoint.coded_degC }),
    ...(said.pressure === undefined
      ? {}
      : { [said.pressure.unit === "inHg" ? "altimeter_inHg" : "qnh_hPa"]: said.pressure.value }),
    ...(said.lowestPressure === undefined ? {} : { lowestAltimeter_inHg: said.lowestPressure.value }),
    ...list(
      "recentWeather",
      said.recentWeather.map(({ code }) => `RE${code}`),
    ),
    ...list(
      "windShear",
      said.windShear.map((runway) => (runway === "all" ? "all runways" : `runway ${runway}`)),
    ),
    ...list("runwayState", said.runwayStates.map(runwayStateShape)),
    ...(said.shearLayer === undefined
      ? {}
      : {
          lowLevelWindShear: {
            layerTop_ft: said.shearLayer.layerTop_ft,
            direction_degT: said.shearLayer.from_degTrue,
            speed_kt: said.shearLayer.coded.speed.value,
          },
        }),
    ...list(
      "icing",
      said.icing.map(({ code, base_ft, thickness_ft }) => ({ code, base_ft, thickness_ft })),
    ),
    ...list(
      "turbulence",
      said.turbulence.map(({ code, base_ft, thickness_ft }) => ({ code, base_ft, thickness_ft })),
    ),
  };
}

/** One remark in the shape of the cases; `undefined` for those that the cases do not write down. */
export function remarkShape(remark: Remark, observation?: Observation): Shape {
  switch (remark.is) {
    case "station type":
      return { stationType: remark.says };
    case "peak wind":
      return {
        peakWind: {
          direction_degT: remark.from_degTrue,
          speed_kt: remark.coded.value,
          at_UTC: remark.at_UTC,
        },
      };
    case "wind shift":
      return { windShift: { at_UTC: remark.at_UTC, ...when(remark.frontal, { frontal: true }) } };
    case "visibility":
      return remark.kind === "variable"
        ? { variableVisibility_SM: [remark.lowest.coded.value, remark.highest?.coded.value] }
        : { [`${remark.kind}Visibility_SM`]: remark.lowest.coded.value };
    case "ceiling":
      return { variableCeiling_ft: [remark.lowest_ft, remark.highest_ft] };
    case "variable sky":
      return { variableSky: remark.says };
    case "obscuration":
      return { obscuration: remark.says };
    case "lightning":
      return { lightning: remark.says };
    case "thunderstorm place":
      return { thunderstormLocation: remark.says };
    case "begun and ended": {
      const minutes: Shape = {};
      for (const { event, minute } of remark.events)
        minutes[event === "began" ? "begin_min" : "end_min"] = minute;
      const what = remark.code.replace(/^[-+]/u, "");
      if (what === "TS")
        return { thunderstormTimes: remark.events.map(({ event, at_UTC }) => ({ event, at_UTC })) };
      const phenomenon = Object.entries(PHENOMENA).find(([code]) => code === what)?.[1] ?? what;
      return { precipitation: [{ phenomenon, ...minutes }] };
    }
    case "pressure change":
      return { pressure: `${remark.rapidly} rapidly` };
    case "sea-level pressure":
      return {
        slp_hPa:
          observation?.seaLevelPressure_Pa === undefined
            ? null
            : round(fromSI(observation.seaLevelPressure_Pa, "hPa"), 1),
      };
    case "altimeter setting":
      return { altimeterSetting_inHg: remark.setting.value };
    case "precipitation": {
      const names = {
        1: "hourlyPrecipitation",
        3: "precipitation3h",
        6: "precipitation6h",
        24: "precipitation24h",
      };
      const name = names[remark.over_h];
      return remark.amount_in === 0 ? { [name]: "trace" } : { [`${name}_in`]: remark.amount_in };
    }
    case "tenths":
      return {
        temperatureTenths_C: remark.temperature_degC,
        ...(remark.dewPoint_degC === undefined ? {} : { dewpointTenths_C: remark.dewPoint_degC }),
      };
    case "extreme":
      return { [remark.kind === "highest" ? "maximum6h_C" : "minimum6h_C"]: remark.temperature_degC };
    case "pressure tendency":
      return { pressureTendency: { code: remark.code, change_hPa: remark.change_hPa } };
    case "snow increasing":
      return { snowIncreasing: { lastHour_in: remark.lastHour_in, onGround_in: remark.onGround_in } };
    case "sensor":
      return { sensorStatus: [remark.says] };
    case "maintenance needed":
      return { maintenanceNeeded: true };
    case "convective cloud":
    case "other":
      return { other: remark.says };
    default:
      return remark satisfies never;
  }
}

function remarksShape(observation: Observation): Shape {
  const shape: Shape = {};
  for (const remark of observation.remarks)
    for (const [name, value] of Object.entries(remarkShape(remark, observation))) {
      const before = shape[name];
      shape[name] = Array.isArray(before) && Array.isArray(value) ? [...before, ...value] : value;
    }
  return when(observation.remarks.length > 0, { remarks: shape });
}

export function observationShape(observation: Observation): Shape {
  const { elements, issued, trends } = observation;
  const base = {
    reportType: observation.typeWordMissing ? "METAR (type word missing)" : observation.type,
    station: observation.station,
    ...(issued === undefined ? {} : { day: issued.day, time_UTC: clockOf(issued) }),
    ...when(observation.auto, { modifier: "AUTO" }),
    ...when(observation.nil, { nil: true }),
  };
  if (observation.nil) return base;
  const { ceiling } = elements;
  const category = flightCategory(ceiling ?? { kind: "unknown" }, elements.visibility);
  return {
    ...base,
    ...elementsShape(elements),
    ...remarksShape(observation),
    ...(trends.length > 0
      ? {
          trend: trends.map(({ elements: said, ...times }) => ({
            change: times.change,
            ...when(times.from_UTC, { from_UTC: times.from_UTC }),
            ...when(times.until_UTC, { until_UTC: times.until_UTC }),
            ...when(times.at_UTC, { at_UTC: times.at_UTC }),
            ...elementsShape(said),
          })),
        }
      : when(observation.noSignificantChange, { trend: "no significant change in the next 2 hours" })),
    ceiling_ft: ceiling?.kind === "height" ? ceiling.height_ft : null,
    ceilingKnown: isKnown(observation, "ceiling") && ceiling !== undefined && ceiling.kind !== "unknown",
    ...(ceiling?.kind === "none" && ceiling.reach_ft !== undefined
      ? { noCeilingBelow_ft: ceiling.reach_ft }
      : {}),
    ...(ceiling?.kind === "unknown" && ceiling.lowest_ft !== undefined
      ? { lowestPossibleCeiling_ft: ceiling.lowest_ft }
      : {}),
    ...(category.category === undefined ? {} : { flightCategory: category.category }),
  };
}

export function forecastShape(forecast: Forecast): Shape {
  const { issued, validFrom, validTo, extremes } = forecast;
  const highest = extremes.find(({ kind }) => kind === "highest");
  const lowest = extremes.find(({ kind }) => kind === "lowest");
  return {
    reportType: "TAF",
    ...when(forecast.amended, { amended: true }),
    ...when(forecast.corrected, { corrected: true }),
    ...when(forecast.cancelled, { cancelled: true }),
    ...when(forecast.remark, { remark: forecast.remark }),
    station: forecast.station,
    ...(issued === undefined ? {} : { issuedDay: issued.day, issued_UTC: clockOf(issued) }),
    ...(validFrom === undefined ? {} : { validFrom_ddhh: dayTimeText(validFrom).slice(0, 4) }),
    ...(validTo === undefined ? {} : { validTo_ddhh: dayTimeText(validTo).slice(0, 4) }),
    ...(highest === undefined
      ? {}
      : { maxTemperature_C: highest.coded_degC, maxTemperatureAt_ddhh: dayTimeText(highest.at).slice(0, 4) }),
    ...(lowest === undefined
      ? {}
      : { minTemperature_C: lowest.coded_degC, minTemperatureAt_ddhh: dayTimeText(lowest.at).slice(0, 4) }),
    ...when(forecast.periods.length > 0, {
      periods: forecast.periods.map(({ kind, probability_percent, from, to, elements }) => ({
        kind: kind.replace("PROB", `PROB${probability_percent ?? ""}`),
        ...(from === undefined ? {} : { from_ddhhmm: dayTimeText(from) }),
        ...(to === undefined ? {} : { to_ddhhmm: dayTimeText(to) }),
        ...elementsShape(elements),
      })),
    }),
  };
}
