import { normalBelow_1 } from "../conformity/normal.ts";
import { InputError } from "../input-error.ts";
import { type Edge, type Envelope, edgesOf, type MassAndArm, pointInEnvelope } from "./envelope.ts";
import { exactSumOfProducts } from "./exact-sum.ts";
import { type LoadItem, loadedState } from "./loaded-state.ts";

/** One thing aboard and how well its mass is known. */
export interface UncertainItem extends LoadItem {
  /** Standard uncertainty of its mass; 0 where it is exact. Apart from those of the others. */
  readonly standardUncertainty_kg: number;
}

/** Mass and moment as a pair of normal variables. Arms are taken as exact. */
export interface UncertainState {
  readonly mass_kg: number;
  readonly moment_kgm: number;
  readonly massUncertainty_kg: number;
  readonly momentUncertainty_kgm: number;
  /** Covariance of mass and moment, in kg² m. */
  readonly covariance_kg2m: number;
}

/**
 * Mass and moment of items whose masses are known apart from each other.
 *
 * @throws {InputError} as `loadedState`; `out-of-range` for an uncertainty below zero
 */
export function uncertainState(items: readonly UncertainItem[]): UncertainState {
  items.forEach(({ standardUncertainty_kg: u }, index) => {
    if (u >= 0 && Number.isFinite(u)) return;
    throw new InputError("out-of-range", `items[${index}].standardUncertainty_kg`, {
      expected: "an uncertainty of zero or more",
      received: String(u),
    });
  });
  const { mass_kg, moment_kgm } = loadedState(items);
  const variance = (power: 0 | 1 | 2): number =>
    exactSumOfProducts(items.map(({ standardUncertainty_kg: u, arm_m }) => [u * u, arm_m ** power] as const));
  return {
    mass_kg,
    moment_kgm,
    massUncertainty_kg: Math.sqrt(variance(0)),
    momentUncertainty_kgm: Math.sqrt(variance(2)),
    covariance_kg2m: variance(1),
  };
}

/** The probability that a normal variable is at or above zero; certain where it has no spread. */
const atLeastZero = (mean: number, spread: number): number =>
  spread > 0 ? normalBelow_1(mean / spread) : mean >= 0 ? 1 : 0;

/** The probability that the mass is at or below a limit. Closed form. */
export const probabilityOfMassLimit = (state: UncertainState, limit_kg: number): number =>
  atLeastZero(limit_kg - state.mass_kg, state.massUncertainty_kg);

/** An edge of an envelope that is taken on, without ends, as a straight limit of arm against mass. */
export interface EdgeProbability {
  readonly from: MassAndArm;
  readonly to: MassAndArm;
  /** What the edge bounds: the least arm, the greatest arm, the greatest mass or the least mass. */
  readonly bounds: "forward" | "aft" | "upper" | "lower";
  readonly probability_1: number;
}

const directions = new WeakMap<Envelope["points"], 1 | -1>();

/**
 * Which way the inside of an envelope lies: 1 where its corners run counter-clockwise (arm right, mass up). It depends
 * on the corners alone and is looked for once.
 */
function direction(envelope: Envelope): 1 | -1 {
  const known = directions.get(envelope.points);
  if (known !== undefined) return known;
  const twiceTheArea = exactSumOfProducts(
    edgesOf(envelope).flatMap(([a, b]) => [[a.arm_m, b.mass_kg] as const, [-b.arm_m, a.mass_kg] as const]),
  );
  const turn = twiceTheArea > 0 ? 1 : -1;
  directions.set(envelope.points, turn);
  return turn;
}

/**
 * The probability that an edge is kept. With arm limit p + q W at mass W, what has to be at or above zero is
 * ±(M − p W − q W²): for an edge at one arm (q = 0) that is a sum of masses times constants and so exactly normal; for
 * one that leans, W² is taken by its tangent at the mean, which is off by q u² in the moment: grams times metres.
 */
