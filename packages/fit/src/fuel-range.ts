import { type BurnPath, pointInEnvelope } from "@witnessmark/engine";
import { type LimitName, sideName, wholeLimit } from "./breaches.ts";
import type { FitEnvelope, FitInput } from "./fit-input.ts";
import { flightOf } from "./flight.ts";
import { changeToEdge } from "./moment-window.ts";
import { edgeLines, rootsOf } from "./quadratic.ts";

/** A limit that allows so much fuel and no more. */
export interface FuelCap {
  readonly name: LimitName;
  readonly most_kg: number;
}

/** How much usable fuel a load may have, its tanks standing as they do along the burn from what is in them now. */
export interface FuelRange {
  /** Least first. Below zero where even dry tanks are too much. */
  readonly caps: readonly FuelCap[];
  /** What taxi, trip, reserve and the least mass for flight ask for. */
  readonly least_kg: number;
  readonly leastBy: LimitName;
}

/** The fuel at which the path, followed up from dry tanks, first leaves an envelope; undefined where it never does. */
function leaves(
  input: FitInput,
  path: BurnPath,
  envelope: FitEnvelope,
): { readonly fuel_kg: number; readonly name: LimitName } | undefined {
  const edges = edgeLines(envelope);
  const dry = path.states.at(-1);
  if (dry === undefined) return undefined;
  const outside = (arm_m: number, mass_kg: number): LimitName | undefined => {
    const { inside, margins } = pointInEnvelope(envelope, { arm_m, mass_kg });
    if (inside) return undefined;
    if (margins.forward_m !== undefined && margins.forward_m < 0) return sideName(input, envelope, "forward");
    if (margins.aft_m !== undefined && margins.aft_m < 0) return sideName(input, envelope, "aft");
    const top = Math.max(...envelope.points.map((point) => point.mass_kg));
    return sideName(input, envelope, mass_kg > top ? "envelope-top" : "envelope-bottom");
  };
  const atDry = outside(dry.arm_m, dry.mass_kg);
  if (atDry !== undefined) return { fuel_kg: Number.NEGATIVE_INFINITY, name: atDry };
  for (const piece of [...path.pieces].reverse()) {
    const { from, to, linear_m, quadraticMPerKg } = piece;
    const length = to.burnt_kg - from.burnt_kg;
    const crossings = edges.flatMap((edge) => rootsOf(changeToEdge(piece, edge)));
    const corners = envelope.points.map(({ mass_kg }) => from.mass_kg - mass_kg);
    const inner = [...crossings, ...corners].filter((s) => s > 0 && s < length).sort((a, b) => b - a);
    const stops = [length, ...inner, 0];
    for (const [index, s] of stops.entries()) {
      const next = stops[index + 1];
      if (next === undefined || next === s) continue;
      const middle = (s + next) / 2;
      const mass_kg = from.mass_kg - middle;
      const moment_kgm = from.moment_kgm + middle * (linear_m + middle * quadraticMPerKg);
      const name = outside(moment_kgm / mass_kg, mass_kg);
      if (name !== undefined) return { fuel_kg: from.fuel_kg - s, name };
    }
  }
  return undefined;
}

/** The fuel at which a value, followed up from dry tanks and straight between states, first passes a limit either way. */
function passes(path: BurnPath, limit: number, value: (state: BurnPath["states"][number]) => number): number {
  let before: BurnPath["states"][number] | undefined;
  for (const state of [...path.states].reverse()) {
    const now = value(state);
    if (Math.abs(now) > limit * (1 + 1e-12) + 1e-9) {
      if (before === undefined) return Number.NEGATIVE_INFINITY;
      const was = value(before);
      const share = (Math.sign(now) * limit - was) / (now - was);
      return before.fuel_kg + share * (state.fuel_kg - before.fuel_kg);
    }
    before = state;
  }
  return Number.POSITIVE_INFINITY;
}

/**
 * The range of fuel, exact over the whole burn. Less fuel means to begin further along the same burn, so the flight
 * with less is a part of the flight with more: what is inside stays inside, and the first place where the path up from
 * dry tanks leaves an envelope is the limit. It is the root of a quadratic.
 */
export function fuelRange(input: FitInput): FuelRange {
  const flight = flightOf(input);
  const { limits, burn } = input;
  const dry_kg = flight.zeroFuel.mass_kg;
  const landed_kg = burn.taxi_kg + burn.trip_kg;
  const caps: FuelCap[] = [{ name: wholeLimit("tanks"), most_kg: flight.ramp.fuel_kg }];
  const cap = (name: LimitName, most_kg: number | undefined): void => {
    if (most_kg !== undefined && most_kg !== Number.POSITIVE_INFINITY) caps.push({ name, most_kg });
  };
  const less = (limit: number | undefined, burnt_kg: number): number | undefined =>
    limit === undefined ? undefined : limit - dry_kg + burnt_kg;
  cap(wholeLimit("ramp"), less(limits.ramp_kg, 0));
  cap(wholeLimit("take-off"), less(limits.takeOff_kg, burn.taxi_kg));
  cap(wholeLimit("landing"), less(limits.landing_kg, landed_kg));
  const spare = less(limits.zeroFuel_kg, 0);
  if (spare !== undefined && spare < -1e-12 * dry_kg) {
    cap(wholeLimit("zero-fuel"), Number.NEGATIVE_INFINITY);
  }
  const [path] = flight.paths;
  if (path !== undefined) {
    const { lateralMoment_kgm, fuelImbalance_kg } = limits;
    if (lateralMoment_kgm !== undefined) {
      cap(
        wholeLimit("lateral"),
        passes(path, lateralMoment_kgm, (state) => state.lateralMoment_kgm),
      );
    }
    if (fuelImbalance_kg !== undefined) {
      cap(
        wholeLimit("imbalance"),
        passes(path, fuelImbalance_kg, (state) => state.imbalance_kg),
      );
    }
  }
  for (const envelope of input.envelopes) {
    for (const one of flight.paths) {
      // From take-off on it is to be in the envelope; on the ramp there is so much more.
      const air = leaves(input, one, envelope);
      if (air !== undefined) cap(air.name, air.fuel_kg + burn.taxi_kg);
    }
  }
  const needed_kg = landed_kg + (burn.reserve_kg ?? 0);
  const flying_kg = less(limits.minimumFlight_kg, landed_kg) ?? 0;
  return {
    caps: caps.sort((a, b) => a.most_kg - b.most_kg),
    least_kg: Math.max(needed_kg, flying_kg),
    leastBy: wholeLimit(flying_kg > needed_kg ? "minimum-flight" : "fuel"),
  };
}

/** What each tank holds when so much usable fuel is left of what is in them now, along the burn. */
export function volumesAt(input: FitInput, fuel_kg: number): Readonly<Record<string, number>> {
  const aboard_kg = flightOf(input).ramp.fuel_kg;
  const burnt: FitInput = {
    ...input,
    burn: { taxi_kg: Math.max(0, aboard_kg - fuel_kg), trip_kg: 0 },
  };
  return flightOf(burnt).takeOff.volumes_m3;
}

/** The same load with every tank full. */
export const filled = (input: FitInput): FitInput => ({
  ...input,
  tanks: input.tanks.map((tank) => ({ ...tank, volume_m3: tank.arms.at(-1)?.volume_m3 ?? tank.volume_m3 })),
});
