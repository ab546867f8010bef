import { InputError } from "../input-error.ts";
import { type LoadedState, type LoadItem, loadedState } from "./loaded-state.ts";
import { armPieces, checkTank, type TankFuel, tankArm_m, usable_m3 } from "./tank.ts";

/** A part of the flight and the fuel it takes. */
export interface Burn {
  /** `taxi`, `trip`, `reserve`: the path marks the state at its end. */
  readonly id: string;
  readonly mass_kg: number;
}

export interface BurnPlan {
  /** Everything but usable fuel: the empty aircraft (with its unusable fuel), people, bags. */
  readonly withoutFuel: readonly LoadItem[];
  readonly tanks: readonly TankFuel[];
  /** Of the fuel at the temperature of the tanks. */
  readonly density_kgPerM3: number;
  /** Ids of tanks in the order in which they are burnt; those in one list are drawn at one rate until each is dry. */
  readonly order: readonly (readonly string[])[];
  /** In the order of the flight. */
  readonly burns: readonly Burn[];
}

/** The aircraft when so much has burnt. */
export interface BurnState extends LoadedState {
  readonly burnt_kg: number;
  /** Usable fuel aboard. */
  readonly fuel_kg: number;
  /** Fuel in the tanks on the right less fuel in those on the left, with what cannot be used. */
  readonly imbalance_kg: number;
  /** Everything in each tank, by its id. */
  readonly volumes_m3: Readonly<Record<string, number>>;
}

/**
 * Between two neighbouring states mass falls by what burns, and the moment is a quadratic in it, since the arm of a
 * tank is linear in its volume: moment = from.moment + linear × s + quadratic × s², s = burnt − from.burnt.
 */
export interface BurnPiece {
  readonly from: BurnState;
  readonly to: BurnState;
  readonly linear_m: number;
  readonly quadraticMPerKg: number;
}

export interface BurnPath {
  /** From full to dry: at the start, wherever the arm of a tank has a corner, a tank runs dry or a burn ends. */
  readonly states: readonly BurnState[];
  /** Between the states, in order; none where there is no usable fuel. */
  readonly pieces: readonly BurnPiece[];
  /** The state at the end of each burn, by its id; those beyond the usable fuel are missing. */
  readonly marks: Readonly<Record<string, BurnState>>;
  /** What the burns ask for beyond the usable fuel; zero where it suffices. */
  readonly short_kg: number;
}

interface Drawn {
  readonly tank: TankFuel;
  /** m³ for each kilogram that burns. */
  readonly rate_m3PerKg: number;
}

function find(plan: FuelPlan, id: string): TankFuel {
  const tank = plan.tanks.find((one) => one.id === id);
  if (tank !== undefined) return tank;
  throw new InputError("out-of-range", "order", {
    expected: `tanks that there are (${plan.tanks.map((one) => one.id).join(", ")})`,
    received: `"${id}"`,
  });
}

function checkPlan(plan: FuelPlan): void {
  for (const tank of plan.tanks) checkTank(tank);
  const { density_kgPerM3 } = plan;
  if (!(density_kgPerM3 > 0 && Number.isFinite(density_kgPerM3))) {
    throw new InputError("out-of-range", "density_kgPerM3", {
      expected: "a density above zero",
      received: String(density_kgPerM3),
    });
  }
  for (const { id, mass_kg } of plan.burns) {
    if (mass_kg >= 0 && Number.isFinite(mass_kg)) continue;
    throw new InputError("out-of-range", `burns, ${id}`, {
      expected: "a mass of zero or more",
      received: `${mass_kg} kg`,
    });
  }
  const named = plan.order.flat();
  for (const id of named) find(plan, id);
  const twice = named.find((id, index) => named.indexOf(id) !== index);
  const missing = plan.tanks.find((tank) => usable_m3(tank) > 0 && !named.includes(tank.id));
  if (twice !== undefined || missing !== undefined) {
    throw new InputError("out-of-range", "order", {
      expected: "each tank that holds usable fuel, once",
      received: twice === undefined ? `no "${missing?.id}"` : `"${twice}" twice`,
    });
  }
}

/** What of a plan the fuel alone is made from. */
type FuelPlan = Omit<BurnPlan, "withoutFuel">;

type Volumes = ReadonlyMap<string, number>;

