import type { BurnPath, BurnPiece, BurnState } from "@witnessmark/engine";
import type { FitEnvelope, FitInput } from "./fit-input.ts";
import type { Flight } from "./flight.ts";
import { EVERYTHING, type Interval, type IntervalSet, intersection, union } from "./interval-set.ts";
import { type EdgeLine, edgeLines, levelEdges, type Quadratic, rangeOn, valueAt } from "./quadratic.ts";

/**
 * By how much the moment of the load may change, its mass staying as it is, for the whole flight to lie within its
 * limits. Moving things about changes one number only, the moment, by the same at every point of the burn. So all
 * that the burn and the envelope ask comes down to the few intervals in which this number may be.
 */
export interface MomentWindow {
  /** Changes that keep the whole flight in every envelope; several where an envelope has a notch. */
  readonly along: IntervalSet;
  /** What the foremost edges alone ask: not less than this. */
  readonly least_kgm: number;
  /** What the rearmost edges alone ask: not more than this. */
  readonly most_kgm: number;
  /** Changes of the sideways moment that keep its limit. */
  readonly sideways: IntervalSet;
}

/** Two masses that differ by no more than rounding are one. */
const SAME_MASS = 1e-12;

/** The change of moment that puts the aircraft on an edge, along a piece of the burn, by kilograms from its start. */
export const changeToEdge = ({ from, linear_m, quadraticMPerKg }: BurnPiece, edge: EdgeLine): Quadratic => ({
  constant: (edge.start_m + edge.slope_mPerKg * from.mass_kg) * from.mass_kg - from.moment_kgm,
  linear: -edge.start_m - 2 * edge.slope_mPerKg * from.mass_kg - linear_m,
  square: edge.slope_mPerKg - quadraticMPerKg,
});

interface Collected {
  along: IntervalSet;
  least_kgm: number;
  most_kgm: number;
}

function collect(into: Collected, sections: readonly Interval[]): void {
  into.along = intersection(into.along, union(sections));
  into.least_kgm = Math.max(into.least_kgm, sections[0]?.low ?? Number.POSITIVE_INFINITY);
  into.most_kgm = Math.min(into.most_kgm, sections.at(-1)?.high ?? Number.NEGATIVE_INFINITY);
}

/**
 * A stretch of the burn within which the mass passes no corner: the same edges are crossed all along, in the same
 * order, so that a change that is right throughout lies between the same two of them throughout.
 */
function stretch(
  into: Collected,
  piece: BurnPiece,
  edges: readonly EdgeLine[],
  from: number,
  to: number,
): void {
  const middle = (from + to) / 2;
  const mass = piece.from.mass_kg - middle;
  const crossed = edges
    .filter(({ low_kg, high_kg }) => low_kg < mass && mass < high_kg)
    .map((edge) => changeToEdge(piece, edge))
    .sort((a, b) => valueAt(a, middle) - valueAt(b, middle));
  const sections = crossed.flatMap((fore, index): Interval[] => {
    const aft = crossed[index + 1];
    if (index % 2 === 1 || aft === undefined) return [];
    return [{ low: rangeOn(fore, from, to).high, high: rangeOn(aft, from, to).low }];
  });
  collect(into, sections);
}

/** A single state: the section of the closed envelope at its mass. */
function single(into: Collected, state: BurnState, envelope: FitEnvelope): void {
  const rest = SAME_MASS * state.mass_kg;
  const corner = envelope.points.find(({ mass_kg }) => Math.abs(mass_kg - state.mass_kg) <= rest);
  const mass = corner?.mass_kg ?? state.mass_kg;
  const pairs = (edges: readonly EdgeLine[]): Interval[] => {
    const arms = edges.map((edge) => edge.start_m + edge.slope_mPerKg * mass).sort((a, b) => a - b);
    return arms.flatMap((low, index) => {
      const high = arms[index + 1];
      return index % 2 === 1 || high === undefined ? [] : [{ low, high }];
    });
  };
  const edges = edgeLines(envelope);
  const level = levelEdges(envelope).filter(({ mass_kg }) => mass_kg === mass);
  const arms = union([
    ...pairs(edges.filter(({ low_kg, high_kg }) => low_kg <= mass && mass < high_kg)),
    ...pairs(edges.filter(({ low_kg, high_kg }) => low_kg < mass && mass <= high_kg)),
    ...level.map(({ low_m, high_m }) => ({ low: low_m, high: high_m })),
  ]);
  const change = (arm_m: number): number => arm_m * mass - state.moment_kgm;
  collect(
    into,
    arms.map(({ low, high }) => ({ low: change(low), high: change(high) })),
  );
}

function alongEnvelope(into: Collected, path: BurnPath, envelope: FitEnvelope): void {
  const edges = edgeLines(envelope);
  let any = false;
  for (const piece of path.pieces) {
    const length = piece.to.burnt_kg - piece.from.burnt_kg;
    const rest = SAME_MASS * piece.from.mass_kg;
    const corners = envelope.points.map(({ mass_kg }) => piece.from.mass_kg - mass_kg);
    const ends = [0, ...corners.filter((s) => s > 0 && s < length).sort((a, b) => a - b), length];
    ends.slice(1).forEach((to, index) => {
      const from = ends[index] ?? 0;
      if (to - from <= 2 * rest) return; // rounding put the mass a hair beyond a corner
      stretch(into, piece, edges, from, to);
      any = true;
    });
  }
  const [only] = path.states;
  if (!any && only !== undefined) single(into, only, envelope);
}

/**
 * The window of one load, exact over the whole burn: along a stretch the change that puts the aircraft on an edge is a
 * quadratic in what has burnt, so its extremes are at the ends of the stretch or where it turns.
 */
export function momentWindow(input: FitInput, flight: Flight): MomentWindow {
  const into: Collected = {
    along: EVERYTHING,
    least_kgm: Number.NEGATIVE_INFINITY,
    most_kgm: Number.POSITIVE_INFINITY,
  };
  for (const { path, envelope } of flight.legs) alongEnvelope(into, path, envelope);
  const limit = input.limits.lateralMoment_kgm;
  const states = flight.paths[0]?.states ?? [];
  const sideways =
    limit === undefined
      ? EVERYTHING
      : union([
          {
            low: Math.max(...states.map(({ lateralMoment_kgm }) => -limit - lateralMoment_kgm)),
            high: Math.min(...states.map(({ lateralMoment_kgm }) => limit - lateralMoment_kgm)),
          },
        ]);
  return { ...into, sideways };
}
