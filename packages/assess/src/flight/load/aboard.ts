import type { Loading, Station } from "@witnessmark/book";
import { conformanceBelow, type LoadItem, massSpread } from "@witnessmark/engine";
import type { LoadedItem, PlannedLoad } from "@witnessmark/ledger";
import { type InputFault, type Limited, limited, type MissingPart, worstStatus } from "../figures.ts";
import { given } from "../given.ts";
import { remembered } from "../remembered.ts";
import type { GroupFigures, Knowledge, StationFigures } from "./figures.ts";

/** One sound item in its place. */
export interface Aboard {
  readonly id: string;
  readonly what: string;
  readonly station: Station;
  readonly mass_kg: number;
  readonly knowledge: Knowledge;
}

export interface AllAboard {
  readonly aboard: readonly Aboard[];
  readonly faults: readonly InputFault[];
  readonly missing: readonly MissingPart[];
}

/** What an item is called: what was written, or its place. */
const nameOf = ({ what, station }: LoadedItem, stations: ReadonlyMap<string, Station>): string =>
  what.trim() === "" ? `Mass in ${stations.get(station)?.name ?? station}` : what;

/** By id, so that no sum depends on who boarded first. */
const inOrder = (items: readonly LoadedItem[]): readonly LoadedItem[] =>
  items.toSorted((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : a.mass.value - b.mass.value));

type ReadItem = Aboard | { readonly faults: readonly InputFault[] };

/** More than an aircraft of these rules carries of people and bags. */
const ITEMS_MOST = 40;

const rememberedItem = remembered<ReadItem>(ITEMS_MOST);

/** One item in its place; remembered by itself, since a search changes one of many. */
function readItem(item: LoadedItem, stations: ReadonlyMap<string, Station>): ReadItem {
  const faults: InputFault[] = [];
  const fault = (says: string): void => {
    faults.push({ where: { kind: "item", id: item.id }, says });
  };
  const station = stations.get(item.station);
  const mass = given(item.mass, ["mass"], nameOf(item, stations));
  if (!mass.ok) fault(mass.says);
  if (station === undefined)
    fault(`${nameOf(item, stations)}: expected a seat or bay of the book, received "${item.station}"`);
  if (!mass.ok || station === undefined) return { faults };
  const what = station.kind === "bay" ? "bag" : station.crew ? "crew" : "passenger";
  const spread = massSpread(what, item.known);
  return {
    id: item.id,
    what: item.what,
    station,
    mass_kg: mass.valueSI,
    knowledge: {
      item: item.id,
      known: item.known,
      bias_kg: spread.bias_kg,
      standardUncertainty_kg: spread.standardUncertainty_kg,
    },
  };
}

const rememberedStations = remembered<ReadonlyMap<string, Station>>();

/** The items of a plan in their places; those that cannot be are faults, and who must be aboard and is not, is missing. */
export function allAboard(loading: Loading, load: PlannedLoad | undefined): AllAboard {
  const stations = rememberedStations(
    loading,
    [],
    () => new Map(loading.stations.map((station) => [station.id, station])),
  );
  const faults: InputFault[] = [];
  const aboard: Aboard[] = [];
  for (const item of inOrder(load?.items ?? [])) {
    const found = rememberedItem(item, [loading], () => readItem(item, stations));
    if ("faults" in found) faults.push(...found.faults);
    else aboard.push(found);
  }
  return { aboard, faults, missing: missingOf(loading, load, aboard) };
}

function missingOf(
  loading: Loading,
  load: PlannedLoad | undefined,
  aboard: readonly Aboard[],
): readonly MissingPart[] {
  if (load === undefined || load.items.length === 0)
    return [{ part: "load", what: "who and what is aboard: nobody is said to be" }];
  const seats = loading.stations.filter(({ kind, crew }) => kind === "seat" && crew);
  const flown = aboard.some(({ station, mass_kg }) => station.crew && mass_kg > 0);
  if (flown || seats.length === 0) return [];
  return [{ part: "crew", what: `who flies it: nobody is said to sit in ${seats[0]?.name ?? "the front"}` }];
}

export const asLoadItem = ({ mass_kg, station }: Aboard): LoadItem => ({
  mass_kg,
  arm_m: station.arm_m,
  lateralArm_m: station.lateralArm_m,
});

const sum = (all: readonly number[]): number => all.reduce((total, one) => total + one, 0);

const massOf = (all: readonly Aboard[]): number => sum(all.map(({ mass_kg }) => mass_kg));

/** Held against a limit, with the chance that the true masses keep it. */
function held(all: readonly Aboard[], max_kg: number, complete: boolean): Limited {
  const mass_kg = massOf(all);
  if (mass_kg === 0) return limited(0, max_kg, { complete });
  const likely_kg = mass_kg + sum(all.map(({ knowledge }) => knowledge.bias_kg));
  const doubt_kg = Math.hypot(...all.map(({ knowledge }) => knowledge.standardUncertainty_kg));
  const chance_1 = conformanceBelow.compute({
    estimate_1: likely_kg,
    standardUncertainty_1: doubt_kg,
    upperLimit_1: max_kg,
  });
  return limited(mass_kg, max_kg, { complete, chance_1 });
}

const rememberedStation = remembered<StationFigures>(ITEMS_MOST);

/** Each station against its limits. @param faulty ids of stations of which an item cannot be */
export function stationFigures(
  loading: Loading,
  aboard: readonly Aboard[],
  faulty: ReadonlySet<string>,
): readonly StationFigures[] {
  return loading.stations.map((station) => {
    const { id, name, kind, max_kg, floor } = station;
    const here = aboard.filter((one) => one.station.id === id);
    const complete = !faulty.has(id);
    return rememberedStation(station, [complete, ...here], () => {
      const limit = max_kg === undefined ? undefined : held(here, max_kg, complete);
      const onFloor =
        floor === undefined ? undefined : held(here, floor.area_m2 * floor.max_kgPerM2, complete);
      return {
        id,
        name,
        kind,
        mass_kg: massOf(here),
        items: here.map((one) => one.id),
        ...(limit === undefined ? {} : { limit }),
        ...(onFloor === undefined ? {} : { floor: onFloor }),
        status: worstStatus([limit, onFloor].flatMap((one) => one?.status ?? [])),
      };
    });
  });
}

const rememberedGroup = remembered<GroupFigures>();

export const groupFigures = (
  loading: Loading,
  aboard: readonly Aboard[],
  faulty: ReadonlySet<string>,
): readonly GroupFigures[] =>
  loading.groups.map((group) => {
    const { id, name, stations, max_kg } = group;
    const inGroup = aboard.filter(({ station }) => stations.includes(station.id));
    const complete = !stations.some((station) => faulty.has(station));
    return rememberedGroup(group, [complete, ...inGroup], () => ({
      id,
      name,
      stations,
      limit: held(inGroup, max_kg, complete),
    }));
  });
