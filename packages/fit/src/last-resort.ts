import { roundToSafeSide } from "@witnessmark/engine";
import type { Highs } from "highs";
import { breachesOf } from "./breaches.ts";
import { fewestMoves, type Move, movesBetween } from "./fewest-moves.ts";
import { FitError } from "./fit-error.ts";
import { type FitInput, type FitItem, massStep_kg, placesOf } from "./fit-input.ts";
import { flightOf, withPlaces, withVolumes } from "./flight.ts";
import { fuelRange, volumesAt } from "./fuel-range.ts";
import type { Places } from "./placement.ts";
import type { Watch } from "./stop.ts";

/** What brings the load within its limits only by leaving something behind. */
export interface LastResort {
  /** The fewest things left behind, and of as few the least mass; with the moves that it takes besides. */
  readonly leaveBehind?: {
    readonly items: readonly string[];
    readonly mass_kg: number;
    readonly moves: readonly Move[];
    readonly says: string;
  };
  /** The least fuel taken out, in the order of the burn; with the moves that it takes besides. */
  readonly lessFuel?: {
    readonly less_kg: number;
    readonly fuel_kg: number;
    /** What each tank holds then, in cubic metres. */
    readonly volumes_m3: Readonly<Record<string, number>>;
    readonly moves: readonly Move[];
    readonly says: string;
  };
}

/** Subsets of a size, each once; of things that are alike, the first ones. */
function* subsets(items: readonly FitItem[], size: number, from = 0): Generator<readonly FitItem[]> {
  if (size === 0) {
    yield [];
    return;
  }
  const seen = new Set<string>();
  for (let at = from; at <= items.length - size; at += 1) {
    const item = items[at];
    if (item === undefined) return;
    const alike = JSON.stringify([item.mass_kg, item.at, placesOf(item)]);
    if (seen.has(alike)) continue;
    seen.add(alike);
    for (const rest of subsets(items, size - 1, at + 1)) yield [item, ...rest];
  }
}

const massOf = (items: readonly FitItem[]): number => items.reduce((sum, { mass_kg }) => sum + mass_kg, 0);

const andMoves = (moves: readonly Move[]): string =>
  moves.length === 0 ? "" : `; and ${moves.map(({ says }) => says).join("; ")}`;

/** Limits of mass that fall kilogram by kilogram with what is left behind. */
const BY_MASS: readonly string[] = ["ramp", "take-off", "landing", "zero-fuel"];
const NOT_BY_ITEMS: readonly string[] = ["imbalance", "fuel", "minimum-flight", "envelope-bottom"];

export async function leaveBehind(
  highs: Highs,
  input: FitInput,
  watch: Watch,
): Promise<Pick<LastResort, "leaveBehind">> {
  const breaches = breachesOf(input);
  if (breaches.some(({ family }) => NOT_BY_ITEMS.includes(family))) return {};
  const needed_kg = Math.max(
    0,
    ...breaches.filter(({ family }) => BY_MASS.includes(family)).map(({ by }) => by),
  );
  // Those that are alike stand together, so that the first of them can stand for all.
  const loose = input.items.filter(({ mayStay }) => mayStay === true).sort((a, b) => a.mass_kg - b.mass_kg);
  for (let size = 1; size <= loose.length; size += 1) {
    const sets = [...subsets(loose, size)].filter((set) => massOf(set) >= needed_kg - 1e-6);
    for (const set of sets.sort((a, b) => massOf(a) - massOf(b))) {
      await watch.breathe();
      const aboard = { ...input, items: input.items.filter((item) => !set.includes(item)) };
      const places = await fewestMoves(highs, aboard, watch);
      if (places === undefined) continue;
      const moves = movesBetween(aboard, places);
      const mass_kg = massOf(set);
      return {
        leaveBehind: {
          items: set.map(({ id }) => id),
          mass_kg,
          moves,
          says: `leave behind ${set.map(({ name }) => name).join(", ")}, ${mass_kg} kg${andMoves(moves)}`,
        },
      };
    }
  }
  return {};
}

/** The most fuel, of what is in the tanks now, that a placement allows; undefined where none will do. */
function mostWith(input: FitInput, places: Places): number | undefined {
  const { caps, least_kg } = fuelRange(withPlaces(input, places));
  const most_kg = caps[0]?.most_kg ?? Number.NEGATIVE_INFINITY;
  return most_kg < least_kg ? undefined : most_kg;
}

/**
 * Less fuel means to begin further along the same burn, so with less fuel a placement keeps its limits if it did with
 * more. So one climbs: a placement for the least fuel that the flight needs, the most fuel with that placement, a
 * placement for a step more than that, and so on, until there is none. Each step finds another placement or the end,
 * and the end is right to the step.
 */
export async function lessFuel(
  highs: Highs,
  input: FitInput,
  watch: Watch,
): Promise<Pick<LastResort, "lessFuel">> {
  const step = massStep_kg(input);
  const aboard_kg = flightOf(input).ramp.fuel_kg;
  const { least_kg } = fuelRange(input);
  const at = (fuel_kg: number): FitInput => withVolumes(input, volumesAt(input, fuel_kg));
  const possible = async (fuel_kg: number): Promise<Places | undefined> => {
    await watch.breathe();
    return fuel_kg >= aboard_kg ? undefined : await fewestMoves(highs, at(fuel_kg), watch);
  };
  // A hair more than the least, so that what is burnt still leaves the reserve whole.
  const leastStep = roundToSafeSide(least_kg, step, "up");
  let best: { readonly fuel_kg: number; readonly places: Places } | undefined;
  let next = leastStep;
  for (;;) {
    const places = await possible(next);
    if (places === undefined) break;
    const most = mostWith(input, places) ?? next;
    const fuel_kg = Math.max(next, roundToSafeSide(Math.min(most, aboard_kg), step, "down"));
    const confirmed = breachesOf(withPlaces(at(fuel_kg), places)).length === 0;
    best = { fuel_kg: confirmed ? fuel_kg : next, places };
    next = roundToSafeSide(best.fuel_kg + step, step, "down");
  }
  if (best === undefined) return {};
  const less = at(best.fuel_kg);
  const places = await fewestMoves(highs, less, watch);
  if (places === undefined)
    throw new FitError("unconfirmed", "less fuel that the engine refuses; report the load");
  const moves = movesBetween(less, places);
  const less_kg = aboard_kg - best.fuel_kg;
  return {
    lessFuel: {
      less_kg,
      fuel_kg: best.fuel_kg,
      volumes_m3: Object.fromEntries(less.tanks.map(({ id, volume_m3 }) => [id, volume_m3])),
      moves,
      says: `take out ${less_kg.toFixed(1)} kg of fuel${andMoves(moves)}`,
    },
  };
}
