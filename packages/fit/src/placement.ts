import type { Highs } from "highs";
import { type LimitName, placeLimit } from "./breaches.ts";
import { stationOf } from "./check-input.ts";
import { type FitInput, type FitItem, lateralOf, placesOf } from "./fit-input.ts";
import { flightOf } from "./flight.ts";
import type { IntervalSet } from "./interval-set.ts";
import { momentWindow } from "./moment-window.ts";
import { type Column, type Program, type Row, solve } from "./program.ts";
import type { Watch } from "./stop.ts";

/** Where everything is, station by item. */
export type Places = ReadonlyMap<string, string>;

/** An item at a station: one yes or no. */
interface Choice {
  readonly item: FitItem;
  readonly station: string;
  readonly moves: boolean;
}

/** What the solver is asked about one load. */
export interface PlacementProgram {
  readonly choices: readonly Choice[];
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** The column that says by how much the softened limit is passed. */
  readonly excess: number | undefined;
}

/**
 * How far a moment or a mass may be beyond its limit in the solver's rows: more than its own tolerance, so that no
 * placement on the limit is lost. What is let in by this is refused by the engine.
 */
const LET_IN = 1e-7;

const INFINITE = Number.POSITIVE_INFINITY;

/** Rows that keep a sum in one of several intervals, with a yes or no for each where there are several. */
function within(
  set: IntervalSet,
  terms: Row["terms"],
  columns: Column[],
  excess: { readonly column: number; readonly below: boolean; readonly above: boolean } | undefined,
): readonly Row[] {
  const soft = (sign: 1 | -1, asked: boolean | undefined): Row["terms"] =>
    asked === true && excess !== undefined ? [[excess.column, sign]] : [];
  const [only] = set;
  if (only === undefined) return [{ terms: [], low: 1, high: 1 }];
  if (set.length === 1) {
    return [
      { terms: [...terms, ...soft(1, excess?.below)], low: only.low - LET_IN, high: INFINITE },
      { terms: [...terms, ...soft(-1, excess?.above)], low: -INFINITE, high: only.high + LET_IN },
    ];
  }
  const picks = set.map((interval) => {
    columns.push({ high: 1, whole: true });
    return { column: columns.length - 1, interval };
  });
  const lows = picks.map(({ column, interval }) => [column, -interval.low + LET_IN] as const);
  const highs = picks.map(({ column, interval }) => [column, -interval.high - LET_IN] as const);
  return [
    { terms: picks.map(({ column }) => [column, 1] as const), low: 1, high: 1 },
    { terms: [...terms, ...lows], low: 0, high: INFINITE },
    { terms: [...terms, ...highs], low: -INFINITE, high: 0 },
  ];
}

/**
 * One load as a program: each movable item is in one of its places; places, groups and floors hold what they may; the
 * change of moment is in its window.
 *
 * @param soft a limit that may be passed, by as little as can be; undefined where all are to be kept
 */
