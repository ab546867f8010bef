import type { BurnPath, BurnPiece } from "./burn-path.ts";
import { type Edge, type Envelope, type EnvelopePlace, edgesOf, pointInEnvelope } from "./envelope.ts";

/** A moment of the burn: the aircraft when so much has burnt. */
export interface BurnMoment {
  readonly burnt_kg: number;
  readonly mass_kg: number;
  readonly arm_m: number;
}

export interface EnvelopeAlongBurn {
  /** Inside from the start to the end, and everywhere between. */
  readonly inside: boolean;
  /** Where the margin to the edge ahead is least; undefined where there is no such edge at any mass of the burn. */
  readonly forward: { readonly margin_m: number; readonly at: BurnMoment } | undefined;
  /** Where the margin to the edge behind is least. */
  readonly aft: { readonly margin_m: number; readonly at: BurnMoment } | undefined;
  /** Where the arm is least and where it is greatest. */
  readonly foremost: BurnMoment;
  readonly aftmost: BurnMoment;
  /** The parts of the burn that are outside, from their first moment to their last; none where all is inside. */
  readonly outside: readonly { readonly from: BurnMoment; readonly to: BurnMoment }[];
}

/** The real solutions of a x² + b x + c = 0, without loss where b is great. */
function quadraticRoots(a: number, b: number, c: number): readonly number[] {
  if (a === 0) return b === 0 ? [] : [-c / b];
  const discriminant = b * b - 4 * a * c;
  if (!(discriminant >= 0)) return [];
  const half = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  return half === 0 ? [0] : [half / a, c / half];
}

/** The arm limit of an edge as start + slope × mass; undefined for one at a single mass. */
function asLine([a, b]: Edge): readonly [start_m: number, slope_mPerKg: number] | undefined {
  if (a.mass_kg === b.mass_kg) return undefined;
  const slope = (b.arm_m - a.arm_m) / (b.mass_kg - a.mass_kg);
  return [a.arm_m - slope * a.mass_kg, slope];
}

/**
 * Where, on a piece of the burn, anything can begin, end or be at its worst, as kilograms from its start: its ends, the
 * masses of the corners, the crossings of each edge, and where the arm stops moving towards each edge. With mass
 * W − s and moment M + l s + q s², each of the last two is the root of a quadratic.
 */
function candidates(piece: BurnPiece, envelope: Envelope): readonly number[] {
  const { linear_m: l, quadraticMPerKg: q, from, to } = piece;
  const { mass_kg: W, moment_kgm: M } = from;
  const length = to.burnt_kg - from.burnt_kg;
  const found = [0, length, ...envelope.points.map(({ mass_kg }) => W - mass_kg)];
  const turning = (slope: number): readonly number[] =>
    // d/ds (M + l s + q s²)/(W − s) + slope = 0, over (W − s)²
    quadraticRoots(slope - q, 2 * W * (q - slope), l * W + M + slope * W * W);
  found.push(...turning(0));
  for (const edge of edgesOf(envelope)) {
    const line = asLine(edge);
    if (line === undefined) continue;
    const [start, slope] = line;
    found.push(...turning(slope));
    // M + l s + q s² = (start + slope (W − s)) (W − s)
    found.push(...quadraticRoots(q - slope, l + start + 2 * slope * W, M - start * W - slope * W * W));
  }
  return [...new Set(found.filter((s) => s >= 0 && s <= length))].sort((a, b) => a - b);
}

function momentAt({ from, to, linear_m, quadraticMPerKg }: BurnPiece, s: number): BurnMoment {
  if (s === 0) return { burnt_kg: from.burnt_kg, mass_kg: from.mass_kg, arm_m: from.arm_m };
  if (s === to.burnt_kg - from.burnt_kg)
    return { burnt_kg: to.burnt_kg, mass_kg: to.mass_kg, arm_m: to.arm_m };
  const mass_kg = from.mass_kg - s;
  const moment_kgm = from.moment_kgm + s * (linear_m + s * quadraticMPerKg);
  return { burnt_kg: from.burnt_kg + s, mass_kg, arm_m: moment_kgm / mass_kg };
}

interface Looked {
  readonly moment: BurnMoment;
  readonly place: EnvelopePlace;
  /** A root, or a place between two: a place between only says whether it is inside. */
  readonly between: boolean;
}

function look(path: BurnPath, envelope: Envelope): readonly Looked[] {
  const at = (moment: BurnMoment, between: boolean): Looked => ({
    moment,
    place: pointInEnvelope(envelope, moment),
    between,
  });
  const [only] = path.states;
  if (path.pieces.length === 0) return only === undefined ? [] : [at(only, false)];
  return path.pieces.flatMap((piece, index) => {
    const where = candidates(piece, envelope);
    return where.flatMap((s, n) => {
      const before = where[n - 1];
      if (before === undefined) return index === 0 ? [at(momentAt(piece, s), false)] : [];
      return [at(momentAt(piece, (before + s) / 2), true), at(momentAt(piece, s), false)];
    });
  });
}

const least = <T>(all: readonly T[], value: (one: T) => number | undefined): T | undefined =>
  all
    .filter((one) => value(one) !== undefined)
    .reduce<T | undefined>(
      (best, one) => (best === undefined || (value(one) ?? 0) < (value(best) ?? 0) ? one : best),
      undefined,
    );

function outsideParts(looked: readonly Looked[]): EnvelopeAlongBurn["outside"] {
  const parts: { from: BurnMoment; to: BurnMoment }[] = [];
  let open = false;
  looked.forEach(({ place, moment, between }, index) => {
    if (place.inside) {
      open = false;
      return;
    }
    // Between two roots nothing changes: what is outside there is outside from root to root.
    const from = between ? (looked[index - 1]?.moment ?? moment) : moment;
    const to = between ? (looked[index + 1]?.moment ?? moment) : moment;
    const last = parts.at(-1);
    if (open && last !== undefined) last.to = to;
    else parts.push({ from, to });
    open = true;
  });
  return parts;
}

/**
 * The whole burn in an envelope: whether all of it is inside, where each margin is least, and which parts are outside.
 * Nothing is stepped: between two states of the path the moment is a quadratic in what burns, so the worst point and
 * the crossings are roots of quadratics, and between two of them nothing changes.
 *
 * @param path of `burnPath`
 * @param envelope one in which `envelopeFaults` finds nothing
 */
export function envelopeAlongBurn(path: BurnPath, envelope: Envelope): EnvelopeAlongBurn {
  const looked = look(path, envelope);
  const [first] = looked;
  if (first === undefined) throw new Error("a burn path without a state"); // burnPath gives one at least
  const margin = (side: "forward_m" | "aft_m"): EnvelopeAlongBurn["forward"] => {
    const worst = least(looked, ({ place }) => place.margins[side]);
    const margin_m = worst?.place.margins[side];
    return worst === undefined || margin_m === undefined ? undefined : { margin_m, at: plain(worst.moment) };
  };
  const plain = ({ burnt_kg, mass_kg, arm_m }: BurnMoment): BurnMoment => ({ burnt_kg, mass_kg, arm_m });
  return {
    inside: looked.every(({ place }) => place.inside),
    forward: margin("forward_m"),
    aft: margin("aft_m"),
    foremost: plain((least(looked, ({ moment }) => moment.arm_m) ?? first).moment),
    aftmost: plain((least(looked, ({ moment }) => -moment.arm_m) ?? first).moment),
    outside: outsideParts(looked).map(({ from, to }) => ({ from: plain(from), to: plain(to) })),
  };
}
