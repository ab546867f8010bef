import type { Book } from "@witnessmark/book";
import { InputError, standardTemperature } from "@witnessmark/engine";
import type { FlightPlan, Status } from "@witnessmark/ledger";
import { densityOf } from "../density.ts";
import { given } from "../given.ts";

/** Air may be this much colder than standard: the project's own figure, since no forecast aloft is read. */
export const COLDER_THAN_STANDARD_K = 20;

/** How near the fuel may come to what it must not fall below. */
export interface ColdFuel {
  readonly status: Status;
  /** The book's least fuel temperature, or its freezing point. */
  readonly limit_K: number;
  readonly isFreezingPoint: boolean;
  /** In the tanks now; undefined where nobody said. */
  readonly fuel_K: number | undefined;
  /** The coldest that the air at the cruise level is reckoned to be; undefined where the level is not known. */
  readonly air_K: number | undefined;
}

function coldestAir_K(plan: FlightPlan): number | undefined {
  if (plan.route === undefined) return undefined;
  const level = given(plan.route.level, ["length"], "Level");
  if (!level.ok) return undefined;
  try {
    return standardTemperature.compute({ geopotentialAltitude_m: level.valueSI }) - COLDER_THAN_STANDARD_K;
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/**
 * The fuel against the cold. It never falls below the air around its tank, so with air that is not too cold nothing is
 * to be feared. How fast it cools no book says: where the air may be colder than the limit, that is a caution.
 * Undefined where the book has no limit, or where there is nothing to say: no temperature was given, and the air is
 * not too cold.
 */
export function coldFuel(book: Pick<Book, "fuel">, plan: FlightPlan): ColdFuel | undefined {
  const { minimumFuelTemperature_K, freezingPoint_K } = book.fuel ?? {};
  const limit_K = minimumFuelTemperature_K ?? freezingPoint_K;
  if (limit_K === undefined || plan.route === undefined) return undefined;
  const { temperature_K: fuel_K, faults } = densityOf(book, plan);
  const air_K = coldestAir_K(plan);
  const base = { limit_K, isFreezingPoint: minimumFuelTemperature_K === undefined, fuel_K, air_K };
  if (fuel_K !== undefined && fuel_K < limit_K) return { ...base, status: "stop" };
  if (faults.length > 0 || air_K === undefined) return { ...base, status: "open" };
  if (air_K >= limit_K) return fuel_K === undefined ? undefined : { ...base, status: "clear" };
  return { ...base, status: fuel_K === undefined ? "open" : "caution" };
}