/** The usable fuel of a tank: everything in it, less what the empty mass has already. */
function fuelItem(tank: TankFuel, volume_m3: number, density: number): LoadItem {
  const kept_m3 = Math.min(volume_m3, tank.unusable_m3);
  const all = density * volume_m3 * tankArm_m(tank, volume_m3);
  const kept = kept_m3 === 0 ? 0 : density * kept_m3 * tankArm_m(tank, kept_m3);
  return {
    mass_kg: density * (volume_m3 - kept_m3),
    arm_m: 0,
    lateralArm_m: tank.lateralArm_m,
    extraMoment_kgm: all - kept,
  };
}

/** The fuel when so much has burnt: all of a state that does not depend on what else is aboard. */
interface FuelState extends Pick<BurnState, "burnt_kg" | "fuel_kg" | "imbalance_kg" | "volumes_m3"> {
  readonly items: readonly LoadItem[];
}

interface FuelPath extends Pick<BurnPath, "short_kg"> {
  readonly states: readonly FuelState[];
  /** Of the piece that begins at each state but the last. */
  readonly pieces: readonly Pick<BurnPiece, "linear_m" | "quadraticMPerKg">[];
  /** Places among the states. */
  readonly marks: Readonly<Record<string, number>>;
}

function fuelWith(plan: FuelPlan, volumes: Volumes, burnt_kg: number): FuelState {
  const volumeOf = (tank: TankFuel): number => volumes.get(tank.id) ?? tank.volume_m3;
  const items = plan.tanks.map((tank) => fuelItem(tank, volumeOf(tank), plan.density_kgPerM3));
  const side = (which: TankFuel["side"]): number =>
    plan.tanks.reduce((sum, tank) => (tank.side === which ? sum + volumeOf(tank) : sum), 0);
  return {
    items,
    burnt_kg,
    fuel_kg: items.reduce((sum, { mass_kg }) => sum + mass_kg, 0),
    imbalance_kg: plan.density_kgPerM3 * (side("right") - side("left")),
    volumes_m3: Object.fromEntries(plan.tanks.map((tank) => [tank.id, volumeOf(tank)])),
  };
}

/** Which tanks are drawn from now on, and how fast each: the first list in which one has usable fuel. */
function drawnNow(plan: FuelPlan, volumes: Volumes): readonly Drawn[] {
  for (const ids of plan.order) {
    const tanks = ids
      .map((id) => find(plan, id))
      .filter((tank) => (volumes.get(tank.id) ?? 0) > tank.unusable_m3);
    if (tanks.length > 0) {
      return tanks.map((tank) => ({ tank, rate_m3PerKg: 1 / (tanks.length * plan.density_kgPerM3) }));
    }
  }
  return [];
}

/** The next volume of a tank, on its way down, at which something changes: a row of its table, or dry. */
const nextStop = (tank: TankFuel, volume_m3: number): number =>
  Math.max(tank.unusable_m3, ...tank.arms.map((row) => row.volume_m3).filter((row) => row < volume_m3));

/** Coefficients of the moment, from the pieces of the arm tables through which the tanks fall. */
function momentAlong(
  plan: FuelPlan,
  drawn: readonly Drawn[],
  volumes: Volumes,
): Pick<BurnPiece, "linear_m" | "quadraticMPerKg"> {
  let linear_m = 0;
  let quadraticMPerKg = 0;
  for (const { tank, rate_m3PerKg: rate } of drawn) {
    const volume = volumes.get(tank.id) ?? 0;
    const piece = armPieces(tank).find(({ to_m3 }) => volume <= to_m3);
    if (piece === undefined) continue; // checkTank: the volume is within the table
    const density = plan.density_kgPerM3;
    linear_m -= density * rate * (piece.start_m + 2 * piece.slope_mPerM3 * volume);
    quadraticMPerKg += density * rate * rate * piece.slope_mPerM3;
  }
  return { linear_m, quadraticMPerKg };
}

