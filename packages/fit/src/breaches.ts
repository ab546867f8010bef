import { type BurnMoment, envelopeAlongBurn, pointInEnvelope, stationMargins } from "@witnessmark/engine";
import { checkInput } from "./check-input.ts";
import type { FitEnvelope, FitInput } from "./fit-input.ts";
import { type Added, type Flight, flightOf } from "./flight.ts";

/** The kinds of limit that a load can break. */
export type LimitFamily =
  | "station"
  | "floor"
  | "group"
  | "holds"
  | "ramp"
  | "take-off"
  | "landing"
  | "zero-fuel"
  | "minimum-flight"
  | "lateral"
  | "imbalance"
  | "fuel"
  | "tanks"
  | "forward"
  | "aft"
  | "envelope-top"
  | "envelope-bottom";

export interface LimitName {
  readonly family: LimitFamily;
  /** The station, the group, the envelope; the family's own name for a limit of the whole aircraft. */
  readonly id: string;
  /** In words: `the aft limit`, `landing mass`. */
  readonly name: string;
}

/** A limit that a load does not keep. */
export interface Breach extends LimitName {
  /** How far beyond the limit; zero for less than can be told. */
  readonly by: number;
  readonly unit: "kg" | "m" | "kg·m" | "items";
  /** Where on the flight it is worst: `at landing`; undefined for a limit of a place. */
  readonly when?: string;
  readonly says: string;
}

/** What conversions and sums leave over, as a share of the limit; the engine's own for envelopes. */
const ON_THE_LIMIT = 1e-12;

export const LIMIT_NAMES = {
  ramp: "ramp mass",
  "take-off": "take-off mass",
  landing: "landing mass",
  "zero-fuel": "zero-fuel mass",
  "minimum-flight": "the least mass for flight",
  lateral: "the sideways limit",
  imbalance: "the limit of uneven fuel",
  fuel: "fuel for the trip and its reserve",
  tanks: "what the tanks hold",
} as const;

type Whole = keyof typeof LIMIT_NAMES;

export const wholeLimit = (family: Whole): LimitName => ({ family, id: family, name: LIMIT_NAMES[family] });

const text = (value: number, unit: Breach["unit"]): string =>
  unit === "m" ? `${(value * 1000).toFixed(1)} mm` : `${value.toFixed(unit === "items" ? 0 : 1)} ${unit}`;

export const breach = (name: LimitName, by: number, unit: Breach["unit"], when?: string): Breach => ({
  ...name,
  by,
  unit,
  ...(when === undefined ? {} : { when }),
  says: `${name.name} is passed by ${text(by, unit)}${when === undefined ? "" : ` ${when}`}`,
});

/** Where on the flight a moment of the burn is, in words. */
export function whenOf(flight: Flight, { burnt_kg }: { readonly burnt_kg: number }): string {
  const near = (state: { readonly burnt_kg: number }): boolean => Math.abs(state.burnt_kg - burnt_kg) < 1e-6;
  if (near(flight.takeOff)) return "at take-off";
  if (near(flight.landing)) return "at landing";
  if (near(flight.zeroFuel)) return "with the fuel gone";
  if (near(flight.ramp)) return "on the ramp";
  if (burnt_kg < flight.takeOff.burnt_kg) return "while taxiing";
  return burnt_kg < flight.landing.burnt_kg ? "in flight" : "on the reserves";
}

export type Side = "forward" | "aft" | "envelope-top" | "envelope-bottom";

/** The names of an envelope's sides; with its own name where several are in force. */
export function sideName(
  input: FitInput,
  envelope: { readonly id: string; readonly name: string },
  family: Side,
): LimitName {
  const base = {
    forward: "the forward limit",
    aft: "the aft limit",
    "envelope-top": "the top of the envelope",
    "envelope-bottom": "the bottom of the envelope",
  }[family];
  const of = input.envelopes.length > 1 ? `, ${envelope.name}` : "";
  return { family, id: envelope.id, name: base + of };
}

function places(input: FitInput, added?: Added): readonly Breach[] {
  const { stations, groups = [], items } = input;
  const lying = items.map(({ at, mass_kg }) => ({ station: at, mass_kg }));
  if (added !== undefined) lying.push(added);
  const margins = stationMargins(stations, groups, lying).flatMap((margin) => {
    if (margin.margin_kg >= -ON_THE_LIMIT * margin.max_kg) return [];
    return [breach(placeLimit(input, margin.limit, margin.id), -margin.margin_kg, "kg")];
  });
  const tooMany = stations.flatMap(({ id, holds }) => {
    const count = items.filter(({ at }) => at === id).length;
    if (holds === undefined || count <= holds) return [];
    return [breach(placeLimit(input, "holds", id), count - holds, "items")];
  });
  return [...margins, ...tooMany];
}

/** The name of a limit of a station or of a group. */
export function placeLimit(
  input: FitInput,
  family: "station" | "floor" | "group" | "holds",
  id: string,
): LimitName {
  const list = family === "group" ? (input.groups ?? []) : input.stations;
  const own = list.find((one) => one.id === id)?.name ?? id;
  const name = {
    station: `the limit of ${own}`,
    floor: `the floor of ${own}`,
    group: `the limit of ${own}`,
    holds: `the room in ${own}`,
  }[family];
  return { family, id, name };
}

