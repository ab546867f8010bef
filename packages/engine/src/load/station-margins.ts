import { InputError } from "../input-error.ts";
import { exactSum } from "./exact-sum.ts";

/** A seat or a bay with its own limits. */
export interface LimitedStation {
  readonly id: string;
  readonly max_kg: number;
  readonly floor?: { readonly area_m2: number; readonly max_kgPerM2: number };
}

/** Stations that share one limit. */
export interface LimitedGroup {
  readonly id: string;
  readonly stations: readonly string[];
  readonly max_kg: number;
}

/** What a station or a group still takes: below zero it is over its limit by so much. */
export interface StationMargin {
  readonly id: string;
  readonly limit: "station" | "floor" | "group";
  readonly mass_kg: number;
  readonly max_kg: number;
  readonly margin_kg: number;
}

/**
 * What is left to the limit of each station, of its floor and of each group. On the limit is within it.
 *
 * @param items what lies where
 * @throws {InputError} `out-of-range`: a mass below zero, a station that there is not
 */
export function stationMargins(
  stations: readonly LimitedStation[],
  groups: readonly LimitedGroup[],
  items: readonly { readonly station: string; readonly mass_kg: number }[],
): readonly StationMargin[] {
  const known = new Set(stations.map(({ id }) => id));
  for (const station of [
    ...items.map((item) => item.station),
    ...groups.flatMap((group) => group.stations),
  ]) {
    if (known.has(station)) continue;
    throw new InputError("out-of-range", "station", {
      expected: `a station of the book (${[...known].join(", ")})`,
      received: `"${station}"`,
    });
  }
  for (const { station, mass_kg } of items) {
    if (mass_kg >= 0 && Number.isFinite(mass_kg)) continue;
    throw new InputError("out-of-range", `${station}, mass_kg`, {
      expected: "a mass of zero or more",
      received: String(mass_kg),
    });
  }
  const massIn = (ids: readonly string[]): number =>
    exactSum(items.filter(({ station }) => ids.includes(station)).map(({ mass_kg }) => mass_kg));
  const margin = (
    id: string,
    limit: StationMargin["limit"],
    mass_kg: number,
    max_kg: number,
  ): StationMargin => ({
    id,
    limit,
    mass_kg,
    max_kg,
    margin_kg: max_kg - mass_kg,
  });
  return [
    ...stations.flatMap(({ id, max_kg, floor }) => {
      const mass_kg = massIn([id]);
      const own = margin(id, "station", mass_kg, max_kg);
      return floor === undefined
        ? [own]
        : [own, margin(id, "floor", mass_kg, floor.area_m2 * floor.max_kgPerM2)];
    }),
    ...groups.map(({ id, stations: ids, max_kg }) => margin(id, "group", massIn(ids), max_kg)),
  ];
}
