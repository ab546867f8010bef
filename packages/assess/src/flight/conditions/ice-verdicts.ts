import { coldTemperatureTable, frostMargin, relativeHumidity } from "@witnessmark/engine";
import { bookSource } from "../../book-index.ts";
import { CORRECTED_HEIGHT_M } from "./air.ts";
import type { IceFigures } from "./ice.ts";
import { degC, feet } from "./texts.ts";
import {
  type Draft,
  type FieldContext,
  NOT_KNOWN,
  openSays,
  type Told,
  told,
  untilOf,
  withMissing,
} from "./told.ts";

const USUAL = {
  title: "Usual wording of aeroplane flight manuals",
  locator: "visible moisture at 5 °C or colder; from memory",
};

const HOAR_FROST = [
  {
    title: "Public pilot texts on hoar frost",
    locator: "skin up to 5 °C colder than the air; common practice",
  },
];

function icingWords({ icing, freezing }: IceFigures, moisture: string, air: string): string {
  if (freezing.value === "present") return "Freezing rain or drizzle";
  if (freezing.value === "possible") return `Rain that may freeze${air}`;
  if (icing.value?.icing === "yes") return `Icing conditions: ${moisture}${air}`;
  return icing.value?.icing === "no" ? `None: ${icing.value.because}` : "";
}

/** Ice in the air at the field, against what the aircraft has against it. */
export function icingVerdict(field: FieldContext): Told {
  const { context, figures } = field;
  const { role, planned, ice, weather } = figures;
  const { icing, freezing, icingStatus } = ice;
  const protection = context.book.iceProtection;
  const answer = icing.value;
  const isIcing = answer?.icing === "yes" || freezing.value === "present" || freezing.value === "possible";
  const missing = [
    ...icing.missing,
    ...(isIcing && protection === undefined
      ? [{ what: "what the aircraft has against ice, in the book" }]
      : []),
    ...(answer?.icing === "open" && icing.missing.length === 0
      ? answer.missing.map((what) => ({ what: `the ${what} at ${planned.code}` }))
      : []),
  ];
  const status = icingStatus === "stop" ? "stop" : withMissing(icingStatus, missing);
  const write = (): Omit<Draft, "id"> => {
    const coldest_K = weather.oat.value?.coldest_K;
    const air = coldest_K === undefined ? "" : ` at ${degC(coldest_K)}`;
    const moisture = answer?.icing === "yes" ? answer.moisture.join(", ") : "";
    const words = icingWords(ice, moisture, air);
    const known =
      protection === undefined
        ? "not in the book"
        : protection.known
          ? protection.conditions
          : "none for known icing";
    return {
      topic: "ice",
      title: `Ice in the air at ${planned.code}`,
      says: status === "open" ? openSays(missing) : words,
      ...(status === "open" ? { margin: NOT_KNOWN } : {}),
      lines: [
        ...(coldest_K === undefined ? [] : [{ label: "Temperature, the coldest", value: degC(coldest_K) }]),
        ...(moisture === "" ? [] : [{ label: "Visible moisture", value: moisture }]),
        { label: "Ice protection", value: known },
      ],
      sources: [bookSource(context.book, "iceProtection"), USUAL],
      because: [isIcing ? `${words}. Ice protection: ${known}` : words],
      wayOut: ["Wait for warmer or drier air", "Another field"],
      until: untilOf(icing, planned.code),
    };
  };
  return told(field, { id: `ice:${role}:icing`, write }, status, missing);
}

/** Frost on an aircraft that stood at the departure; only a look and a touch settle it. */
export function frostVerdict(field: FieldContext): readonly Told[] {
  const { figures } = field;
  if (figures.role !== "departure") return [];
  const { planned, ice } = figures;
  const { value, missing: lacks } = ice.frost;
  const open = value === undefined || value.frost === "open";
  const missing = [
    ...lacks,
    ...(value?.frost === "open" && lacks.length === 0
      ? value.missing.map((what) => ({ what: `the ${what} at ${planned.code}` }))
      : []),
  ];
  const status = withMissing(open ? undefined : value.frost === "expected" ? "caution" : "clear", missing);
  const id = "ice:departure:frost";
  const base = { topic: "ice" as const, title: `Frost at ${planned.code}`, sources: HOAR_FROST };
  if (status === "open" || open)
    return [told(field, { ...base, id, says: openSays(missing), margin: NOT_KNOWN }, "open", missing)];
  const write = () => {
    const says =
      value.frost === "expected"
        ? `To be expected on a skin of ${degC(value.skin_K)}: look and touch`
        : `Not to be expected on a skin of ${degC(value.skin_K)}`;
    return {
      ...base,
      says,
      lines: [
        { label: "Skin, at its coldest", value: degC(value.skin_K) },
        { label: "Frost forms from", value: degC(value.frostPoint_K) },
      ],
      formula: frostMargin,
      because: [says],
      until: untilOf(ice.frost, planned.code),
    };
  };
  return [told(field, { id, write }, status)];
}

