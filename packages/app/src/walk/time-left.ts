import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { estimate_s } from "@witnessmark/planner";
import { learntOf } from "./learnt.ts";
import type { WalkView } from "./walk-view.ts";

/** "about 18 min": upwards to whole minutes, as long as a minute is left. */
export function aboutWords(time_s: number): string {
  const minutes = Math.ceil(time_s / 60);
  if (minutes <= 1) return "about a minute";
  if (minutes < 60) return `about ${minutes} min`;
  return `about ${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

/** How long what is left of a walk takes, as looks of this aircraft took on past walks. */
export const timeLeft_s = (book: Book, state: AircraftState, view: WalkView): number =>
  estimate_s(view.plan.stops, {
    learnt: learntOf(book, state),
    isLeft: ({ id }) => view.byId.get(id)?.status === "open",
  });
