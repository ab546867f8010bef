import type { Highs } from "highs";
import type { Breach, LimitName } from "./breaches.ts";
import { type Conflict, conflictOf, limitNames } from "./conflict.ts";
import { fewestMoves, type Move, movesBetween } from "./fewest-moves.ts";
import { type FitInput, placesOf } from "./fit-input.ts";
import { withPlaces } from "./flight.ts";
import { type LastResort, leaveBehind, lessFuel } from "./last-resort.ts";
import { type Places, place, placementProgram } from "./placement.ts";
import type { Watch } from "./stop.ts";
import { WHEREVER, wherever } from "./wherever.ts";
import { withoutLimit } from "./without-limit.ts";

/** Where everything goes. */
export interface Way {
  readonly status: "found";
  /** In an order in which they can be made; none where the load is within its limits as it is. */
  readonly moves: readonly Move[];
  /** Station by item. */
  readonly places: Readonly<Record<string, string>>;
  readonly moved_kg: number;
  readonly says: string;
}

export type Arrangement =
  | Way
  | {
      readonly status: "none";
      /** What is broken wherever things are put. */
      readonly because: readonly Breach[];
      /** Single limits without which there is an answer. */
      readonly conflicts: readonly Conflict[];
      /** Said apart: these leave something behind. */
      readonly lastResort: LastResort;
      readonly says: string;
    };

/**
 * Where people and bags go for every limit to be kept along the whole flight, with the fewest moves; of as few, with
 * the least mass moved.
 *
 * @throws {FitError} an answer that the engine does not confirm
 * @throws {Stopped}
 */
export async function arrange(highs: Highs, input: FitInput, watch: Watch): Promise<Arrangement> {
  const because = wherever(input);
  if (because.length === 0) {
    const places = await fewestMoves(highs, input, watch);
    if (places !== undefined) return wayOf(input, places);
  }
  const conflicts: Conflict[] = [];
  for (const limit of limitNames(input, [...new Set(input.items.flatMap(placesOf))])) {
    const conflict = await softened(highs, input, limit, watch);
    if (conflict !== undefined) conflicts.push(conflict);
  }
  const lastResort: LastResort = {
    ...(await leaveBehind(highs, input, watch)),
    ...(await lessFuel(highs, input, watch)),
  };
  const reasons = [...because, ...conflicts].map(({ says }) => says);
  return {
    status: "none",
    because,
    conflicts,
    lastResort,
    says: `no seating or stowage keeps every limit${reasons.length === 0 ? "; more than one stands in the way" : `: ${reasons.join("; ")}`}`,
  };
}

function wayOf(input: FitInput, places: Places): Way {
  const moves = movesBetween(input, places);
  const moved = new Set(moves.map(({ item }) => item));
  return {
    status: "found",
    moves,
    places: Object.fromEntries(places),
    moved_kg: input.items.filter(({ id }) => moved.has(id)).reduce((sum, { mass_kg }) => sum + mass_kg, 0),
    says: moves.length === 0 ? "it fits as it is" : moves.map(({ says }) => says).join("; "),
  };
}

/**
 * Where people and bags may go instead: the fewest moves that are not all of those of an earlier way, with whatever
 * else; of as few, the least mass moved.
 *
 * @returns undefined where there is no other
 * @throws {FitError} an answer that the engine does not confirm
 * @throws {Stopped}
 */
export async function arrangeOtherwise(
  highs: Highs,
  input: FitInput,
  earlier: readonly Pick<Way, "places">[],
  watch: Watch,
): Promise<Way | undefined> {
  const known = earlier.map(({ places }) => new Map(Object.entries(places)));
  const places = await fewestMoves(highs, input, watch, known);
  return places === undefined ? undefined : wayOf(input, places);
}

/** What stands in the way, if one limit does: the placement that passes it by least. */
async function softened(
  highs: Highs,
  input: FitInput,
  limit: LimitName,
  watch: Watch,
): Promise<Conflict | undefined> {
  await watch.breathe();
  const open = withoutLimit(input, limit);
  if (wherever(open).length > 0) return undefined;
  const aim = WHEREVER.has(limit.family) ? "moves" : "excess";
  const program = placementProgram(input, open, aim === "excess" ? limit : undefined);
  const places = place(highs, input, program, aim, [], watch);
  return places === undefined ? undefined : conflictOf(limit, withPlaces(input, places));
}
