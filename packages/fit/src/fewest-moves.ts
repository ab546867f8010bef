import type { Highs } from "highs";
import { type Breach, breachesOf } from "./breaches.ts";
import { FitError } from "./fit-error.ts";
import type { FitInput } from "./fit-input.ts";
import { withPlaces } from "./flight.ts";
import {
  type Aim,
  atMostMoves,
  notAgain,
  notAllOf,
  type PlacementProgram,
  type Places,
  place,
  placementProgram,
} from "./placement.ts";
import type { Row } from "./program.ts";
import type { Watch } from "./stop.ts";
import { wherever } from "./wherever.ts";

/** One thing carried from one place to another. */
export interface Move {
  readonly item: string;
  readonly from: string;
  readonly to: string;
  /** `Slit lamp case from Aft bay to Seat 5`. */
  readonly says: string;
}

const MOST_REFUSED = 200;

/** A breach so small that only the solver's tolerance can have let it in. */
const small = ({ by, unit }: Breach): boolean => by <= (unit === "m" ? 1e-8 : 1e-6);

/** Places with the least of what is asked that the engine confirms. */
async function confirmed(
  highs: Highs,
  input: FitInput,
  program: PlacementProgram,
  aim: Aim,
  rows: Row[],
  watch: Watch,
): Promise<Places | undefined> {
  for (let refused = 0; refused < MOST_REFUSED; refused += 1) {
    await watch.breathe();
    const places = place(highs, input, program, aim, rows, watch);
    if (places === undefined) return undefined;
    const breaches = breachesOf(withPlaces(input, places));
    if (breaches.length === 0) return places;
    const [worst] = breaches.filter((one) => !small(one));
    if (worst !== undefined) {
      throw new FitError(
        "unconfirmed",
        `a placement that the engine refuses: ${worst.says}; report the load`,
      );
    }
    rows.push(notAgain(program, places));
  }
  throw new FitError("unconfirmed", `${MOST_REFUSED} placements a hair beyond a limit; report the load`);
}

/**
 * Places with which every limit is kept: fewest things moved, and of those with as few, the least mass moved. Each is
 * confirmed by the engine.
 *
 * @param earlier placements that are known already: none with all the moves of one of them is given again
 * @returns undefined where there are none
 * @throws {FitError} `unconfirmed`, `solver`
 * @throws {Stopped}
 */
export async function fewestMoves(
  highs: Highs,
  input: FitInput,
  watch: Watch,
  earlier: readonly Places[] = [],
): Promise<Places | undefined> {
  if (wherever(input).length > 0) return undefined;
  const program = placementProgram(input, input, undefined);
  const rows: Row[] = earlier.map((places) => notAllOf(program, places));
  const first = await confirmed(highs, input, program, "moves", rows, watch);
  if (first === undefined) return undefined;
  const count = movesBetween(input, first).length;
  if (count === 0) return first;
  rows.push(atMostMoves(program, count));
  return (await confirmed(highs, input, program, "moved-mass", rows, watch)) ?? first;
}

/** What is carried, in an order in which, where there is one, each goes to a place that has room by then. */
export function movesBetween(input: FitInput, places: Places): readonly Move[] {
  const name = (id: string): string => input.stations.find((station) => station.id === id)?.name ?? id;
  const left = input.items.flatMap((item): Move[] => {
    const to = places.get(item.id);
    if (to === undefined || to === item.at) return [];
    return [{ item: item.id, from: item.at, to, says: `${item.name} from ${name(item.at)} to ${name(to)}` }];
  });
  const counts = new Map<string, number>();
  for (const { at, id } of input.items) if (places.has(id)) counts.set(at, (counts.get(at) ?? 0) + 1);
  const room = (id: string): boolean => {
    const holds = input.stations.find((station) => station.id === id)?.holds;
    return holds === undefined || (counts.get(id) ?? 0) < holds;
  };
  const ordered: Move[] = [];
  while (left.length > 0) {
    // Where all wait for one another, one has to stand aside.
    const next = Math.max(
      0,
      left.findIndex(({ to }) => room(to)),
    );
    for (const move of left.splice(next, 1)) {
      counts.set(move.from, (counts.get(move.from) ?? 0) - 1);
      counts.set(move.to, (counts.get(move.to) ?? 0) + 1);
      ordered.push(move);
    }
  }
  return ordered;
}
