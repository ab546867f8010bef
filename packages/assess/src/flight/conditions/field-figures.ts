import type { AirspaceClass, Book, Runway } from "@witnessmark/book";
import { type Dimension, toSI, type UnitId } from "@witnessmark/engine";
import type { FlightPlan, PlannedField, Read } from "@witnessmark/ledger";
import type { PlacedForecast, PlacedObservation } from "@witnessmark/weather";
import type { Flight } from "../../assessment.ts";
import { type FlightField, fieldOf } from "../field-of.ts";
import { remembered } from "../remembered.ts";
import { whenAsked } from "../when-asked.ts";
import { type AirFigures, airFigures } from "./air.ts";
import { type ApproachMinima, approachOf } from "./approach.ts";
import { type DaylightFigures, daylightFigures } from "./daylight.ts";
import { type DistanceAnswer, type DistanceFound, distanceOf, type TableMode } from "./distances.ts";
import { type ConditionFault, typedSI } from "./faults.ts";
import { type FieldWeather, fieldWeather } from "./field-weather.ts";
import { attempt, derived, type Figure, figureOf, lacking, onceMissing, restOf } from "./figure.ts";
import { type IceFigures, iceFigures } from "./ice.ts";
import { type PerformanceFigures, performanceOfField } from "./performance-of-field.ts";
import { surfaceOf } from "./place.ts";
import type { PerformanceAsk } from "./read-performance.ts";
import { forecastOf, observationOf, type ReportFigures } from "./report-figures.ts";
import { type FieldRole, phaseOf } from "./role.ts";
import {
  crosswindMargin,
  onRunway,
  type RunwayWindFigures,
  type TailwindMargin,
  tailwindMargin,
  type WindLimit,
  type WindMargin,
} from "./runway-wind.ts";
import { type FieldTime, fieldTime } from "./times.ts";
import { type TypedFigures, typedOf } from "./typed-conditions.ts";

/** Masses of the flight, from its load; an absent one leaves the distances open. */
export interface FlightMasses {
  readonly takeOff_kg?: number | undefined;
  readonly landing_kg?: number | undefined;
}

/** Of the figures of one field those that no mass moves, in SI, each with where it comes from and what is missing. */
export interface FieldGround {
  readonly role: FieldRole;
  readonly planned: PlannedField;
  /** Absent where neither the book has it nor the flight says it. */
  readonly field?: FlightField;
  /** Absent until one is chosen, and where the field has none of its name. */
  readonly runway?: Runway;
  /** At the surface: what was planned with, else the book's. */
  readonly airspace?: AirspaceClass;
  readonly approach?: ApproachMinima;
  readonly faults: readonly ConditionFault[];
  readonly time: Figure<FieldTime>;
  readonly observation?: ReportFigures<PlacedObservation>;
  readonly forecast?: ReportFigures<PlacedForecast>;
  readonly typed?: TypedFigures;
  readonly weather: FieldWeather;
  readonly air: Figure<AirFigures>;
  readonly wind: Figure<RunwayWindFigures>;
  readonly crosswind: Figure<WindMargin>;
  readonly tailwind: Figure<TailwindMargin>;
  readonly daylight: Figure<DaylightFigures>;
  readonly ice: IceFigures;
}

/** Everything that the Conditions screen shows of one field. */
export interface FieldFigures extends FieldGround, PerformanceFigures {
  /** The take-off at the departure, the landing elsewhere. */
  readonly distance: Figure<DistanceAnswer>;
  /** At the departure, where the book has a table of it; looked up when somebody asks. */
  readonly stop?: Figure<DistanceAnswer> | undefined;
}

/** What of a plan the figures of a field are made from, beside the field and its time. */
export type OwnMinima = Pick<FlightPlan, "own" | "flightRules" | "places">;

export interface FieldFiguresOptions {
  readonly masses?: FlightMasses | undefined;
  /** Between the cells of a table, or the worst of the cells around. */
  readonly mode?: TableMode | undefined;
}

