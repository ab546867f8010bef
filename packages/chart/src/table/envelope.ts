import { fromSI, toSI, UNITS, type UnitId } from "@witnessmark/engine";
import type { ChartPoint } from "../frame/chart-frame.ts";

/** What the x axis of an envelope is. */
export type EnvelopeAxis =
  | { readonly kind: "arm"; readonly unit: UnitId }
  /** `times`: what the print leaves out, such as 1000 on an axis of lb-in/1000. */
  | { readonly kind: "moment"; readonly unit: UnitId; readonly times: number }
  | { readonly kind: "chord"; readonly leadingEdge_m: number; readonly length_m: number };

/** A corner as a book writes it. */
export interface EnvelopeCorner {
  readonly arm: string;
  readonly mass: string;
}

export type EnvelopeResult =
  | { readonly ok: true; readonly corners: readonly EnvelopeCorner[] }
  | { readonly ok: false; readonly says: string };

/** An edge that is straight in moments bends in arms: so far it may lie beside the straight line between two corners. */
const STRAIGHT_WITHIN_m = 0.0005;
const MOST_HALVINGS = 6;

/**
 * The corners of an envelope, in arm and mass, from those tapped on its chart; a first corner that is tapped again at
 * the end counts once.
 *
 * @param corners one after the other round the edge, in the units of the chart's axes
 * @param armUnit the unit that arms are written in
 */
export function envelopeOf(
  corners: readonly ChartPoint[],
  x: EnvelopeAxis,
  massUnit: UnitId,
  armUnit: UnitId,
): EnvelopeResult {
  if (UNITS[massUnit].dimension !== "mass") {
    return { ok: false, says: `Expected a unit of mass on the y axis, found ${massUnit}.` };
  }
  const wanted = x.kind === "arm" ? "length" : x.kind === "moment" ? "mass-moment" : undefined;
  if (x.kind !== "chord" && UNITS[x.unit].dimension !== wanted) {
    return { ok: false, says: `Expected a unit of ${wanted} on the x axis, found ${x.unit}.` };
  }
  if (x.kind === "chord" && !(x.length_m > 0)) {
    return { ok: false, says: "Expected a chord longer than 0. Give its leading edge and its length." };
  }
  const closed = isClosed(corners) ? corners.slice(0, -1) : corners;
  if (closed.length < 3) {
    return { ok: false, says: `An envelope has at least three corners, found ${closed.length}.` };
  }
  const low = closed.find(({ y }) => !(toSI(y, massUnit) > 0));
  if (low !== undefined) {
    return { ok: false, says: `A corner has a mass of ${low.y}. Expected more than 0; look at the axes.` };
  }
  const crossed = crossing(closed);
  if (crossed !== undefined) {
    const [one, other] = crossed.map((edge) => `${edge + 1} to ${((edge + 1) % closed.length) + 1}`);
    return {
      ok: false,
      says: `The edge from corner ${one} crosses the one from ${other}. Expected corners one after the other round the edge.`,
    };
  }
  const whole = closed.flatMap((corner, i) =>
    edge(corner, closed[(i + 1) % closed.length] ?? corner, x, massUnit),
  );
  return {
    ok: true,
    corners: whole.map((corner) => ({
      arm: `${rounded(fromSI(armOf(corner, x, massUnit), armUnit), armUnit)} ${UNITS[armUnit].symbol}`,
      mass: `${Number(corner.y.toFixed(0))} ${UNITS[massUnit].symbol}`,
    })),
  };
}

function isClosed(corners: readonly ChartPoint[]): boolean {
  const [first] = corners;
  const last = corners.at(-1);
  if (first === undefined || last === undefined || corners.length < 4) return false;
  const wide = Math.max(...corners.map(({ x }) => x)) - Math.min(...corners.map(({ x }) => x));
  const tall = Math.max(...corners.map(({ y }) => y)) - Math.min(...corners.map(({ y }) => y));
  return Math.abs(last.x - first.x) < 0.01 * wide && Math.abs(last.y - first.y) < 0.01 * tall;
}

function armOf({ x: value, y }: ChartPoint, x: EnvelopeAxis, massUnit: UnitId): number {
  switch (x.kind) {
    case "arm":
      return toSI(value, x.unit);
    case "moment":
      return toSI(value * x.times, x.unit) / toSI(y, massUnit);
    case "chord":
      return x.leadingEdge_m + (value / 100) * x.length_m;
    default:
      return x satisfies never;
  }
}

/** A corner, and what must stand between it and the next for the edge to be straight enough. */
function edge(from: ChartPoint, to: ChartPoint, x: EnvelopeAxis, massUnit: UnitId): readonly ChartPoint[] {
  if (x.kind !== "moment") return [from];
  const split = (one: ChartPoint, other: ChartPoint, depth: number): readonly ChartPoint[] => {
    const middle = { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 };
    const straight = (armOf(one, x, massUnit) + armOf(other, x, massUnit)) / 2;
    if (depth === 0 || Math.abs(armOf(middle, x, massUnit) - straight) <= STRAIGHT_WITHIN_m) return [one];
    return [...split(one, middle, depth - 1), ...split(middle, other, depth - 1)];
  };
  // an edge along which only the moment moves is straight in arms too
  return from.y === to.y ? [from] : split(from, to, MOST_HALVINGS);
}

/** Tenths of an inch and millimetres: what a chart can be read to. */
function rounded(value: number, unit: UnitId): number {
  const decimals = Math.max(0, Math.ceil(-Math.log10(0.001 / UNITS[unit].factor)));
  return Number(value.toFixed(decimals));
}

/** The places of two edges of a closed line that cross each other; nothing where none do. */
function crossing(corners: readonly ChartPoint[]): readonly [number, number] | undefined {
  const count = corners.length;
  const at = (i: number): ChartPoint => corners[i % count] ?? { x: 0, y: 0 };
  const side = (one: ChartPoint, other: ChartPoint, { x, y }: ChartPoint): number =>
    Math.sign((other.x - one.x) * (y - one.y) - (other.y - one.y) * (x - one.x));
  for (let i = 0; i < count; i += 1) {
    // the edge right after, and the last one with the first, share a corner with it
    for (let j = i + 2; j < count - (i === 0 ? 1 : 0); j += 1) {
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return [i, j];
    }
  }
  return undefined;
}
