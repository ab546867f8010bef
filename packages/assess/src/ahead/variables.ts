import type { Book } from "@witnessmark/book";
import { fromSI, toSI, type UnitId } from "@witnessmark/engine";
import type { FlightPlan, PlannedField, Read, TypedConditions } from "@witnessmark/ledger";
import type { Flight } from "../assessment.ts";
import { type FieldFigures, type FlightMasses, fieldFigures } from "../flight/conditions/field-figures.ts";
import { FIELD_ROLES, type FieldRole } from "../flight/conditions/role.ts";
import { wallTimeAt } from "../words/wall-time-at.ts";

/** One value of a flight that the pilot could have wrong, or that can change before the flight is over. */
export interface Variable {
  /** `oat:departure`, `item:2`, `delay` */
  readonly id: string;
  /** "temperature at ZZTW" */
  readonly title: string;
  readonly unit: UnitId;
  /** In `unit`, as the plan or the reports have it now. */
  readonly now: number;
  /** How far it may plausibly go, in `unit`. */
  readonly low: number;
  readonly high: number;
  /** How close to close in, in `unit`. */
  readonly resolution: number;
  /** What it is likely to be wrong by, or to change by, in `unit`: what tips within it comes first. */
  readonly likely: number;
  /** The same flight with another value. */
  readonly with: (value: number) => Flight;
}

type Typed = Omit<TypedConditions, "observedAt">;

/** What is typed replaces what was reported, so a field can be asked about as if its weather were another. */
function typing(flight: Flight, plan: FlightPlan, role: FieldRole, field: PlannedField, now_ms: number) {
  const observedAt = wallTimeAt(now_ms, flight.offBlocks);
  return (typed: Typed): Flight => ({
    ...flight,
    plan: { ...plan, [role]: { ...field, typed: { ...field.typed, ...typed, observedAt } } },
  });
}

const read = (value: number, unit: UnitId): Read => ({ value, unit });

/** The strongest of the winds that may blow, when it has a direction. */
function strongestWind({ weather }: FieldFigures) {
  let strongest:
    | { readonly from_rad: number; readonly speed_mPerS: number; readonly gust_mPerS?: number }
    | undefined;
  for (const { wind } of weather.winds.value ?? []) {
    const { direction, ...speeds } = wind;
    if (direction.kind !== "from") return undefined;
    const most = (one: typeof speeds) => one.gust_mPerS ?? one.speed_mPerS;
    if (strongest === undefined || most(speeds) > most(strongest)) {
      strongest = { from_rad: direction.from_rad, ...speeds };
    }
  }
  return strongest;
}

const KT = (value_mPerS: number) => fromSI(value_mPerS, "kt");

function ofField(
  flight: Flight,
  plan: FlightPlan,
  figures: FieldFigures,
  now_ms: number,
): readonly Variable[] {
  const { role, planned, weather, runway } = figures;
  const { code } = planned;
  const typed = typing(flight, plan, role, planned, now_ms);
  const found: Variable[] = [];
  const oat_K = weather.oat.value?.hottest_K;
  if (oat_K !== undefined) {
    const now = fromSI(oat_K, "degC");
    found.push({
      id: `oat:${role}`,
      title: `temperature at ${code}`,
      unit: "degC",
      now,
      low: Math.max(-60, now - 40),
      high: Math.min(55, now + 40),
      resolution: 0.25,
      likely: 4,
      with: (value) => typed({ oat: read(value, "degC") }),
    });
  }
  const qnh_Pa = weather.qnh_Pa.value;
  if (qnh_Pa !== undefined) {
    const now = fromSI(qnh_Pa, "hPa");
    found.push({
      id: `qnh:${role}`,
      title: `altimeter setting at ${code}`,
      unit: "hPa",
      now,
      low: Math.max(900, now - 60),
      high: Math.min(1070, now + 60),
      resolution: 0.5,
      likely: 5,
      with: (value) => typed({ qnh: read(value, "hPa") }),
    });
  }
  const wind = strongestWind(figures);
  if (wind !== undefined) {
    const windFrom = read(fromSI(wind.from_rad, "deg"), "deg");
    const now = KT(wind.gust_mPerS ?? wind.speed_mPerS);
    const steady = KT(wind.speed_mPerS);
    found.push({
      id: `gust:${role}`,
      title: `gust from ${String(Math.round(windFrom.value / 10) * 10).padStart(3, "0")}° at ${code}`,
      unit: "kt",
      now,
      low: 0,
      high: Math.max(60, now + 20),
      resolution: 0.25,
      likely: 8,
      with: (value) =>
        typed({
          windFrom,
          windSpeed: read(Math.min(steady, value), "kt"),
          ...(value > steady ? { windGust: read(value, "kt") } : {}),
        }),
    });
    if (runway !== undefined) found.push(alongRunway(figures, wind, runway, typed));
  }
  return found;
}

