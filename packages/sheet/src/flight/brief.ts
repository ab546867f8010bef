import { FIELD_ROLES, type FieldFigures, type FieldRole, type Figure, windText } from "@witnessmark/assess";
import { fromSI, withSymbol } from "@witnessmark/engine";
import type { PlannedField, PlannedRoute, Read } from "@witnessmark/ledger";
import { clockText } from "../local-time.ts";
import { digits, safeText } from "./figure-text.ts";
import type { FlightAsk } from "./flight-ask.ts";

/** One thing of the flight by name, as planned or as used: `Distance`, `104 NM`. */
export interface SheetSaid {
  readonly label: string;
  readonly value: string;
}

/** A person, a thing or the fuel of a tank, at its place. */
export interface SheetAboard {
  readonly where: string;
  readonly what: string;
  /** `84 kg`, `68 kg, weighed`, `212 L` */
  readonly much: string;
}

/** A field as it is used: the air that was counted with, and the reports as they came. */
export interface SheetField {
  /** `Landing, ZZQN 29, wet, at 13:28` */
  readonly title: string;
  readonly used: readonly SheetSaid[];
  /** Each with when it was taken: `11:32`. */
  readonly reports: readonly { readonly text: string; readonly taken: string }[];
}

/** What was planned and counted with: the trip, who and what is aboard, the air at each field. */
export interface SheetBrief {
  readonly trip: readonly SheetSaid[];
  readonly aboard: readonly SheetAboard[];
  readonly fields: readonly SheetField[];
  readonly units: string;
}

/** A sheet is signed, and is the same on every screen and paper: what a screen is read in does not change it. */
const UNITS_SAID =
  "This sheet keeps to the units that its numbers were signed in: metres of runway, kilograms, knots, feet of height. The units chosen for a screen do not change it.";

const NOT_SAID = "not said";

/** As it was typed, no figure rounded away. */
const typedText = ({ value, unit }: Read): string => {
  const [, part = ""] = String(value).split(".");
  return withSymbol(digits(value, part.length), unit);
};

const saidOr = (read: Read | undefined): string => (read === undefined ? NOT_SAID : typedText(read));

function tripOf({ plan, field }: FlightAsk, east_min: number): readonly SheetSaid[] {
  const route: Partial<PlannedRoute> = plan.route ?? {};
  const clockAt = (role: FieldRole): string => {
    const at_ms = field(role)?.time.value?.planned_ms;
    return at_ms === undefined ? "not known" : clockText(at_ms, east_min);
  };
  const optional = (label: string, read: Read | undefined): readonly SheetSaid[] =>
    read === undefined ? [] : [{ label, value: typedText(read) }];
  return [
    { label: "Distance", value: saidOr(route.distance) },
    { label: "Time in the air", value: saidOr(route.time) },
    { label: "Level", value: saidOr(route.level) },
    { label: "Take-off", value: clockAt("departure") },
    { label: "Landing", value: clockAt("destination") },
    ...(plan.alternate === undefined
      ? []
      : [{ label: `On to ${plan.alternate.code}`, value: saidOr(route.alternateTime) }]),
    ...optional("Trip fuel", route.tripFuel),
    ...optional("Taxi fuel", route.taxiFuel),
    ...optional("Extra fuel", route.extraFuel),
  ];
}

const KNOWN = { stated: "", weighed: ", weighed", standard: ", standard figure" } as const;

function aboardOf({ book, plan }: FlightAsk): readonly SheetAboard[] {
  const { load } = plan;
  const stations = book.loading?.stations ?? [];
  const tanks = book.loading?.tanks ?? [];
  const order = new Map(stations.map(({ id }, index) => [id, index]));
  const place = (id: string): number => order.get(id) ?? stations.length;
  const items = (load?.items ?? []).toSorted((a, b) => place(a.station) - place(b.station));
  return [
    ...items.map(({ station, what, mass, known }) => ({
      where: stations.find(({ id }) => id === station)?.name ?? station,
      what,
      much: `${typedText(mass)}${KNOWN[known]}`,
    })),
    ...(load?.fuel ?? []).map(({ tank, volume }) => ({
      where: tanks.find(({ id }) => id === tank)?.name ?? tank,
      what: "Fuel",
      much: typedText(volume),
    })),
  ];
}