function masses(input: FitInput, flight: Flight): readonly Breach[] {
  const { limits } = input;
  const above = (family: Whole, mass_kg: number, limit: number | undefined, when: string): Breach[] =>
    limit === undefined || mass_kg <= limit * (1 + ON_THE_LIMIT)
      ? []
      : [breach(wholeLimit(family), mass_kg - limit, "kg", when)];
  const least = limits.minimumFlight_kg;
  return [
    ...above("zero-fuel", flight.zeroFuel.mass_kg, limits.zeroFuel_kg, "with the fuel gone"),
    ...above("ramp", flight.ramp.mass_kg, limits.ramp_kg, "on the ramp"),
    ...above("take-off", flight.takeOff.mass_kg, limits.takeOff_kg, "at take-off"),
    ...above("landing", flight.landing.mass_kg, limits.landing_kg, "at landing"),
    ...(least === undefined || flight.landing.mass_kg >= least * (1 - ON_THE_LIMIT)
      ? []
      : [breach(wholeLimit("minimum-flight"), least - flight.landing.mass_kg, "kg", "at landing")]),
    ...(flight.short_kg > 0 ? [breach(wholeLimit("fuel"), flight.short_kg, "kg")] : []),
  ];
}

function sideways(input: FitInput, flight: Flight): readonly Breach[] {
  const states = flight.paths[0]?.states ?? [];
  const worst = (
    family: "lateral" | "imbalance",
    limit: number | undefined,
    value: (state: (typeof states)[number]) => number,
    unit: "kg" | "kg·m",
  ): Breach[] => {
    if (limit === undefined) return [];
    // Both are linear in what has burnt between two states, so they are worst at one of them.
    const state = states.reduce((most, one) => (Math.abs(value(one)) > Math.abs(value(most)) ? one : most));
    const by = Math.abs(value(state)) - limit;
    // Moments of many kilograms cancel here: what is left over is a share of them, not of the limit.
    if (by <= 1e-9 + ON_THE_LIMIT * limit) return [];
    return [breach(wholeLimit(family), by, unit, whenOf(flight, state))];
  };
  return [
    ...worst("lateral", input.limits.lateralMoment_kgm, (state) => state.lateralMoment_kgm, "kg·m"),
    ...worst("imbalance", input.limits.fuelImbalance_kg, (state) => state.imbalance_kg, "kg"),
  ];
}

/** By what side of an envelope a place is outside, and how far; undefined for a place inside. */
function beyond(
  input: FitInput,
  flight: Flight,
  envelope: FitEnvelope,
  moment: BurnMoment,
): Breach | undefined {
  const { inside, margins } = pointInEnvelope(envelope, moment);
  if (inside) return undefined;
  const when = whenOf(flight, moment);
  const side = (family: Side, by: number, unit: "m" | "kg"): Breach =>
    breach(sideName(input, envelope, family), by, unit, when);
  const { forward_m, aft_m } = margins;
  if (forward_m !== undefined && forward_m < 0) return side("forward", -forward_m, "m");
  if (aft_m !== undefined && aft_m < 0) return side("aft", -aft_m, "m");
  const all = envelope.points.map(({ mass_kg }) => mass_kg);
  const above = moment.mass_kg - Math.max(...all);
  const below = Math.min(...all) - moment.mass_kg;
  return above > below ? side("envelope-top", above, "kg") : side("envelope-bottom", below, "kg");
}

function envelopes(input: FitInput, flight: Flight): readonly Breach[] {
  // One of each kind is enough: the worst.
  const worst = new Map<string, Breach>();
  const keep = (one: Breach): void => {
    const key = `${one.family} ${one.id}`;
    if (one.by > (worst.get(key)?.by ?? Number.NEGATIVE_INFINITY)) worst.set(key, one);
  };
  for (const { path, envelope } of flight.legs) {
    const along = envelopeAlongBurn(path, envelope);
    if (along.inside) continue;
    const looked: BurnMoment[] = along.outside.flatMap(({ from, to }) => [from, to]);
    for (const side of [along.forward, along.aft]) if (side !== undefined) looked.push(side.at);
    const found = looked.flatMap((moment) => beyond(input, flight, envelope, moment) ?? []);
    found.forEach(keep);
    // Outside between two moments by less than any of them shows: still outside.
    if (found.length === 0) keep(breach(sideName(input, envelope, "aft"), 0, "m", "in flight"));
  }
  return [...worst.values()];
}

/**
 * Every limit that a load does not keep, by the engine's own functions: places, masses, evenness, and each envelope
 * along the whole burn, to the last usable fuel. None where the load is within all of them; on a limit is within it.
 *
 * Every answer of this package is put to this before it is given.
 *
 * @param added mass put at a station besides
 * @throws {InputError} an input that cannot be; names the part at fault
 */
export function breachesOf(input: FitInput, added?: Added): readonly Breach[] {
  checkInput(input);
  const flight = flightOf(input, added);
  return [
    ...places(input, added),
    ...masses(input, flight),
    ...sideways(input, flight),
    ...envelopes(input, flight),
  ];
}