export function placementProgram(
  input: FitInput,
  open: FitInput,
  soft: LimitName | undefined,
): PlacementProgram {
  const movable = input.items.filter((item) => placesOf(item).length > 1);
  const choices = movable.flatMap((item) =>
    placesOf(item).map((station): Choice => ({ item, station, moves: station !== item.at })),
  );
  const columns: Column[] = choices.map(() => ({ high: 1, whole: true }));
  const rows: Row[] = [];
  const excess = soft === undefined ? undefined : columns.length;
  if (soft !== undefined) columns.push({ high: 1e6, whole: soft.family === "holds" });
  const isSoft = (family: LimitName["family"], id: string): boolean =>
    soft?.family === family && soft.id === id;
  const softTerm = (asked: boolean): Row["terms"] => (asked && excess !== undefined ? [[excess, -1]] : []);
  for (const item of movable) {
    const own = choices.flatMap((choice, column) => (choice.item === item ? [[column, 1] as const] : []));
    rows.push({ terms: own, low: 1, high: 1 });
  }
  const fixed = input.items.filter((item) => !movable.includes(item));
  const atMost = (
    name: LimitName,
    stations: readonly string[],
    limit: number,
    weigh: (item: FitItem) => number,
  ) => {
    const there = fixed.filter(({ at }) => stations.includes(at)).reduce((sum, item) => sum + weigh(item), 0);
    const terms = choices.flatMap(({ item, station }, column) =>
      stations.includes(station) ? [[column, weigh(item)] as const] : [],
    );
    rows.push({
      terms: [...terms, ...softTerm(isSoft(name.family, name.id))],
      low: -INFINITE,
      high: limit - there + LET_IN,
    });
  };
  const mass = ({ mass_kg }: FitItem): number => mass_kg;
  for (const { id, max_kg, floor, holds } of input.stations) {
    atMost(placeLimit(input, "station", id), [id], max_kg, mass);
    if (floor !== undefined)
      atMost(placeLimit(input, "floor", id), [id], floor.area_m2 * floor.max_kgPerM2, mass);
    if (holds !== undefined) atMost(placeLimit(input, "holds", id), [id], holds, () => 1);
  }
  for (const { id, stations, max_kg } of input.groups ?? []) {
    atMost(placeLimit(input, "group", id), stations, max_kg, mass);
  }
  const window = momentWindow(open, flightOf(open));
  const shifted = (arm: (id: string) => number): Row["terms"] =>
    choices.map(
      ({ item, station }, column) => [column, item.mass_kg * (arm(station) - arm(item.at))] as const,
    );
  const along = shifted((id) => stationOf(input, id).arm_m);
  const across = shifted((id) => lateralOf(stationOf(input, id)));
  rows.push(...within(window.along, along, columns, undefined));
  if (soft?.family === "aft" || soft?.family === "forward") {
    const tight = momentWindow(input, flightOf(input));
    const aft = soft.family === "aft";
    const interval = {
      low: aft ? -INFINITE : tight.least_kgm,
      high: aft ? tight.most_kgm : INFINITE,
    };
    if (excess !== undefined && Number.isFinite(aft ? interval.high : interval.low)) {
      rows.push(...within([interval], along, columns, { column: excess, below: !aft, above: aft }));
    }
  }
  if (soft?.family === "lateral" && excess !== undefined) {
    const tight = momentWindow(input, flightOf(input)).sideways;
    rows.push(...within(tight, across, columns, { column: excess, below: true, above: true }));
  } else {
    rows.push(...within(window.sideways, across, columns, undefined));
  }
  return { choices, columns, rows, excess };
}

/** What is to be least. */
export type Aim = "moves" | "moved-mass" | "excess";

function costOf({ choices, excess }: PlacementProgram, aim: Aim): ReadonlyMap<number, number> {
  if (aim === "excess") return new Map(excess === undefined ? [] : [[excess, 1]]);
  return new Map(
    choices.flatMap(({ moves, item }, column) =>
      moves ? [[column, aim === "moves" ? 1 : item.mass_kg] as const] : [],
    ),
  );
}

/** A placement that the program allows with the least of what is asked; undefined where there is none. */
export function place(
  highs: Highs,
  input: FitInput,
  program: PlacementProgram,
  aim: Aim,
  extra: readonly Row[],
  watch: Watch,
): Places | undefined {
  const asked: Program = {
    columns: program.columns,
    rows: [...program.rows, ...extra],
    cost: costOf(program, aim),
  };
  const values = solve(highs, asked, watch);
  if (values === undefined) return undefined;
  const places = new Map(input.items.map((item) => [item.id, item.at]));
  program.choices.forEach(({ item, station }, column) => {
    if ((values[column] ?? 0) > 0.5) places.set(item.id, station);
  });
  return places;
}

/** A row that refuses one placement and no other. */
export function notAgain({ choices }: PlacementProgram, places: Places): Row {
  const chosen = choices.flatMap(({ item, station }, column) =>
    places.get(item.id) === station ? [[column, 1] as const] : [],
  );
  return { terms: chosen, low: -INFINITE, high: chosen.length - 1 };
}

/** A row that refuses every placement in which all the moves of one are made, whatever else is moved besides. */
export function notAllOf({ choices }: PlacementProgram, places: Places): Row {
  const moved = choices.flatMap(({ item, station, moves }, column) =>
    moves && places.get(item.id) === station ? [[column, 1] as const] : [],
  );
  return { terms: moved, low: -INFINITE, high: moved.length - 1 };
}

/** A row that allows so many moves and no more. */
export const atMostMoves = ({ choices }: PlacementProgram, most: number): Row => ({
  terms: choices.flatMap(({ moves }, column) => (moves ? [[column, 1] as const] : [])),
  low: -INFINITE,
  high: most,
});
