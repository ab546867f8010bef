import { type Aspect, joinAspects } from "./aspect.ts";
import { type Ceiling, heightCeiling } from "./ceiling.ts";
import {
  type From,
  overlay,
  type Source,
  type State,
  stateOf,
  type WorstCase,
  withCategory,
  worstOf,
} from "./conditions.ts";
import type { Visibility } from "./groups/visibility.ts";
import type { Wind } from "./groups/wind.ts";
import type { Hazard } from "./hazards.ts";
import type { Remark } from "./remarks/remark.ts";
import type { Observation } from "./report.ts";

export interface ObservedConditions extends WorstCase {
  /** The body of the report alone. */
  readonly body: WorstCase;
  /**
   * The air temperature between which the report leaves it: body and tenths. Icing asks the coldest, the density of
   * the air the hottest. Absent when unknown.
   */
  readonly oat?: { readonly coldest_K: number; readonly hottest_K: number; readonly belowZero: boolean };
  readonly dewPoint_K?: number;
  /** What the station cannot tell though the report looks whole. */
  readonly blindTo: readonly ("thunderstorm" | "freezing rain" | "kind of precipitation")[];
}

const remarkSource = (remark: Remark): Source => ({ role: "remark", text: remark.says });

/** The strongest wind since the last report, with the direction of its own. */
const peakWind = (remark: Extract<Remark, { is: "peak wind" }>, body: Wind | undefined): Wind => ({
  kind: "from",
  from_degTrue: remark.from_degTrue,
  speed_mPerS: Math.min(body?.speed_mPerS ?? remark.speed_mPerS, remark.speed_mPerS),
  gust_mPerS: remark.speed_mPerS,
  coded: { speed: body?.coded.speed ?? remark.coded, gust: remark.coded },
});

const lowestHeight = (remark: Remark): Ceiling | undefined => {
  if (remark.is === "ceiling") return heightCeiling(remark.lowest_ft);
  if (remark.is !== "variable sky" || remark.base_ft === null) return undefined;
  const broken = remark.amounts.some((amount) => amount === "BKN" || amount === "OVC");
  return broken ? heightCeiling(remark.base_ft) : undefined;
};

const remarkHazard = (remark: Remark): Hazard | undefined => {
  if (remark.is === "lightning") return "lightning";
  if (remark.is === "thunderstorm place") return "thunderstorm in the vicinity";
  if (remark.is === "convective cloud")
    return remark.says.startsWith("towering") ? "towering cumulus" : "cumulonimbus";
  return undefined;
};

/** The body with one remark laid over it; `undefined` for a remark that makes nothing worse. */
function withRemark(body: State, remark: Remark): State | undefined {
  const source = remarkSource(remark);
  const from = <T>(value: T): From<T> => ({ value, source });
  const hazard = remarkHazard(remark);
  const ceiling = lowestHeight(remark);
  if (remark.is === "peak wind")
    return withCategory({ ...body, source, wind: from(peakWind(remark, body.wind?.value)) });
  if (remark.is === "visibility")
    return withCategory({ ...body, source, visibility: from<Visibility>(remark.lowest) });
  if (ceiling !== undefined) return withCategory({ ...body, source, ceiling: from(ceiling) });
  return hazard === undefined ? undefined : { ...body, source, other: [...body.other, from(hazard)] };
}

const BLIND: Readonly<Record<string, ObservedConditions["blindTo"][number]>> = {
  TSNO: "thunderstorm",
  FZRANO: "freezing rain",
  PWINO: "kind of precipitation",
};

/** The colder and the warmer of body and tenths. */
function airOf({ elements, remarks, open }: Observation): Pick<ObservedConditions, "oat" | "dewPoint_K"> {
  const tenths = remarks.find((remark) => remark.is === "tenths");
  const { temperature, dewPoint } = elements;
  const known = temperature !== undefined && !open.includes("temperature");
  const values = known
    ? [temperature.temperature_K, ...(tenths === undefined ? [] : [tenths.temperature_K])]
    : [];
  const dewKnown = dewPoint !== undefined && !open.includes("dew point");
  return {
    ...(known
      ? {
          oat: {
            coldest_K: Math.min(...values),
            hottest_K: Math.max(...values),
            belowZero: temperature.belowZero === true || Math.min(...values) < 273.15,
          },
        }
      : {}),
    // the moister of the two: frost and fog ask the highest dew point
    ...(dewKnown ? { dewPoint_K: Math.max(dewPoint.temperature_K, tenths?.dewPoint_K ?? 0) } : {}),
  };
}

/**
 * What an observation says at its worst: body, the lowest visibility of any direction, remarks, and the trend of the
 * next two hours. The lower of body and remark counts, and the strongest wind of either.
 */
export function observedConditions(observation: Observation): ObservedConditions {
  const { elements, open, remarks, trends, text } = observation;
  const usable = observation.accepted && !observation.nil;
  const air = airOf(observation);
  const blindTo = remarks.flatMap((remark) => {
    const blind = remark.is === "sensor" ? BLIND[remark.code] : undefined;
    return blind === undefined ? [] : [blind];
  });
  const heat = {
    ...(air.oat === undefined ? {} : { oat_K: air.oat.coldest_K, belowZero: air.oat.belowZero }),
    freezingRainSensorOut: blindTo.includes("freezing rain"),
  };
  const source: Source = { role: "observed", text };
  const body = stateOf(elements, source, open);
  const states: State[] = usable ? [body] : [];
  if (usable && elements.minimumVisibility !== undefined)
    states.push(withCategory({ ...body, visibility: { value: elements.minimumVisibility, source } }));
  if (usable)
    for (const remark of remarks) {
      const state = withRemark(body, remark);
      if (state !== undefined) states.push(state);
    }
  if (usable)
    for (const [index, trend] of trends.entries()) {
      const doubts = joinAspects(
        observation.problems.filter(({ period }) => period === index).flatMap(({ affects }) => affects),
      );
      states.push(overlay(body, trend.elements, { role: "trend", text: trend.change }, doubts));
    }
  const worst = worstOf(states, heat);
  const general: readonly Aspect[] = joinAspects([...worst.open, ...open]);
  return { ...worst, open: general, body: worstOf(usable ? [body] : [], heat), ...air, blindTo };
}
