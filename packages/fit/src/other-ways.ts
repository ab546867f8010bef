import type { Highs } from "highs";
import type { FitInput } from "./fit-input.ts";
import { type LastResort, leaveBehind, lessFuel } from "./last-resort.ts";
import { ballastAt } from "./most-at-station.ts";
import type { Watch } from "./stop.ts";

/** What brings the load within its limits with everything left where it is. */
export interface OtherWays extends LastResort {
  /** The least, in the one place where it is least. */
  readonly ballast?: {
    readonly station: string;
    readonly needed_kg: number;
    /** The most that may lie there without leaving the limits again. */
    readonly most_kg: number;
  };
}

/** The same load, of which nothing may be moved. */
const still = (input: FitInput): FitInput => ({
  ...input,
  items: input.items.map(({ mayGo: _, ...item }) => item),
});

/**
 * Something left behind, less fuel, or ballast: each by itself, and nothing moved for it.
 *
 * @throws {FitError} an answer that the engine does not confirm
 * @throws {Stopped}
 */
export async function otherWays(highs: Highs, input: FitInput, watch: Watch): Promise<OtherWays> {
  const unmoved = still(input);
  return {
    ...(await leaveBehind(highs, unmoved, watch)),
    ...(await lessFuel(highs, unmoved, watch)),
    ...(await ballast(unmoved, watch)),
  };
}

async function ballast(input: FitInput, watch: Watch): Promise<Pick<OtherWays, "ballast">> {
  let best: OtherWays["ballast"];
  for (const { id } of input.stations) {
    await watch.breathe();
    const found = ballastAt(input, id);
    if (found.status !== "found" || found.needed_kg === 0) continue;
    if (best !== undefined && found.needed_kg >= best.needed_kg) continue;
    const { station, needed_kg, most_kg } = found;
    best = { station, needed_kg, most_kg };
  }
  return best === undefined ? {} : { ballast: best };
}