type Own = Pick<NonNullable<FlightPlan["own"]>, "ceiling" | "visibility" | "crosswind" | "climbGradient">;

const OWN: Readonly<Record<keyof Own, { dimension: Dimension; name: string; most: number; unit: UnitId }>> = {
  ceiling: { dimension: "length", name: "your own ceiling", most: toSI(60_000, "ft"), unit: "ft" },
  visibility: { dimension: "length", name: "your own visibility", most: 200_000, unit: "m" },
  crosswind: { dimension: "speed", name: "your own crosswind", most: toSI(100, "kt"), unit: "kt" },
  climbGradient: {
    dimension: "ratio",
    name: "your own climb gradient",
    most: toSI(2000, "ftPerNM"),
    unit: "ftPerNM",
  },
};

/** A minimum that the pilot asks for; undefined when he asks for none. */
export function ownOf(plan: OwnMinima, part: keyof Own): Figure<number> | undefined {
  const read: Read | undefined = plan.own?.[part];
  if (read === undefined) return undefined;
  const { dimension, name, most, unit } = OWN[part];
  const found = typedSI(read, { dimension, name, range: [0, most], unit, step: 1 });
  return "says" in found ? lacking({ what: found.says }) : figureOf(found.value);
}

function ownFaults(plan: OwnMinima): readonly ConditionFault[] {
  return (Object.keys(OWN) as (keyof Own)[]).flatMap((part) => {
    // keys of a const object
    const own = ownOf(plan, part);
    return (own?.missing ?? []).map(({ what }) => ({ where: { kind: "own", part } as const, says: what }));
  });
}

interface Place {
  readonly field?: FlightField;
  readonly runway?: Runway;
  readonly faults: readonly ConditionFault[];
  readonly found: Figure<{ readonly field: FlightField; readonly runway: Runway }>;
}

function placeOf(book: Book, plan: OwnMinima, { code, runway: name }: PlannedField, role: FieldRole): Place {
  const field = fieldOf(book, plan, code);
  if (field === undefined) {
    const known = book.fields?.map((one) => one.code).join(", ") ?? "none";
    const says = `${code}: expected a field of the book (${known}), or one said for this flight`;
    return {
      faults: [{ where: { kind: "field", role }, says }],
      found: lacking({ what: `the field ${code}, in the book or said for this flight`, root: "field" }),
    };
  }
  if (name === undefined)
    return { field, faults: [], found: lacking({ what: `which runway of ${code}`, root: "runway" }) };
  const runway = field.runways.find((one) => one.name === name);
  if (runway === undefined) {
    const known = field.runways.map((one) => one.name).join(", ");
    const says = `runway ${name}: expected a runway of ${code} (${known})`;
    return {
      field,
      faults: [{ where: { kind: "runway", role }, says }],
      found: lacking({ what: `a runway of ${code}: it has ${known}, not ${name}`, root: "runway" }),
    };
  }
  return { field, runway, faults: [], found: figureOf({ field, runway }) };
}

const PERFORMANCE = { what: "what the aircraft can do, in the book", root: "performance" } as const;

/** The wind limits that hold: the book's, and the pilot's own. */
function crosswindLimits(book: Book, plan: OwnMinima): Figure<readonly [WindLimit, ...WindLimit[]]> {
  if (book.performance === undefined) return lacking(PERFORMANCE);
  const { value_mPerS, kind } = book.performance.crosswind;
  const own = ownOf(plan, "crosswind");
  const mine: readonly WindLimit[] =
    own?.value === undefined ? [] : [{ kind: "own", value_mPerS: own.value }];
  return { value: [{ kind, value_mPerS }, ...mine], from: [], missing: own?.missing ?? [] };
}

function massOf(role: FieldRole, masses: FlightMasses | undefined): Figure<number> {
  const mass_kg = role === "departure" ? masses?.takeOff_kg : masses?.landing_kg;
  if (mass_kg !== undefined && Number.isFinite(mass_kg)) return figureOf(mass_kg);
  return lacking({ what: `the ${role === "departure" ? "take-off" : "landing"} mass` });
}

