import { exactSumOfProducts } from "./exact-sum.ts";
import { putInOrder } from "./put-in-order.ts";

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

/** An edge with what can be said of it before any place is known: its box, and its course in shares of the scale. */
interface Side {
  readonly a: MassAndArm;
  readonly b: MassAndArm;
  readonly low: MassAndArm;
  readonly high: MassAndArm;
  readonly dx: number;
  readonly dy: number;
  readonly length2: number;
}

/** The arm limit of an edge as start + slope × mass. */
export type EdgeLine = readonly [start_m: number, slope_mPerKg: number];

interface Outline {
  readonly edges: readonly Edge[];
  readonly lines: readonly EdgeLine[];
  readonly sides: readonly Side[];
  readonly scale: Scale;
  /** Within this of an edge a place is on it. */
  readonly rest: Scale;
}

/** What depends on the corners alone is made once: a drag asks for it hundreds of times a second. */
const outlines = new WeakMap<Envelope["points"], Outline>();

function outlineOf({ points }: Envelope): Outline {
  const known = outlines.get(points);
  if (known !== undefined) return known;
  const edges = points.map((to, index): Edge => [points.at(index - 1) ?? to, to]);
  const scale: Scale = {
    arm_m: Math.max(1e-9, ...points.map(({ arm_m }) => Math.abs(arm_m))),
    mass_kg: Math.max(1e-9, ...points.map(({ mass_kg }) => Math.abs(mass_kg))),
  };
  const outline: Outline = {
    edges,
    lines: edges.flatMap(lineOf),
    sides: edges.map((edge) => sideIn(edge, scale)),
    scale,
    rest: { arm_m: ON_THE_EDGE * scale.arm_m, mass_kg: ON_THE_EDGE * scale.mass_kg },
  };
  outlines.set(points, outline);
  return outline;
}

/** None of an edge at a single mass. */
function lineOf([a, b]: Edge): readonly EdgeLine[] {
  if (a.mass_kg === b.mass_kg) return [];
  const slope = (b.arm_m - a.arm_m) / (b.mass_kg - a.mass_kg);
  return [[a.arm_m - slope * a.mass_kg, slope]];
}

function sideIn([a, b]: Edge, scale: Scale): Side {
  const dx = (b.arm_m - a.arm_m) / scale.arm_m;
  const dy = (b.mass_kg - a.mass_kg) / scale.mass_kg;
  return {
    a,
    b,
    low: { arm_m: Math.min(a.arm_m, b.arm_m), mass_kg: Math.min(a.mass_kg, b.mass_kg) },
    high: { arm_m: Math.max(a.arm_m, b.arm_m), mass_kg: Math.max(a.mass_kg, b.mass_kg) },
    dx,
    dy,
    length2: dx * dx + dy * dy,
  };
}

/** The edges in order; one from the last corner to the first closes them. */
export const edgesOf = (envelope: Envelope): readonly Edge[] => outlineOf(envelope).edges;

/** The lines of the edges, in their order; an edge at a single mass has none. */
export const linesOf = (envelope: Envelope): readonly EdgeLine[] => outlineOf(envelope).lines;

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

/** Whether a place is beyond the box of a side by more than rounding: then it is on none of its points. */
const isFarFrom = ({ low, high }: Side, { arm_m, mass_kg }: MassAndArm, rest: Scale): boolean =>
  arm_m < low.arm_m - 2 * rest.arm_m ||
  arm_m > high.arm_m + 2 * rest.arm_m ||
  mass_kg < low.mass_kg - 2 * rest.mass_kg ||
  mass_kg > high.mass_kg + 2 * rest.mass_kg;

/** Whether a place is on an edge, its ends included, but for what rounding leaves over. */
function isOnEdge(side: Side, place: MassAndArm, { scale, rest }: Outline): boolean {
  if (isFarFrom(side, place, rest)) return false;
  const { a, dx, dy, length2 } = side;
  const x = (place.arm_m - a.arm_m) / scale.arm_m;
  const y = (place.mass_kg - a.mass_kg) / scale.mass_kg;
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, (x * dx + y * dy) / length2));
  return (x - along * dx) ** 2 + (y - along * dy) ** 2 <= ON_THE_EDGE ** 2;
}