function fuelPath(plan: FuelPlan): FuelPath {
  checkPlan(plan);
  let total = 0;
  const ends = plan.burns.map(({ id, mass_kg }) => {
    total += mass_kg;
    return { id, at_kg: total };
  });
  let volumes: Volumes = new Map(plan.tanks.map((tank) => [tank.id, tank.volume_m3]));
  let state = fuelWith(plan, volumes, 0);
  const usable_kg = state.fuel_kg;
  const rest_kg = 1e-12 * Math.max(1, usable_kg); // what adding up burns leaves over
  const states = [state];
  const pieces: FuelPath["pieces"][number][] = [];
  const marks: Record<string, number> = {};
  let marked = 0; // burns end one after the other
  const mark = (reached_kg: number): void => {
    for (; marked < ends.length; marked += 1) {
      const end = ends[marked];
      if (end === undefined || end.at_kg > reached_kg + rest_kg) return;
      marks[end.id] ??= states.length - 1;
    }
  };
  mark(0);
  for (;;) {
    const drawn = drawnNow(plan, volumes);
    if (drawn.length === 0) break;
    const tankStops = drawn.map(({ tank, rate_m3PerKg }) => {
      const volume = volumes.get(tank.id) ?? 0;
      const stop_m3 = nextStop(tank, volume);
      return { id: tank.id, stop_m3, step_kg: (volume - stop_m3) / rate_m3PerKg };
    });
    const { burnt_kg } = state;
    const toMark = ends.map(({ at_kg }) => at_kg - burnt_kg).filter((step) => step > rest_kg);
    const step_kg = Math.min(...toMark, ...tankStops.map((stop) => stop.step_kg));
    pieces.push(momentAlong(plan, drawn, volumes));
    const next = new Map(volumes);
    for (const { tank, rate_m3PerKg } of drawn) {
      const stop = tankStops.find(({ id }) => id === tank.id);
      const volume = volumes.get(tank.id) ?? 0;
      // A tank that comes to its stop stands exactly on it, so that no hair of fuel is left to burn.
      const arrives = stop !== undefined && stop.step_kg <= step_kg + rest_kg;
      next.set(tank.id, arrives ? stop.stop_m3 : volume - rate_m3PerKg * step_kg);
    }
    state = fuelWith(plan, next, burnt_kg + step_kg);
    states.push(state);
    mark(state.burnt_kg);
    volumes = next;
  }
  return { states, pieces, marks, short_kg: total - usable_kg > rest_kg ? total - usable_kg : 0 };
}

interface KnownPath {
  readonly plan: FuelPlan;
  readonly path: FuelPath;
}

/** Of a list of tanks the path that was made last: who is aboard changes more often than the fuel, and moves none of it. */
const knownPaths = new WeakMap<BurnPlan["tanks"], KnownPath>();

const isSameBurn = (a: FuelPlan, b: FuelPlan): boolean =>
  a.density_kgPerM3 === b.density_kgPerM3 &&
  a.order === b.order &&
  a.burns.length === b.burns.length &&
  a.burns.every(({ id, mass_kg }, at) => id === b.burns[at]?.id && mass_kg === b.burns[at]?.mass_kg);

function fuelPathOf({ tanks, density_kgPerM3, order, burns }: FuelPlan): FuelPath {
  const plan = { tanks, density_kgPerM3, order, burns };
  const known = knownPaths.get(tanks);
  if (known !== undefined && isSameBurn(known.plan, plan)) return known.path;
  const path = fuelPath(plan);
  knownPaths.set(tanks, { plan, path });
  return path;
}

/**
 * The states of the aircraft from full to dry, in the order in which its tanks are burnt. What lies between two states
 * is known by formula, so that `envelopeAlongBurn` finds the worst point without stepping.
 *
 * A gear that moves the centre of gravity: make one path with `extraMoment_kgm` in `withoutFuel` and one without, and
 * test both.
 *
 * @throws {InputError} `out-of-range`, `not-a-number`: a tank's table or contents, a tank that is not in the order, a
 *   mass or a density that cannot be
 */
export function burnPath(plan: BurnPlan): BurnPath {
  const fuel = fuelPathOf(plan);
  const { mass_kg, moment_kgm, lateralMoment_kgm } = loadedState(plan.withoutFuel);
  // All but the fuel is one item from here on.
  const base = { mass_kg, arm_m: 0, extraMoment_kgm: moment_kgm, extraLateralMoment_kgm: lateralMoment_kgm };
  const states = fuel.states.map(
    ({ items, burnt_kg, fuel_kg, imbalance_kg, volumes_m3 }): BurnState => ({
      ...loadedState([base, ...items]),
      burnt_kg,
      fuel_kg,
      imbalance_kg,
      volumes_m3,
    }),
  );
  const stateAt = (place: number): BurnState => {
    const state = states[place];
    if (state === undefined) throw new Error("a burn path without one of its states"); // places are its own
    return state;
  };
  return {
    states,
    pieces: fuel.pieces.map((along, at) => ({ from: stateAt(at), to: stateAt(at + 1), ...along })),
    marks: Object.fromEntries(Object.entries(fuel.marks).map(([id, place]) => [id, stateAt(place)])),
    short_kg: fuel.short_kg,
  };
}