/** Headwind above zero, tailwind below, with nothing across: what the runway is long enough for. */
function alongRunway(
  { role, planned, wind: on }: FieldFigures,
  wind: { readonly from_rad: number; readonly speed_mPerS: number },
  runway: NonNullable<FieldFigures["runway"]>,
  typed: (typed: Typed) => Flight,
): Variable {
  const heading_deg = runway.trueHeading_deg;
  // of several winds the one that helps least is what the distance counts
  const now =
    on.value === undefined
      ? KT(wind.speed_mPerS) * Math.cos(wind.from_rad - toSI(heading_deg, "deg"))
      : KT(on.value.along_mPerS);
  return {
    id: `along:${role}`,
    title: `headwind on ${planned.code} ${runway.name}`,
    unit: "kt",
    now,
    low: -25,
    high: Math.max(40, now + 5),
    resolution: 0.25,
    likely: 10,
    with: (value) =>
      typed({
        windFrom: read(value >= 0 ? heading_deg : (heading_deg + 180) % 360, "deg"),
        windSpeed: read(Math.abs(value), "kt"),
      }),
  };
}

/** What was planned and is not changed is the flight as it is: only what was reported has to be asked as if typed. */
const unlessNow =
  (flight: Flight, now: number, changed: (value: number) => Flight) =>
  (value: number): Flight =>
    value === now ? flight : changed(value);

/** How far a mass is likely to be off, by how it is known. */
const LIKELY_kg = { weighed: 1, stated: 6, standard: 15 } as const;

function ofLoad(book: Book, flight: Flight, plan: FlightPlan): readonly Variable[] {
  const { load } = plan;
  if (load === undefined) return [];
  const nameOf = (id: string): string => book.loading?.stations.find((one) => one.id === id)?.name ?? id;
  const items = load.items.map((item, index): Variable => {
    const now = fromSI(toSI(item.mass.value, item.mass.unit), "kg");
    return {
      id: `item:${item.id}`,
      title: item.what === "" ? `mass, ${nameOf(item.station)}` : item.what,
      unit: "kg",
      now,
      low: 0,
      high: now + 100,
      resolution: 0.25,
      likely: LIKELY_kg[item.known],
      with: unlessNow(flight, now, (value) => ({
        ...flight,
        plan: {
          ...plan,
          load: { ...load, items: load.items.with(index, { ...item, mass: read(value, "kg") }) },
        },
      })),
    };
  });
  const fuel_L = load.fuel.reduce((sum, { volume }) => sum + fromSI(toSI(volume.value, volume.unit), "L"), 0);
  if (!(fuel_L > 0)) return items;
  const fuel: Variable = {
    id: "fuel",
    title: "fuel in the tanks",
    unit: "L",
    now: fuel_L,
    low: 0,
    high: fuel_L * 1.6,
    resolution: 0.5,
    likely: Math.max(5, fuel_L * 0.04),
    with: unlessNow(flight, fuel_L, (value) => ({
      ...flight,
      plan: {
        ...plan,
        load: {
          ...load,
          fuel: load.fuel.map((tank) => ({
            ...tank,
            volume: { ...tank.volume, value: (tank.volume.value * value) / fuel_L },
          })),
        },
      },
    })),
  };
  return [...items, fuel];
}

function ofRoute(flight: Flight, plan: FlightPlan, now_ms: number): readonly Variable[] {
  const found: Variable[] = [];
  const { route } = plan;
  if (route !== undefined) {
    const now = fromSI(toSI(route.time.value, route.time.unit), "min");
    found.push({
      id: "time",
      title: "time in the air",
      unit: "min",
      now,
      low: Math.min(now, 1),
      high: now + 300,
      resolution: 0.5,
      likely: Math.max(5, now * 0.1),
      with: unlessNow(flight, now, (value) => ({
        ...flight,
        plan: { ...plan, route: { ...route, time: read(value, "min") } },
      })),
    });
  }
  const offBlocks_ms = Math.max(Date.parse(flight.offBlocks), now_ms);
  found.push({
    id: "delay",
    title: "delay of off blocks",
    unit: "min",
    now: 0,
    low: 0,
    high: 12 * 60,
    resolution: 1,
    likely: 30,
    with: (value) => ({ ...flight, offBlocks: wallTimeAt(offBlocks_ms + value * 60_000, flight.offBlocks) }),
  });
  return found;
}

/** Everything of a flight that can be asked about, in no order. */
export function variablesOf(
  book: Book,
  flight: Flight,
  plan: FlightPlan,
  masses: FlightMasses,
  now_ms: number,
): readonly Variable[] {
  const fields = FIELD_ROLES.flatMap((role) => {
    const figures = fieldFigures(book, flight, role, now_ms, { masses });
    return figures === undefined ? [] : ofField(flight, plan, figures, now_ms);
  });
  return [...fields, ...ofLoad(book, flight, plan), ...ofRoute(flight, plan, now_ms)];
}