/** The same object for the same point, by which what the tables answer is remembered. */
const rememberedAt = remembered<PerformanceAsk["at"]>();

/** At what the tables of the book are asked for one field. */
function askedAt(
  { role, weather, air, wind }: FieldGround,
  { found }: Place,
  masses: FlightMasses | undefined,
): Figure<PerformanceAsk["at"]> {
  const mass = massOf(role, masses);
  const pressure: Figure<number> = air.value?.pressureAltitude_m ?? { from: [], missing: air.missing };
  const rest = restOf([found, mass, pressure, weather.oat, wind]);
  const values = [mass.value, pressure.value, weather.oat.value, wind.value] as const;
  const [mass_kg, pressureAltitude_m, oat, on] = values;
  if (mass_kg === undefined || pressureAltitude_m === undefined || oat === undefined || on === undefined)
    return rest;
  const point = { mass_kg, pressureAltitude_m, oat_K: oat.hottest_K, along_mPerS: on.along_mPerS };
  const of = found.value?.runway;
  if (of === undefined) return { ...rest, value: point };
  return { ...rest, value: rememberedAt(of, Object.values(point), () => point) };
}

/** Of each point; without a value where the engine refused. */
const rememberedDistance = {
  "take-off": remembered<Figure<DistanceFound>>(),
  landing: remembered<Figure<DistanceFound>>(),
  "accelerate-stop": remembered<Figure<DistanceFound>>(),
} as const;

function distanceFigure(
  name: "take-off" | "landing" | "accelerate-stop",
  { planned, runway }: FieldGround,
  { value: at, ...rest }: Figure<PerformanceAsk["at"]>,
  book: Book,
  plan: OwnMinima,
  options: FieldFiguresOptions,
): Figure<DistanceAnswer> {
  const { performance } = book;
  if (performance === undefined) return { from: [], missing: [PERFORMANCE] };
  if (runway === undefined || at === undefined) return rest;
  const ownFactor_1 = name === "take-off" ? plan.own?.takeOffFactor_1 : plan.own?.landingFactor_1;
  const { condition } = planned;
  if (condition === undefined)
    return { ...rest, missing: onceMissing([...rest.missing, surfaceOf(planned)]) };
  const { mode } = options;
  const worked = rememberedDistance[name](at, [performance, runway, condition, ownFactor_1, mode], () =>
    attempt(
      () => distanceOf(name, { performance, runway, condition, at, ownFactor_1, mode }),
      "the distance",
    ),
  );
  if (worked.value === undefined)
    return { ...rest, missing: onceMissing([...rest.missing, ...worked.missing]) };
  if (!worked.value.ok) return { ...rest, missing: onceMissing([...rest.missing, ...worked.value.missing]) };
  return { ...rest, value: worked.value.answer };
}

/** By what was reported or typed of the air and of the wind: where one value is another, the others are as they were. */
const rememberedAir = remembered<Figure<AirFigures>>();
const rememberedWind = remembered<Figure<RunwayWindFigures>>();
const rememberedMargins = remembered<Pick<FieldGround, "crosswind" | "tailwind">>();

/**
 * The conditions at one field at its time, without what depends on the mass.
 *
 * @param now_ms milliseconds since 1970 UTC; reports age by it
 */
