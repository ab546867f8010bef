import { exactSumOfProducts } from "./exact-sum.ts";

/** A corner of an envelope, or the place of a loaded aircraft in it. */
export interface MassAndArm {
  readonly arm_m: number;
  readonly mass_kg: number;
}

/** A closed polygon in arm and mass; its edges are straight in these two. The last corner joins the first. */
export interface Envelope {
  readonly points: readonly MassAndArm[];
}

/** Two corners and the edge between them. */
export type Edge = readonly [from: MassAndArm, to: MassAndArm];

/**
 * How far a loading is from the nearest edges: above zero inside, zero on the edge, below zero beyond it. Undefined
 * where the envelope has no edge at this mass (forward, aft) or at this arm (upper, lower).
 */
export interface EnvelopeMargins {
  /** To the edge ahead at this mass. */
  readonly forward_m: number | undefined;
  /** To the edge behind at this mass. */
  readonly aft_m: number | undefined;
  /** To the edge above at this arm. */
  readonly upper_kg: number | undefined;
  /** To the edge below at this arm. */
  readonly lower_kg: number | undefined;
}

export interface EnvelopePlace {
  /** On an edge or a corner counts as inside. */
  readonly inside: boolean;
  readonly margins: EnvelopeMargins;
}

/**
 * What conversions and sums leave over, as a share of the envelope's greatest arm and mass: 4e-12 m on a 4 m arm. A
 * place this close to an edge is on it; it is thousands of times what rounding adds, and no scale shows it.
 */
const ON_THE_EDGE = 1e-12;

interface Scale {
  readonly arm_m: number;
  readonly mass_kg: number;
}

interface Outline {
  readonly edges: readonly Edge[];
  readonly scale: Scale;
}

/** What depends on the corners alone is made once: a drag asks for it hundreds of times a second. */
const outlines = new WeakMap<Envelope["points"], Outline>();

function outlineOf({ points }: Envelope): Outline {
  const known = outlines.get(points);
  if (known !== undefined) return known;
  const outline: Outline = {
    edges: points.map((to, index): Edge => [points.at(index - 1) ?? to, to]),
    scale: {
      arm_m: Math.max(1e-9, ...points.map(({ arm_m }) => Math.abs(arm_m))),
      mass_kg: Math.max(1e-9, ...points.map(({ mass_kg }) => Math.abs(mass_kg))),
    },
  };
  outlines.set(points, outline);
  return outline;
}

/** The edges in order; one from the last corner to the first closes them. */
export const edgesOf = (envelope: Envelope): readonly Edge[] => outlineOf(envelope).edges;

/** What the quick form of `sideOf` can be off, as a share of its two products (Shewchuk 1997, orientation test). */
const QUICK_ERROR = 3.3306690738754716e-16;

/**
 * On which side of the line from a to b a place lies: above zero, zero on it, below zero. The sign is exact: where the
 * quick form could be wrong, the sum is made without error.
 *
 * @source Shewchuk, Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates, 1997
 */
export function sideOf(a: MassAndArm, b: MassAndArm, place: MassAndArm): number {
  const left = (a.arm_m - place.arm_m) * (b.mass_kg - place.mass_kg);
  const right = (a.mass_kg - place.mass_kg) * (b.arm_m - place.arm_m);
  const quick = left - right;
  if (Math.abs(quick) > QUICK_ERROR * (Math.abs(left) + Math.abs(right))) return quick;
  return exactSumOfProducts([
    [b.arm_m, place.mass_kg],
    [-b.arm_m, a.mass_kg],
    [-a.arm_m, place.mass_kg],
    [-b.mass_kg, place.arm_m],
    [b.mass_kg, a.arm_m],
    [a.mass_kg, place.arm_m],
  ]);
}

