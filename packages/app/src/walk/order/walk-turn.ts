import type { OrderedStop } from "@witnessmark/planner";
import { isRecord, stored } from "../../preferences/stored.ts";
import { numberIn, readStops } from "./stored-order.ts";

/** How one walk is gone on with on this phone: from where one stands, or one's own half of two first. */
export interface WalkTurn {
  readonly walk: string;
  readonly stops: readonly OrderedStop[];
  /** Which half is walked first; absent for the shortest way to what is left. */
  readonly half?: 0 | 1;
  /** How many of the stops are one's own half. */
  readonly mine?: number;
}

const turn = stored<WalkTurn | null>("walk-turn", (found) => {
  if (!isRecord(found)) return null;
  const stops = readStops(found["stops"]);
  const { walk, half } = found;
  if (stops === undefined || typeof walk !== "string") return null;
  return half === 0 || half === 1 ? { walk, stops, half, mine: numberIn(found, "mine") } : { walk, stops };
});

export function turnOf(walk: string | undefined): WalkTurn | undefined {
  const held = turn.get();
  return held !== null && held.walk === walk ? held : undefined;
}

export const setTurn = (next: WalkTurn | null): void => turn.set(next);

export const useTurn = (): unknown => turn.use();