/** Inside or on the edge: crossings of a ray counted with exact signs. */
function isInside(outline: Outline, place: MassAndArm): boolean {
  let inside = false;
  for (const side of outline.sides) {
    if (isOnEdge(side, place, outline)) return true;
    const { a, b } = side;
    if (a.mass_kg > place.mass_kg === b.mass_kg > place.mass_kg) continue;
    if (sideOf(a, b, place) > 0 === b.mass_kg > a.mass_kg) inside = !inside;
  }
  return inside;
}

type Axis = "arm_m" | "mass_kg";

/** Where the edges meet the line on which one coordinate has a value; rising. */
function meetings(sides: readonly Side[], along: Axis, across: Axis, value: number, rest: number): number[] {
  const found: number[] = [];
  for (const { a, b, low, high } of sides) {
    if (value < low[across] - rest || value > high[across] + rest) continue;
    if (high[across] - low[across] <= rest) {
      putInOrder(found, a[along]);
      putInOrder(found, b[along]);
    } else {
      const share = Math.min(1, Math.max(0, (value - a[across]) / (b[across] - a[across])));
      putInOrder(found, share === 1 ? b[along] : a[along] + share * (b[along] - a[along]));
    }
  }
  return found;
}

/** Margins to the ends of that part of a line through the envelope which holds the place, or is nearest to it. */
function marginsAlong(
  outline: Outline,
  place: MassAndArm,
  along: Axis,
  inside: boolean,
): readonly [toLow: number, toHigh: number] | undefined {
  const across: Axis = along === "arm_m" ? "mass_kg" : "arm_m";
  const value = place[along];
  const rest = outline.rest[along];
  const isJoined = (low: number, high: number): boolean => {
    const middle = (low + high) / 2;
    return isInside(
      outline,
      along === "arm_m" ? { arm_m: middle, mass_kg: place.mass_kg } : { arm_m: place.arm_m, mass_kg: middle },
    );
  };
  let nearest: readonly [low: number, high: number] | undefined;
  let nearest_1 = Number.POSITIVE_INFINITY;
  const at = meetings(outline.sides, along, across, place[across], outline.rest[across]);
  for (let first = 0, last = 0; first < at.length; first = last + 1) {
    last = first;
    // one part of the line runs as long as what lies between two meetings is inside
    for (let next = first + 1; next < at.length; next += 1) {
      if (at[next] !== at[last] && !isJoined(at[last] ?? 0, at[next] ?? 0)) break;
      last = next;
    }
    const [low, high] = [at[first] ?? 0, at[last] ?? 0];
    const away = Math.max(low - value, value - high, 0);
    if (away < nearest_1) [nearest, nearest_1] = [[low, high], away];
  }
  if (nearest === undefined) return undefined;
  const snapped = (margin: number): number =>
    Math.abs(margin) <= rest || (inside && margin < 0) ? 0 : margin;
  return [snapped(value - nearest[0]), snapped(nearest[1] - value)];
}

/** Of `pointInEnvelope` only whether it is inside. */
export const isInEnvelope = (envelope: Envelope, place: MassAndArm): boolean =>
  isInside(outlineOf(envelope), place);

/** Of `pointInEnvelope` only what lies ahead and behind. */
export function armsInEnvelope(
  envelope: Envelope,
  place: MassAndArm,
): { readonly inside: boolean } & Pick<EnvelopeMargins, "forward_m" | "aft_m"> {
  const outline = outlineOf(envelope);
  const inside = isInside(outline, place);
  const arms = marginsAlong(outline, place, "arm_m", inside);
  return { inside, forward_m: arms?.[0], aft_m: arms?.[1] };
}

/**
 * Whether a loaded aircraft is inside an envelope, and how far it is from the nearest edges. A corner and an edge count
 * as inside; the test for it is exact but for what conversions leave over.
 *
 * @param envelope one in which `envelopeFaults` finds nothing
 * @param place arm in metres aft of the datum, mass in kilograms; finite
 */
export function pointInEnvelope(envelope: Envelope, place: MassAndArm): EnvelopePlace {
  const { inside, forward_m, aft_m } = armsInEnvelope(envelope, place);
  const masses = marginsAlong(outlineOf(envelope), place, "mass_kg", inside);
  return { inside, margins: { forward_m, aft_m, lower_kg: masses?.[0], upper_kg: masses?.[1] } };
}