const SA_11_01 = {
  title: "US Department of the Interior, Safety Alert SA 11-01",
  locator: "carburettor icing by temperature and humidity, 19 November 2010",
};

const ZONE_WORDS = {
  severe: "Severe ice in the carburettor is likely",
  possible: "Ice in the carburettor is possible",
  rare: "Ice in the carburettor is rare",
  "not known": "Hotter than the rule on ice in the carburettor speaks of",
} as const;

/** Ice in the carburettor of a piston engine: severe is a caution; that it is possible is told, as it nearly always is. */
export function carburettorVerdict(field: FieldContext): readonly Told[] {
  const { context, figures } = field;
  const { role, planned, ice, weather } = figures;
  const { carburettor } = ice;
  if (carburettor === undefined) return [];
  const id = `ice:${role}:carburettor`;
  const { value } = carburettor;
  const base = {
    topic: "ice" as const,
    title: `Carburettor ice at ${planned.code}`,
    sources: [bookSource(context.book, "aircraft, carburettor"), SA_11_01],
  };
  const beyond = value?.zone === "not known" ? [{ what: "how likely ice is in air so hot" }] : [];
  const missing = [...carburettor.missing, ...beyond];
  const own = value?.zone === "severe" ? ("caution" as const) : ("clear" as const);
  const status = withMissing(value === undefined ? undefined : own, missing);
  if (value === undefined || status === "open")
    return [told(field, { id, ...base, says: openSays(missing), margin: NOT_KNOWN }, "open", missing)];
  const write = (): Omit<Draft, "id"> => {
    const humidity = `${Math.ceil(value.relativeHumidity_1 * 100 - 1e-9)}\u00A0%`;
    const [oat, dew_K] = [weather.oat.value, weather.dewPoint_K.value];
    const says = `${ZONE_WORDS[value.zone]}, humidity ${humidity}${value.zone === "rare" ? "" : ": carburettor heat, above all at low power"}`;
    return {
      ...base,
      says,
      lines: [
        ...(oat === undefined ? [] : [{ label: "Temperature, the coldest", value: degC(oat.coldest_K) }]),
        ...(dew_K === undefined ? [] : [{ label: "Dew point", value: degC(dew_K) }]),
        { label: "Relative humidity", value: humidity },
      ],
      formula: relativeHumidity,
      because: [says],
      until: untilOf(carburettor, planned.code),
    };
  };
  return [told(field, { id, write }, status)];
}

const FREEZING_K = 273.15;

/** Cold air makes an altimeter show too much: told where an approach is flown by it. */
export function coldAltimeterVerdict(field: FieldContext): readonly Told[] {
  const { plan, figures } = field;
  const { role, planned, air, weather } = figures;
  const correction = air.value?.coldCorrection_m;
  const coldest_K = weather.oat.value?.coldest_K;
  if (plan.flightRules !== "IFR" || figures.field?.approach !== true) return [];
  if (correction?.value === undefined || coldest_K === undefined || coldest_K > FREEZING_K) return [];
  // a temperature that is not settled is told by the report
  if (correction.missing.length > 0) return [];
  const more_m = correction.value;
  const write = (): Omit<Draft, "id"> => {
    const says = `Add ${feet(more_m, "up")} to ${feet(CORRECTED_HEIGHT_M, "up")} above the field, at ${degC(coldest_K)}`;
    return {
      topic: "weather",
      title: `Altimeter in cold air, ${planned.code}`,
      says,
      lines: [{ label: "Temperature, the coldest", value: degC(coldest_K) }],
      formula: coldTemperatureTable,
      sources: coldTemperatureTable.sources.map(({ title, locator }) => ({
        title,
        ...(locator === undefined ? {} : { locator }),
      })),
      because: [says],
      until: untilOf(correction, planned.code),
    };
  };
  return [told(field, { id: `weather:${role}:cold-altimeter`, write }, "caution")];
}