/** Whether a place is on an edge, its ends included, but for what rounding leaves over. */
function isOnEdge([a, b]: Edge, place: MassAndArm, scale: Scale): boolean {
  const x = (place.arm_m - a.arm_m) / scale.arm_m;
  const y = (place.mass_kg - a.mass_kg) / scale.mass_kg;
  const dx = (b.arm_m - a.arm_m) / scale.arm_m;
  const dy = (b.mass_kg - a.mass_kg) / scale.mass_kg;
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, (x * dx + y * dy) / length2));
  return (x - along * dx) ** 2 + (y - along * dy) ** 2 <= ON_THE_EDGE ** 2;
}

/** Inside or on the edge: crossings of a ray counted with exact signs. */
function isInside(edges: readonly Edge[], place: MassAndArm, scale: Scale): boolean {
  if (edges.some((edge) => isOnEdge(edge, place, scale))) return true;
  let inside = false;
  for (const [a, b] of edges) {
    if (a.mass_kg > place.mass_kg === b.mass_kg > place.mass_kg) continue;
    if (sideOf(a, b, place) > 0 === b.mass_kg > a.mass_kg) inside = !inside;
  }
  return inside;
}

type Axis = "arm_m" | "mass_kg";

/** Where the edges meet the line on which one coordinate has a value; rising, each once. */
function meetings(edges: readonly Edge[], along: Axis, across: Axis, value: number, rest: number): number[] {
  const found: number[] = [];
  for (const [a, b] of edges) {
    const low = Math.min(a[across], b[across]);
    const high = Math.max(a[across], b[across]);
    if (value < low - rest || value > high + rest) continue;
    if (high - low <= rest) found.push(a[along], b[along]);
    else {
      const share = Math.min(1, Math.max(0, (value - a[across]) / (b[across] - a[across])));
      found.push(share === 1 ? b[along] : a[along] + share * (b[along] - a[along]));
    }
  }
  found.sort((one, other) => one - other);
  return found.filter((one, index) => one !== found[index - 1]);
}

/** Margins to the ends of that part of a line through the envelope which holds the place, or is nearest to it. */
function marginsAlong(
  edges: readonly Edge[],
  place: MassAndArm,
  along: Axis,
  inside: boolean,
  scale: Scale,
): readonly [toLow: number, toHigh: number] | undefined {
  const across: Axis = along === "arm_m" ? "mass_kg" : "arm_m";
  const at = meetings(edges, along, across, place[across], ON_THE_EDGE * scale[across]);
  const onLine = (value: number): MassAndArm =>
    along === "arm_m" ? { arm_m: value, mass_kg: place.mass_kg } : { arm_m: place.arm_m, mass_kg: value };
  const parts: [number, number][] = [];
  for (const value of at) {
    const last = parts.at(-1);
    const middle = last === undefined ? value : (last[1] + value) / 2;
    const joined = last !== undefined && isInside(edges, onLine(middle), scale);
    if (joined) last[1] = value;
    else parts.push([value, value]);
  }
  const value = place[along];
  const distance = ([low, high]: readonly [number, number]): number => Math.max(low - value, value - high, 0);
  const [nearest] = parts.sort((one, other) => distance(one) - distance(other));
  if (nearest === undefined) return undefined;
  const snapped = (margin: number): number =>
    Math.abs(margin) <= ON_THE_EDGE * scale[along] || (inside && margin < 0) ? 0 : margin;
  return [snapped(value - nearest[0]), snapped(nearest[1] - value)];
}

/**
 * Whether a loaded aircraft is inside an envelope, and how far it is from the nearest edges. A corner and an edge count
 * as inside; the test for it is exact but for what conversions leave over.
 *
 * @param envelope one in which `envelopeFaults` finds nothing
 * @param place arm in metres aft of the datum, mass in kilograms; finite
 */
export function pointInEnvelope(envelope: Envelope, place: MassAndArm): EnvelopePlace {
  const { edges, scale } = outlineOf(envelope);
  const inside = isInside(edges, place, scale);
  const arms = marginsAlong(edges, place, "arm_m", inside, scale);
  const masses = marginsAlong(edges, place, "mass_kg", inside, scale);
  return {
    inside,
    margins: { forward_m: arms?.[0], aft_m: arms?.[1], lower_kg: masses?.[0], upper_kg: masses?.[1] },
  };
}
