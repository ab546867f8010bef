import { type BurnPath, envelopeAlongBurn } from "@witnessmark/engine";
import { type LimitName, placeLimit, wholeLimit } from "./breaches.ts";
import { stationOf } from "./check-input.ts";
import { type FitEnvelope, type FitInput, type FitStation, lateralOf } from "./fit-input.ts";
import { flightOf } from "./flight.ts";
import { type Interval, type IntervalSet, union } from "./interval-set.ts";
import { type EdgeLine, edgeLines, type Quadratic, rootsOf } from "./quadratic.ts";

/** A limit that asks for a mass between two values. */
export interface Cap extends Interval {
  readonly name: LimitName;
}

/** What may be added at a station, everything else staying as it is. */
export interface MassAtStation {
  /** From the limits that are straight in the mass; each with its name. */
  readonly caps: readonly Cap[];
  /** Masses, zero or more, with which every limit is kept. */
  readonly allowed: IntervalSet;
}

function caps(input: FitInput, station: FitStation): readonly Cap[] {
  const { id, max_kg, floor } = station;
  const lies = (ids: readonly string[]): number =>
    input.items.filter(({ at }) => ids.includes(at)).reduce((sum, { mass_kg }) => sum + mass_kg, 0);
  const flight = flightOf(input);
  const { limits } = input;
  const found: Cap[] = [];
  const atMost = (name: LimitName, high: number): void => {
    found.push({ name, low: 0, high });
  };
  atMost(placeLimit(input, "station", id), max_kg - lies([id]));
  if (floor !== undefined) {
    atMost(placeLimit(input, "floor", id), floor.area_m2 * floor.max_kgPerM2 - lies([id]));
  }
  const { holds } = station;
  if (holds !== undefined && input.items.filter(({ at }) => at === id).length >= holds) {
    atMost(placeLimit(input, "holds", id), 0);
  }
  for (const group of input.groups ?? []) {
    if (!group.stations.includes(id)) continue;
    atMost(placeLimit(input, "group", group.id), group.max_kg - lies(group.stations));
  }
  const whole = (
    family: Parameters<typeof wholeLimit>[0],
    limit: number | undefined,
    mass_kg: number,
  ): void => {
    if (limit !== undefined) atMost(wholeLimit(family), limit - mass_kg);
  };
  whole("zero-fuel", limits.zeroFuel_kg, flight.zeroFuel.mass_kg);
  whole("ramp", limits.ramp_kg, flight.ramp.mass_kg);
  whole("take-off", limits.takeOff_kg, flight.takeOff.mass_kg);
  whole("landing", limits.landing_kg, flight.landing.mass_kg);
  const least = limits.minimumFlight_kg;
  if (least !== undefined) {
    const low = least - flight.landing.mass_kg;
    found.push({ name: wholeLimit("minimum-flight"), low, high: Number.POSITIVE_INFINITY });
  }
  const lateral = limits.lateralMoment_kgm;
  const y = lateralOf(station);
  if (lateral !== undefined) {
    const moments = (flight.paths[0]?.states ?? []).map(({ lateralMoment_kgm }) => lateralMoment_kgm);
    const name = wholeLimit("lateral");
    for (const moment of [Math.min(...moments), Math.max(...moments)]) {
      const ends = [(-lateral - moment) / y, (lateral - moment) / y].sort((a, b) => a - b);
      const [low = 0, high = 0] = ends;
      const kept = Math.abs(moment) <= lateral;
      if (y !== 0) found.push({ name, low, high });
      else if (!kept) found.push({ name, low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY });
    }
  }
  return found;
}

/** Whether a value is between two ends, or so near that rounding may have put it outside. */
const about = (value: number, low: number, high: number): boolean =>
  value >= low - 1e-6 && value <= high + 1e-6;

/**
 * Masses at which the path of the whole flight touches an envelope so that what is inside can become outside: a state
 * on an edge, the path touching an edge from along it, the path through a corner. In each case mass and moment are
 * linear in the added mass, and what has burnt is linear in it too, so each is a root of a quadratic.
 */
