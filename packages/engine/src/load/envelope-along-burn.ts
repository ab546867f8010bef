import type { BurnPath, BurnPiece } from "./burn-path.ts";
import { armsInEnvelope, type Envelope, isInEnvelope, linesOf } from "./envelope.ts";
import { putInOrder } from "./put-in-order.ts";

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

/** Adds the real solutions of a x² + b x + c = 0, without loss where b is great. */
function addRoots(add: (root: number) => void, a: number, b: number, c: number): void {
  if (a === 0) {
    if (b !== 0) add(-c / b);
    return;
  }
  const discriminant = b * b - 4 * a * c;
  if (!(discriminant >= 0)) return;
  const half = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  if (half === 0) return; // a piece begins there anyway
  add(half / a);
  add(c / half);
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
  const found = [0, length];
  const add = (s: number): void => {
    if (s > 0 && s < length) putInOrder(found, s);
  };
  for (const { mass_kg } of envelope.points) add(W - mass_kg);
  const addTurning = (slope: number): void =>
    // d/ds (M + l s + q s²)/(W − s) + slope = 0, over (W − s)²
    addRoots(add, slope - q, 2 * W * (q - slope), l * W + M + slope * W * W);
  addTurning(0);
  for (const [start, slope] of linesOf(envelope)) {
    addTurning(slope);
    // M + l s + q s² = (start + slope (W − s)) (W − s)
    addRoots(add, q - slope, l + start + 2 * slope * W, M - start * W - slope * W * W);
  }
  return found;
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
  readonly inside: boolean;
  /** At a root; a place between two roots only says whether it is inside. */
  readonly margins?: { readonly forward_m: number | undefined; readonly aft_m: number | undefined };
}

/**
 * Goes along the burn, root by root and half-way between two of them, for as long as what sees it says so.
 *
 * @param see `isRoot`: a place between two roots only says whether it is inside
 * @returns whether it came to the end
 */
function goAlong(
  { states, pieces }: BurnPath,
  envelope: Envelope,
  see: (moment: BurnMoment, isRoot: boolean) => boolean,
): boolean {
  const [only] = states;
  if (pieces.length === 0 && only !== undefined) return see(only, true);
  return pieces.every((piece, index) => {
    let before: number | undefined;
    for (const s of candidates(piece, envelope)) {
      if (s === before) continue;
      if (before !== undefined && !see(momentAt(piece, (before + s) / 2), false)) return false;
      // a piece begins where the one before it ended
      if ((before !== undefined || index === 0) && !see(momentAt(piece, s), true)) return false;
      before = s;
    }
    return true;
  });
}

/** Of `envelopeAlongBurn` only whether all of it is inside. */
export const isInsideAlongBurn = (path: BurnPath, envelope: Envelope): boolean =>
  goAlong(path, envelope, (moment) => isInEnvelope(envelope, moment));

function look(path: BurnPath, envelope: Envelope): readonly Looked[] {
  const looked: Looked[] = [];
  goAlong(path, envelope, (moment, isRoot) => {
    if (isRoot) {
      const { inside, ...margins } = armsInEnvelope(envelope, moment);
      looked.push({ moment, inside, margins });
    } else looked.push({ moment, inside: isInEnvelope(envelope, moment) });
    return true;
  });
  return looked;
}

/** The first at which a value is least; undefined where there is none. */
function leastOf<T>(all: readonly T[], measure: (one: T) => number | undefined): T | undefined {
  let best: T | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const one of all) {
    const value = measure(one);
    if (value !== undefined && value < least) [best, least] = [one, value];
  }
  return best;
}

function outsideParts(looked: readonly Looked[]): EnvelopeAlongBurn["outside"] {
  const parts: { from: BurnMoment; to: BurnMoment }[] = [];
  let open = false;
  looked.forEach(({ inside, moment, margins }, index) => {
    if (inside) {
      open = false;
      return;
    }
    // Between two roots nothing changes: what is outside there is outside from root to root.
    const from = margins === undefined ? (looked[index - 1]?.moment ?? moment) : moment;
    const to = margins === undefined ? (looked[index + 1]?.moment ?? moment) : moment;
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
    const worst = leastOf(looked, ({ margins }) => margins?.[side]);
    const margin_m = worst?.margins?.[side];
    return worst === undefined || margin_m === undefined ? undefined : { margin_m, at: plain(worst.moment) };
  };
  const plain = ({ burnt_kg, mass_kg, arm_m }: BurnMoment): BurnMoment => ({ burnt_kg, mass_kg, arm_m });
  return {
    inside: looked.every(({ inside }) => inside),
    forward: margin("forward_m"),
    aft: margin("aft_m"),
    foremost: plain((leastOf(looked, ({ moment }) => moment.arm_m) ?? first).moment),
    aftmost: plain((leastOf(looked, ({ moment }) => -moment.arm_m) ?? first).moment),
    outside: outsideParts(looked).map(({ from, to }) => ({ from: plain(from), to: plain(to) })),
  };
}
