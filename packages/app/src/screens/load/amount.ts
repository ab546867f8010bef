import type { LoadFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import { fromSI, type UnitId } from "@witnessmark/engine";
import { type LoadedItem, newId, type PlannedLoad, type Read } from "@witnessmark/ledger";
import {
  inUnit,
  itemsAt,
  siOf,
  tidy,
  volumeIn,
  withItem,
  withTank,
  withTanks,
} from "../../flight/plan-load.ts";
import { roundTo } from "../../instruments/scale.ts";
import type { InHand } from "./in-hand.ts";
import { type LoadUnits, plain, safe, shortArm, symbolOf } from "./load-units.ts";

/** What is in hand as a figure that can be changed. */
export interface Amount {
  readonly title: string;
  readonly under: string;
  /** In `unit`; `null` while nothing was said. */
  readonly value: number | null;
  readonly unit: UnitId;
  /** What may be typed besides. */
  readonly dimension: "mass" | "volume";
  readonly step: number;
  /** Up to where the rule goes, and where its hatching begins. */
  readonly max: number;
  readonly limit: number;
  /** The thing itself, for a seat or a bay. */
  readonly item?: LoadedItem;
  readonly put: (read: Read) => PlannedLoad;
}

const VOLUME_STEP: Readonly<Partial<Record<UnitId, number>>> = { L: 5, USgal: 1, impgal: 1, m3: 0.005 };
/** A rule goes so far beyond its limit, that one sees what is not allowed. */
const BEYOND_1 = 1.2;

interface Given {
  readonly loading: Loading;
  readonly load: PlannedLoad;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
}

/** What is in hand, or `null` where it is not in the book. */
export function amountOf(hand: InHand, given: Given): Amount | null {
  if (hand.kind === "station") return stationAmount(hand, given);
  return hand.kind === "tank" ? tankAmount(hand.id, given) : tanksAmount(given);
}

/** The item in hand at a place: the one named, or the first there. */
const itemInHand = (hand: InHand, load: PlannedLoad): LoadedItem | undefined => {
  if (hand.kind !== "station") return undefined;
  const items = itemsAt(load, hand.id);
  return hand.item === undefined ? items[0] : items.find(({ id }) => id === hand.item);
};

function stationAmount(hand: Extract<InHand, { kind: "station" }>, given: Given): Amount | null {
  const { loading, load, units } = given;
  const station = loading.stations.find(({ id }) => id === hand.id);
  if (station === undefined) return null;
  const item = itemInHand(hand, load);
  const unit = item?.mass.unit ?? units.mass;
  const others_kg = itemsAt(load, station.id)
    .filter(({ id }) => id !== item?.id)
    .reduce((sum, { mass }) => sum + (siOf(mass, "mass") ?? 0), 0);
  const floor_kg =
    station.floor === undefined
      ? Number.POSITIVE_INFINITY
      : station.floor.area_m2 * station.floor.max_kgPerM2;
  const own_kg = Math.min(station.max_kg ?? Number.POSITIVE_INFINITY, floor_kg);
  // where the manual gives none, no more than the whole aircraft may weigh
  const most_kg = Number.isFinite(own_kg) ? own_kg : (loading.limits.ramp_kg ?? loading.limits.takeOff_kg);
  const limit = fromSI(Math.max(0, most_kg - others_kg), unit);
  const value = item?.mass.value ?? null;
  const [short = station.name] = station.name.split(",");
  const what = item?.what.trim() ?? "";
  return {
    title: what === "" ? station.name : `${short}, ${what}`,
    under: `${shortArm(station.arm_m, units.arm)} ${symbolOf(units.arm)}, ${
      Number.isFinite(own_kg)
        ? `up to ${safe(own_kg, units.mass, "down")} ${symbolOf(units.mass)}`
        : "no limit given"
    }`,
    value,
    unit,
    dimension: "mass",
    step: 1,
    max: wholeTens(Math.max(fromSI(most_kg, unit) * BEYOND_1, value ?? 0)),
    limit,
    ...(item === undefined ? {} : { item }),
    put: (mass) =>
      withItem(
        load,
        item === undefined
          ? { id: newId(), station: station.id, what: "", mass, known: "stated" }
          : { ...item, mass },
      ),
  };
}

function tankAmount(id: string, { loading, load, figures, units }: Given): Amount | null {
  const tank = loading.tanks.find((one) => one.id === id);
  if (tank === undefined) return null;
  const said = volumeIn(load, id);
  const unit = said?.unit ?? units.volume;
  const capacity = fromSI(tank.capacity_m3, unit);
  const mass_kg = figures.tanks.find((one) => one.id === id)?.mass_kg;
  return {
    title: tank.name,
    under: `${massWords(mass_kg, units)}holds ${safe(tank.capacity_m3, units.volume, "down")} ${symbolOf(units.volume)}, ${safe(tank.unusable_m3, units.volume, "up")} not usable`,
    value: said?.value ?? null,
    unit,
    dimension: "volume",
    step: VOLUME_STEP[unit] ?? 1,
    max: Math.max(capacity, said?.value ?? 0),
    limit: capacity,
    put: (volume) => withTank(load, id, volume),
  };
}

function tanksAmount({ loading, load, figures, units }: Given): Amount {
  const said = loading.tanks.map(({ id }) => volumeIn(load, id)).filter((read) => read !== undefined);
  const unit = said[0]?.unit ?? units.volume;
  const value = said.length === 0 ? null : tidy(said.reduce((sum, read) => sum + inUnit(read, unit), 0));
  const capacity = fromSI(
    loading.tanks.reduce((sum, { capacity_m3 }) => sum + capacity_m3, 0),
    unit,
  );
  const masses = figures.tanks.map(({ mass_kg }) => mass_kg);
  const mass_kg = masses.includes(undefined)
    ? undefined
    : masses.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  return {
    title: loading.tanks.length === 2 ? "Both tanks" : "All tanks",
    under: `${massWords(mass_kg, units)}spread level, up to ${figure0(capacity)} ${symbolOf(unit)}`,
    value,
    unit,
    dimension: "volume",
    step: (VOLUME_STEP[unit] ?? 1) * 2,
    max: Math.max(capacity, value ?? 0),
    limit: capacity,
    put: (volume) => withTanks(load, loading.tanks, volume.value, volume.unit),
  };
}

const massWords = (mass_kg: number | undefined, units: LoadUnits) =>
  mass_kg === undefined ? "" : `${plain(mass_kg, units.mass)} ${symbolOf(units.mass)}, `;

const wholeTens = (value: number) => Math.ceil(value / 10) * 10;
const figure0 = (value: number) => String(Math.floor(value + 1e-9));

/** A step up or down from what is there, onto whole steps; never below nothing. */
export function stepped({ value, step }: Pick<Amount, "value" | "step">, way: 1 | -1): number {
  const from = value ?? 0;
  const onStep = roundTo(from, step);
  const next =
    Math.abs(onStep - from) > 1e-9 && (onStep > from ? 1 : -1) === way ? onStep : onStep + way * step;
  return Math.max(0, roundTo(next, step));
}

/** From one place of the rule to the next: in a mass a finger is exact to its unit. */
export const slideStep = ({ dimension, step }: Pick<Amount, "dimension" | "step">): number =>
  dimension === "mass" ? 1 : step;
