import type { Flight } from "@witnessmark/assess";
import type { Tank } from "@witnessmark/book";
import { fromSI, toSI, UNITS, type UnitId } from "@witnessmark/engine";
import type {
  AircraftState,
  FlightPlan,
  LoadedItem,
  PlannedLoad,
  PlannedRoute,
  Read,
} from "@witnessmark/ledger";

/** Changes of what is aboard, each a new plan: nothing is changed in place, so that Undo and drawing can rely on it. */

const NOTHING_ABOARD: PlannedLoad = { items: [], fuel: [] };

/** The rules that were flown by last; a first flight begins with those of the first pack, by sight. */
export function newPlan(state: AircraftState): FlightPlan {
  const last = [...state.flights.values()].findLast(({ planned }) => planned.plan !== undefined)?.planned
    .plan;
  return { rulePack: last?.rulePack ?? "us-part-91", flightRules: last?.flightRules ?? "VFR" };
}

/** What is aboard, as far as it is said. */
export const loadOf = (flight: Flight | null): PlannedLoad => flight?.plan?.load ?? NOTHING_ABOARD;

/** The flight with another load. */
export const withLoad = (flight: Flight, state: AircraftState, load: PlannedLoad): Flight => ({
  ...flight,
  plan: { ...(flight.plan ?? newPlan(state)), load },
});

/** The flight on another route. */
export const withRoute = (flight: Flight, state: AircraftState, route: PlannedRoute): Flight => ({
  ...flight,
  plan: { ...(flight.plan ?? newPlan(state)), route },
});

/** An item put aboard, or in the place of the one with its id. */
export function withItem(load: PlannedLoad, item: LoadedItem): PlannedLoad {
  const found = load.items.some(({ id }) => id === item.id);
  return {
    ...load,
    items: found ? load.items.map((one) => (one.id === item.id ? item : one)) : [...load.items, item],
  };
}

export const withoutItem = (load: PlannedLoad, item: string): PlannedLoad => ({
  ...load,
  items: load.items.filter(({ id }) => id !== item),
});

export const withoutStation = (load: PlannedLoad, station: string): PlannedLoad => ({
  ...load,
  items: load.items.filter((item) => item.station !== station),
});

/** Everything of two stations changes places: people swap seats. */
export const swapped = (load: PlannedLoad, one: string, other: string): PlannedLoad => ({
  ...load,
  items: load.items.map((item) =>
    item.station === one
      ? { ...item, station: other }
      : item.station === other
        ? { ...item, station: one }
        : item,
  ),
});

/** What is in one tank. */
export function withTank(load: PlannedLoad, tank: string, volume: Read): PlannedLoad {
  const found = load.fuel.some((one) => one.tank === tank);
  return {
    ...load,
    fuel: found
      ? load.fuel.map((one) => (one.tank === tank ? { tank, volume } : one))
      : [...load.fuel, { tank, volume }],
  };
}

/**
 * So much in all of some tanks, as level as they take it: each the same, and what a small one cannot hold in the others.
 *
 * @param total in `unit`; what is beyond all of them goes into the last, where it is seen to be too much
 */
export function withTanks(
  load: PlannedLoad,
  tanks: readonly Pick<Tank, "id" | "capacity_m3">[],
  total: number,
  unit: UnitId,
): PlannedLoad {
  const smallestFirst = tanks.toSorted((a, b) => a.capacity_m3 - b.capacity_m3);
  let left = total;
  let next = load;
  smallestFirst.forEach((tank, index) => {
    const rest = smallestFirst.length - index;
    const share = left / rest;
    const value = rest === 1 ? left : Math.min(share, fromSI(tank.capacity_m3, unit));
    left -= value;
    next = withTank(next, tank.id, { value: tidy(value), unit });
  });
  return next;
}

/** Free of the dust of binary fractions: what is kept is what a person would have written. */
export const tidy = (value: number): number => Number(value.toPrecision(10));

/** A value in another unit of its dimension, or as it stands where the two do not measure the same. */
export function inUnit(read: Read, unit: UnitId): number {
  if (read.unit === unit || UNITS[read.unit].dimension !== UNITS[unit].dimension) return read.value;
  return tidy(fromSI(toSI(read.value, read.unit), unit));
}

/** In SI, or `null` for what is no such quantity: the figures say so at its place. */
export function siOf(read: Read, dimension: "mass" | "volume" | "temperature"): number | null {
  if (UNITS[read.unit]?.dimension !== dimension || !Number.isFinite(read.value)) return null;
  return toSI(read.value, read.unit);
}

/** What lies at a station, in the order in which it came. */
export const itemsAt = (load: PlannedLoad, station: string): readonly LoadedItem[] =>
  load.items.filter((item) => item.station === station);

export const massAt_kg = (load: PlannedLoad, station: string): number =>
  itemsAt(load, station).reduce((sum, { mass }) => sum + (siOf(mass, "mass") ?? 0), 0);

export const volumeIn = (load: PlannedLoad, tank: string): Read | undefined =>
  load.fuel.find((one) => one.tank === tank)?.volume;