function edgeProbability(state: UncertainState, [from, to]: Edge, turn: 1 | -1): EdgeProbability {
  const rise = turn * (to.mass_kg - from.mass_kg);
  if (rise === 0) {
    const upper = turn * (to.arm_m - from.arm_m) < 0;
    const spare = upper ? from.mass_kg - state.mass_kg : state.mass_kg - from.mass_kg;
    return {
      from,
      to,
      bounds: upper ? "upper" : "lower",
      probability_1: atLeastZero(spare, state.massUncertainty_kg),
    };
  }
  const q = (to.arm_m - from.arm_m) / (to.mass_kg - from.mass_kg);
  const p = from.arm_m - q * from.mass_kg;
  const aft = rise > 0; // counter-clockwise, mass rises along the aft side
  const slope = p + 2 * q * state.mass_kg;
  const variance =
    state.momentUncertainty_kgm ** 2 -
    2 * slope * state.covariance_kg2m +
    slope ** 2 * state.massUncertainty_kg ** 2;
  const beyond = state.moment_kgm - (p + q * state.mass_kg) * state.mass_kg;
  return {
    from,
    to,
    bounds: aft ? "aft" : "forward",
    probability_1: atLeastZero(aft ? -beyond : beyond, Math.sqrt(Math.max(0, variance))),
  };
}

/**
 * The probability that each edge of an envelope is kept, edge by edge as the corners run.
 *
 * @param isAsked of which edges; of all without it
 */
export function probabilityOfEdges(
  state: UncertainState,
  envelope: Envelope,
  isAsked: (edge: Edge) => boolean = () => true,
): readonly EdgeProbability[] {
  const turn = direction(envelope);
  return edgesOf(envelope)
    .filter(isAsked)
    .map((edge) => edgeProbability(state, edge, turn));
}

const SPAN = 8; // standard uncertainties to each side: what lies beyond is below 1e-14
const STEPS = 80;

/** Where the polygon is cut at a mass: the arms at which one goes in and out, rising. */
function cuts(envelope: Envelope, mass_kg: number): readonly number[] {
  return edgesOf(envelope)
    .filter(([a, b]) => a.mass_kg > mass_kg !== b.mass_kg > mass_kg)
    .map(([a, b]) => a.arm_m + ((mass_kg - a.mass_kg) / (b.mass_kg - a.mass_kg)) * (b.arm_m - a.arm_m))
    .sort((one, other) => one - other);
}

/** Weights of Gauss and Legendre for five points between −1 and 1. */
const GAUSS = [
  [0, 128 / 225],
  [0.5384693101056831, 0.47862867049936647],
  [-0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
  [-0.906179845938664, 0.23692688505618908],
] as const;

/**
 * The probability that the whole loading is inside an envelope, of any shape: for each mass the share of moments that
 * are inside is a difference of normal probabilities, and what remains is one integral over mass, cut at the corners.
 * Without spread it is 0 or 1, an edge being inside.
 */
export function probabilityWithin(state: UncertainState, envelope: Envelope): number {
  const { mass_kg, moment_kgm, massUncertainty_kg: u, momentUncertainty_kgm, covariance_kg2m } = state;
  if (u === 0) return pointInEnvelope(envelope, { mass_kg, arm_m: moment_kgm / mass_kg }).inside ? 1 : 0;
  const pull_m = covariance_kg2m / u ** 2;
  const rest_kgm = Math.sqrt(Math.max(0, momentUncertainty_kgm ** 2 - covariance_kg2m * pull_m));
  const insideAt = (at_kg: number): number => {
    const mean = moment_kgm + pull_m * (at_kg - mass_kg);
    const below = (arm_m: number): number => atLeastZero(arm_m * at_kg - mean, rest_kgm);
    return cuts(envelope, at_kg).reduce(
      (sum, arm_m, index) => sum + (index % 2 === 0 ? -1 : 1) * below(arm_m),
      0,
    );
  };
  const low = mass_kg - SPAN * u;
  const high = mass_kg + SPAN * u;
  const corners = envelope.points.map((point) => point.mass_kg).filter((at) => at > low && at < high);
  const stops = [...new Set([low, ...corners, high])].sort((a, b) => a - b);
  const density = (at_kg: number): number =>
    Math.exp(-(((at_kg - mass_kg) / u) ** 2) / 2) / (u * Math.sqrt(2 * Math.PI));
  let total = 0;
  stops.slice(1).forEach((to, index) => {
    const from = stops[index] ?? to;
    const steps = Math.max(1, Math.ceil((STEPS * (to - from)) / (high - low)));
    const half = (to - from) / steps / 2;
    for (let step = 0; step < steps; step += 1) {
      const middle = from + (2 * step + 1) * half;
      for (const [node, weight] of GAUSS) {
        const at_kg = middle + node * half;
        total += half * weight * density(at_kg) * insideAt(at_kg);
      }
    }
  });
  return Math.min(1, Math.max(0, total));
}
