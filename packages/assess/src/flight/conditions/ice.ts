import type { Book } from "@witnessmark/book";
import { type CarburettorIcing, carburettorIcing, USUAL_ICING_FROM_K } from "@witnessmark/engine";
import type { PlannedField, RunwayCondition, Status } from "@witnessmark/ledger";
import {
  type Elements,
  type FrostAnswer,
  type IcingAnswer,
  reportedFrost,
  reportedIcing,
} from "@witnessmark/weather";
import type { FieldWeather } from "./field-weather.ts";
import { attempt, type Figure, onceMissing, restOf } from "./figure.ts";
import { surfaceOf } from "./place.ts";

/** Ice at a field: in the air, and on an aircraft that stood there. */
export interface IceFigures {
  /** At the field itself: visible moisture at or below 5 °C. */
  readonly icing: Figure<IcingAnswer>;
  /** Rain or drizzle that freezes on what it meets. */
  readonly freezing: Figure<"present" | "possible" | "not reported">;
  readonly icingStatus: Status;
  readonly frost: Figure<FrostAnswer>;
  /** Where a piston engine has a carburettor, or may have one. */
  readonly carburettor?: Figure<CarburettorIcing>;
}

/** Cloud this far above the field counts as moisture at the field: none, it must be met in the air. */
const CLOUD_UP_TO_M = 0;

const WET_GROUND: Readonly<Record<RunwayCondition, boolean>> = {
  dry: false,
  wet: true,
  snow: true,
  slush: true,
  ice: true,
};

const FREEZING_K = 273.15;

function icingOf(weather: FieldWeather, planned: PlannedField): Figure<IcingAnswer> {
  const { condition } = planned;
  const { oat, visibility_m } = weather;
  const rest = restOf([oat, weather.weather]);
  const seen_m = visibility_m.value;
  const coldest_K = oat.value?.coldest_K;
  const mayFreeze = coldest_K !== undefined && coldest_K <= FREEZING_K;
  const value = reportedIcing({
    ...(coldest_K === undefined ? {} : { oat_K: coldest_K }),
    ...(weather.weather.value === undefined ? {} : { weather: weather.weather.value }),
    ...(seen_m === undefined
      ? {}
      : { visibility: { visibility_m: seen_m, coded: { value: seen_m, unit: "m", valueSI: seen_m } } }),
    clouds: weather.clouds.value ?? [],
    upTo_m: CLOUD_UP_TO_M,
    threshold_K: USUAL_ICING_FROM_K,
    // wet ground counts where it may freeze on the wheels and the flaps
    wetGround: mayFreeze && condition !== undefined && WET_GROUND[condition],
  });
  // air that is warm enough needs no knowledge of moisture, and the other way about
  const warm =
    coldest_K !== undefined &&
    oat.missing.length === 0 &&
    value.icing === "no" &&
    coldest_K > USUAL_ICING_FROM_K;
  if (warm) return { ...restOf([oat]), value };
  // what lies on the ground would change the answer, and nobody has said
  if (mayFreeze && condition === undefined && value.icing === "no")
    return { ...rest, value, missing: [...rest.missing, surfaceOf(planned)] };
  return { ...rest, value, missing: rest.missing };
}

function freezingOf({ hazards }: FieldWeather): IceFigures["freezing"] {
  const rest = restOf([hazards]);
  if (hazards.value === undefined) return rest;
  const has = (hazard: "freezing precipitation" | "possible freezing precipitation"): boolean =>
    hazards.value?.includes(hazard) ?? false;
  return {
    ...rest,
    value: has("freezing precipitation")
      ? "present"
      : has("possible freezing precipitation")
        ? "possible"
        : "not reported",
  };
}

/**
 * Freezing rain stops any of these aircraft. Icing conditions are a caution where the book has ice protection for known
 * icing; where it has none they stop from 0 °C down, and are a caution above, for intakes and carburettors.
 */
function statusOf(
  protection: Book["iceProtection"],
  icing: Figure<IcingAnswer>,
  freezing: IceFigures["freezing"],
  coldest_K: number | undefined,
): Status {
  if (freezing.value === "present") return "stop";
  const isIcing = icing.value?.icing === "yes" || freezing.value === "possible";
  if (
    isIcing &&
    protection !== undefined &&
    !protection.known &&
    coldest_K !== undefined &&
    coldest_K <= FREEZING_K
  )
    return "stop";
  const unknown = icing.missing.length > 0 || icing.value?.icing === "open" || icing.value === undefined;
  if (unknown || (isIcing && protection === undefined)) return "open";
  return isIcing ? "caution" : "clear";
}

/** @param sky of the observation; a forecast of cloud warms no wing in the night before it */
function frostOf({ oat, dewPoint_K, winds }: FieldWeather, sky: Elements | undefined): Figure<FrostAnswer> {
  const steady = winds.missing.length === 0 ? winds.value?.map(({ wind }) => wind.speed_mPerS) : undefined;
  const ask = (dewPoint: number | undefined): FrostAnswer =>
    reportedFrost({
      ...(oat.value === undefined ? {} : { oat_K: oat.value.coldest_K }),
      ...(dewPoint === undefined ? {} : { dewPoint_K: dewPoint }),
      ...(sky === undefined ? {} : { sky }),
      ...(steady === undefined ? {} : { wind_mPerS: Math.min(...steady) }),
    });
  // in air warm enough even saturated air leaves no frost, and the dew point need not be known
  const saturated = oat.missing.length === 0 ? ask(oat.value?.coldest_K) : undefined;
  if (saturated?.frost === "not expected" && dewPoint_K.missing.length > 0)
    return { ...restOf([oat]), value: saturated };
  return { ...restOf([oat, dewPoint_K]), value: ask(dewPoint_K.value) };
}

/** Ice in the carburettor at the field; in the coldest air that is told, and in the warmest, whichever is worse. */
function carburettorOf({ oat, dewPoint_K }: FieldWeather): Figure<CarburettorIcing> {
  const rest = restOf([oat, dewPoint_K]);
  const [air, dew_K] = [oat.value, dewPoint_K.value];
  if (air === undefined || dew_K === undefined) return rest;
  // a dew point is never above the air that has it: a rounded report may say so
  const found = attempt(() => {
    const each = [air.coldest_K, air.hottest_K].map((oat_K) =>
      carburettorIcing(oat_K, Math.min(dew_K, oat_K)),
    );
    return ZONES.flatMap((zone) => each.filter((one) => one.zone === zone))[0];
  }, "ice in the carburettor");
  return found.value === undefined
    ? { ...rest, missing: onceMissing([...rest.missing, ...found.missing]) }
    : { ...rest, value: found.value };
}

/** Worst first; what the rule does not speak of is no better than possible. */
const ZONES: readonly CarburettorIcing["zone"][] = ["severe", "not known", "possible", "rare"];

export function iceFigures(
  book: Book,
  weather: FieldWeather,
  planned: PlannedField,
  sky: Elements | undefined,
): IceFigures {
  const icing = icingOf(weather, planned);
  const freezing = freezingOf(weather);
  const coldest_K = weather.oat.value?.coldest_K;
  return {
    icing: { ...icing, missing: onceMissing(icing.missing) },
    freezing,
    icingStatus: statusOf(book.iceProtection, icing, freezing, coldest_K),
    frost: frostOf(weather, sky),
    ...(book.aircraft.engine === "piston" && book.aircraft.carburettor !== false
      ? { carburettor: carburettorOf(weather) }
      : {}),
  };
}