function touching(path: BurnPath, envelope: FitEnvelope, arm_m: number): readonly number[] {
  const edges = edgeLines(envelope);
  const found: number[] = [];
  for (const { mass_kg: W, moment_kgm: M } of path.states) {
    found.push(...envelope.points.map(({ mass_kg }) => mass_kg - W));
    for (const { start_m, slope_mPerKg: k, low_kg, high_kg } of edges) {
      const roots = rootsOf({
        constant: M - (start_m + k * W) * W,
        linear: arm_m - start_m - 2 * k * W,
        square: -k,
      });
      found.push(...roots.filter((x) => about(W + x, low_kg, high_kg)));
    }
  }
  for (const { from, to, linear_m: l, quadraticMPerKg: q } of path.pieces) {
    const { mass_kg: W, moment_kgm: M } = from;
    const length = to.burnt_kg - from.burnt_kg;
    for (const { mass_kg, arm_m: corner_m } of envelope.points) {
      const p = W - mass_kg; // burnt = p + x, and the mass is the corner's
      const roots = rootsOf({
        constant: M + p * (l + q * p) - corner_m * mass_kg,
        linear: l + 2 * q * p + arm_m,
        square: q,
      });
      found.push(...roots.filter((x) => about(p + x, 0, length)));
    }
    for (const edge of edges) {
      const { p, r, touch } = tangent(W, M, l, q, edge, arm_m);
      found.push(...rootsOf(touch).filter((x) => about(p + r * x, 0, length)));
    }
  }
  return found;
}

interface Touch {
  /** What has burnt where it touches: p + r × added mass. */
  readonly p: number;
  readonly r: number;
  /** Zero where it touches, by the added mass. */
  readonly touch: Quadratic;
}

/** The added mass at which a piece of the path touches the line of an edge without crossing it. */
function tangent(W: number, M: number, l: number, q: number, edge: EdgeLine, arm_m: number): Touch {
  const { start_m: a, slope_mPerKg: k } = edge;
  // It runs straight to the edge: there is no place to touch.
  if (q === k) return { p: 0, r: 0, touch: { constant: 0, linear: 0, square: 0 } };
  // Where the distance from the edge does not change, burnt = p + r x; the mass there is u + v x.
  const p = -(l + a + 2 * k * W) / (2 * (q - k));
  const r = -k / (q - k);
  const u = W - p;
  const v = 1 - r;
  const touch = {
    constant: M + p * (l + q * p) - u * (a + k * u),
    linear: l * r + 2 * q * p * r + arm_m - a * v - 2 * k * u * v,
    square: q * r * r - k * v * v,
  };
  return { p, r, touch };
}

/** Whether the whole flight is inside every envelope with a mass added. */
function insideWith(input: FitInput, station: string, mass_kg: number): boolean {
  const { legs } = flightOf(input, { station, mass_kg });
  return legs.every(({ path, envelope }) => envelopeAlongBurn(path, envelope).inside);
}

/**
 * What may be added at a station. The straight limits give one interval; within it the envelopes can change their
 * answer only at finitely many masses (`touching`), so one test between two neighbours holds for all between them.
 */
export function massAtStation(input: FitInput, id: string): MassAtStation {
  const station = stationOf(input, id);
  const all = caps(input, station);
  const low = Math.max(0, ...all.map((cap) => cap.low));
  const high = Math.min(...all.map((cap) => cap.high));
  if (!(low <= high)) return { caps: all, allowed: [] };
  const { legs } = flightOf(input);
  const critical = legs.flatMap(({ path, envelope }) => touching(path, envelope, station.arm_m));
  const at = [low, ...critical.filter((x) => x > low && x < high).sort((a, b) => a - b), high];
  const kept: Interval[] = [];
  at.forEach((x, index) => {
    if (insideWith(input, id, x)) kept.push({ low: x, high: x });
    const next = at[index + 1];
    if (next === undefined || next === x) return;
    if (insideWith(input, id, (x + next) / 2)) kept.push({ low: x, high: next });
  });
  return { caps: all, allowed: union(kept) };
}