const NAMES: Readonly<Record<FieldRole, string>> = {
  departure: "Take-off",
  destination: "Landing",
  alternate: "Alternate",
};

const usedText = <T>({ value }: Figure<T>, write: (value: T) => string): string =>
  value === undefined ? "not known" : write(value);

/** Ten kilometres or more is how reports write the best visibility there is. */
const FAR_m = 9_999;

function usedOf({ weather, wind, air }: FieldFigures): readonly SheetSaid[] {
  const [anyWind] = weather.winds.value ?? [];
  const worst = wind.value?.worst ?? anyWind;
  const density_m: Figure<number> = air.value?.densityAltitude_m ?? { from: [], missing: air.missing };
  return [
    { label: "Wind", value: worst === undefined ? "not known" : windText(worst.wind) },
    {
      label: "Temperature",
      value: usedText(weather.oat, ({ coldest_K, hottest_K }) =>
        withSymbol(digits(Math.round(fromSI((coldest_K + hottest_K) / 2, "degC"))), "degC"),
      ),
    },
    {
      label: "QNH",
      value: usedText(weather.qnh_Pa, (qnh_Pa) => safeText(qnh_Pa, "hPa", "down").replace(",", "")),
    },
    {
      label: "Density altitude",
      value: usedText(density_m, (height_m) => safeText(height_m, "ft", "up")),
    },
    {
      label: "Visibility",
      value: usedText(weather.visibility_m, (seen_m) =>
        seen_m >= FAR_m ? withSymbol("10", "km") : safeText(seen_m, "m", "down"),
      ),
    },
    {
      label: "Ceiling",
      value: usedText(weather.ceiling_m, (height_m) =>
        height_m === "none" ? "none" : safeText(height_m, "ft", "down"),
      ),
    },
  ];
}

function typedReport(typed: NonNullable<PlannedField["typed"]>): string {
  const { observedAt: _when, windVariable, ...parts } = typed;
  const NAMED: Readonly<Record<keyof typeof parts, string>> = {
    windFrom: "wind from",
    windSpeed: "wind",
    windGust: "gust",
    oat: "temperature",
    dewPoint: "dew point",
    qnh: "QNH",
    visibility: "visibility",
    ceiling: "ceiling",
  };
  const told = (Object.keys(NAMED) as (keyof typeof parts)[]).flatMap((part) => {
    // keys of a const object
    const read = parts[part];
    return read === undefined ? [] : [`${NAMED[part]} ${typedText(read)}`];
  });
  return `Read or told: ${[...(windVariable === true ? ["wind variable"] : []), ...told].join(", ")}`;
}

function reportsOf({ metar, taf, typed }: PlannedField, east_min: number): SheetField["reports"] {
  const at = (iso: string): string => clockText(Date.parse(iso), east_min);
  return [
    ...(metar === undefined ? [] : [{ text: metar.text.trim(), taken: at(metar.receivedAt) }]),
    ...(taf === undefined ? [] : [{ text: taf.text.trim(), taken: at(taf.receivedAt) }]),
    ...(typed === undefined ? [] : [{ text: typedReport(typed), taken: at(typed.observedAt) }]),
  ];
}

function fieldOf(figures: FieldFigures, east_min: number): SheetField {
  const { role, planned, time } = figures;
  const at_ms = time.value?.planned_ms;
  const title = [
    NAMES[role],
    [planned.code, planned.runway].filter((word) => word !== undefined).join(" "),
    planned.condition ?? "surface not said",
    ...(at_ms === undefined ? [] : [`at ${clockText(at_ms, east_min)}`]),
  ].join(", ");
  return { title, used: usedOf(figures), reports: reportsOf(planned, east_min) };
}

/** What the flight was planned as and counted with, in the words and figures in which it was given. */
export const briefOf = (ask: FlightAsk, east_min: number): SheetBrief => ({
  trip: tripOf(ask, east_min),
  aboard: aboardOf(ask),
  fields: FIELD_ROLES.flatMap((role) => {
    const figures = ask.field(role);
    return figures === undefined ? [] : [fieldOf(figures, east_min)];
  }),
  units: UNITS_SAID,
});
