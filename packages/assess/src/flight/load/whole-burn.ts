import {
  type Burn,
  type BurnPath,
  type BurnState,
  burnPath,
  type LoadItem,
  type TankFuel,
} from "@witnessmark/engine";
import type { LoadMoment } from "./figures.ts";

/** The burn from start-up until the tanks are dry, and where in it the flight begins and ends. */
export interface WholeBurn {
  readonly path: BurnPath;
  readonly ramp: BurnState;
  /** Undefined where the taxi fuel is not known, or is not there. */
  readonly takeOff: BurnState | undefined;
  readonly landing: BurnState | undefined;
  readonly alternate: BurnState | undefined;
  readonly dry: BurnState;
}

export interface BurnParts {
  readonly taxi_kg: number | undefined;
  readonly trip_kg: number | undefined;
  readonly alternate_kg: number | undefined;
}

/** The burns in their order, up to the first that is not known. */
function burnsOf({ taxi_kg, trip_kg, alternate_kg }: BurnParts): readonly Burn[] {
  const burns: Burn[] = [];
  for (const [id, mass_kg] of [
    ["taxi", taxi_kg],
    ["trip", trip_kg],
    ["alternate", alternate_kg],
  ] as const) {
    if (mass_kg === undefined) break;
    burns.push({ id, mass_kg });
  }
  return burns;
}

export function wholeBurn(
  withoutFuel: readonly LoadItem[],
  tanks: readonly TankFuel[],
  density_kgPerM3: number,
  order: readonly (readonly string[])[],
  parts: BurnParts,
): WholeBurn | undefined {
  const path = burnPath({ withoutFuel, tanks, density_kgPerM3, order, burns: burnsOf(parts) });
  const [ramp] = path.states;
  const dry = path.states.at(-1);
  if (ramp === undefined || dry === undefined) return undefined;
  return {
    path,
    ramp,
    takeOff: path.marks["taxi"],
    landing: path.marks["trip"],
    alternate: parts.alternate_kg === 0 ? undefined : path.marks["alternate"],
    dry,
  };
}

/** The part of a path between two of its states. */
export function pathBetween(path: BurnPath, from: BurnState, to: BurnState): BurnPath {
  const first = path.states.indexOf(from);
  const last = path.states.indexOf(to);
  return { ...path, states: path.states.slice(first, last + 1), pieces: path.pieces.slice(first, last) };
}

/**
 * The same path with a moment on top all the way, that of a gear which has come up, and a mass: that of something put
 * in or taken out.
 */
export function shifted(path: BurnPath, moment_kgm: number, mass_kg = 0): BurnPath {
  const moved = new Map(
    path.states.map((state) => {
      const moment = state.moment_kgm + moment_kgm;
      const mass = state.mass_kg + mass_kg;
      return [state, { ...state, mass_kg: mass, moment_kgm: moment, arm_m: moment / mass }] as const;
    }),
  );
  const of = (state: BurnState): BurnState => moved.get(state) ?? state;
  return {
    ...path,
    states: path.states.map(of),
    pieces: path.pieces.map((piece) => ({ ...piece, from: of(piece.from), to: of(piece.to) })),
  };
}

/** What is in each tank when so much has burnt: between two states each falls in step with the fuel. */
export function volumesAt_m3({ path, ramp }: WholeBurn, burnt_kg: number): Readonly<Record<string, number>> {
  const piece = path.pieces.find(({ to }) => burnt_kg <= to.burnt_kg);
  if (piece === undefined) return (path.states.at(-1) ?? ramp).volumes_m3;
  const { from, to } = piece;
  const share_1 = (burnt_kg - from.burnt_kg) / (to.burnt_kg - from.burnt_kg);
  return Object.fromEntries(
    Object.entries(from.volumes_m3).map(([id, volume_m3]) => [
      id,
      volume_m3 + share_1 * ((to.volumes_m3[id] ?? volume_m3) - volume_m3),
    ]),
  );
}

/** The moment of the flight that a point of the burn falls on, if on any. */
export function momentOf(burn: WholeBurn, burnt_kg: number): LoadMoment | undefined {
  const at = (state: BurnState | undefined): boolean =>
    state !== undefined && Math.abs(state.burnt_kg - burnt_kg) <= 1e-6;
  if (at(burn.takeOff)) return "take-off";
  if (at(burn.landing)) return "landing";
  return at(burn.alternate) ? "alternate" : undefined;
}