export function fieldGround(
  book: Book,
  plan: OwnMinima,
  planned: PlannedField,
  role: FieldRole,
  time: Figure<FieldTime>,
  now_ms: number,
): FieldGround {
  const place = placeOf(book, plan, planned, role);
  const observation = observationOf(planned, now_ms);
  const forecast = forecastOf(planned, now_ms);
  const read = typedOf(planned, role, now_ms);
  const typed = read === undefined || "unusable" in read ? undefined : read;
  const typedFaults = read === undefined ? [] : "unusable" in read ? [read.unusable] : read.faults;
  const weather = fieldWeather({ code: planned.code, observation, forecast, typed, time });
  const { field, runway } = place;
  const { winds, oat, qnh_Pa } = weather;
  const air: Figure<AirFigures> =
    field === undefined
      ? { from: [], missing: place.found.missing }
      : rememberedAir(qnh_Pa, [field, oat], () => figureOf(airFigures(field, weather)));
  const wind: Figure<RunwayWindFigures> =
    runway === undefined
      ? { from: [], missing: place.found.missing }
      : rememberedWind(winds, [runway, planned.code], () =>
          derived(winds, `the wind at ${planned.code}`, (all) => onRunway(all, runway)),
        );
  const { performance } = book;
  const margins = rememberedMargins(wind, [runway, performance, plan.own?.crosswind], () => ({
    crosswind: crosswindFigure(wind, runway, crosswindLimits(book, plan)),
    tailwind:
      performance === undefined
        ? { from: [], missing: [PERFORMANCE] }
        : derived(wind, "the tailwind", (on) => tailwindMargin(on, performance)),
  }));
  const airspace = planned.airspace ?? field?.airspace;
  const approach = approachOf(planned, role);
  return {
    role,
    planned,
    ...(field === undefined ? {} : { field }),
    ...(runway === undefined ? {} : { runway }),
    ...(airspace === undefined ? {} : { airspace }),
    ...(approach === undefined ? {} : { approach }),
    faults: [...place.faults, ...(approach?.faults ?? []), ...typedFaults, ...ownFaults(plan)],
    time,
    ...(observation === undefined ? {} : { observation }),
    ...(forecast === undefined ? {} : { forecast }),
    ...(typed === undefined ? {} : { typed }),
    weather,
    air,
    wind,
    ...margins,
    daylight: field === undefined ? { from: [], missing: place.found.missing } : daylightFigures(field, time),
    ice: iceFigures(book, weather, planned, observation?.placed?.report.elements),
  };
}

/** The same with the distances that the masses ask for. */
export function withDistances(
  ground: FieldGround,
  book: Book,
  plan: OwnMinima,
  options: FieldFiguresOptions,
): FieldFigures {
  const { planned, role } = ground;
  const place = placeOf(book, plan, planned, role);
  const asked = askedAt(ground, place, options.masses);
  const of = (name: Parameters<typeof distanceFigure>[0]): Figure<DistanceAnswer> =>
    distanceFigure(name, ground, asked, book, plan, options);
  const distance = of(phaseOf(role));
  const hasStop = book.performance?.tables.some(({ quantity }) => quantity === "accelerate-stop") ?? false;
  const stop = whenAsked(() => (role === "departure" && hasStop ? of("accelerate-stop") : undefined));
  const { speeds, abort, ...climbs } = performanceOfField(book, ground, distance, asked, {
    isByInstruments: plan.flightRules === "IFR",
    ownGradient: ownOf(plan, "climbGradient"),
  });
  return {
    ...ground,
    distance,
    ...climbs,
    get stop() {
      return stop();
    },
    get speeds() {
      return speeds();
    },
    get abort() {
      return abort();
    },
  };
}

/**
 * What the conditions at one field of a flight are when it is used, and what they do to the numbers.
 *
 * @returns undefined when the plan has no such field
 * @param now_ms milliseconds since 1970 UTC; reports age by it, and a flight whose time is past leaves now
 */
export function fieldFigures(
  book: Book,
  flight: Flight,
  role: FieldRole,
  now_ms: number,
  options: FieldFiguresOptions = {},
): FieldFigures | undefined {
  const { plan } = flight;
  const planned = plan?.[role];
  if (plan === undefined || planned === undefined) return undefined;
  const ground = fieldGround(book, plan, planned, role, fieldTime(flight, plan, role, now_ms), now_ms);
  return withDistances(ground, book, plan, options);
}

function crosswindFigure(
  wind: Figure<RunwayWindFigures>,
  runway: Runway | undefined,
  limits: Figure<readonly [WindLimit, ...WindLimit[]]>,
): Figure<WindMargin> {
  const rest = restOf([wind, limits]);
  if (runway === undefined || wind.value === undefined || limits.value === undefined) return rest;
  return { ...rest, value: crosswindMargin(wind.value, runway, limits.value) };
}
