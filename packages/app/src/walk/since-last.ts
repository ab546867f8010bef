import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { countOf, tally } from "../words/figures.ts";

/** One thing that the last who had the aircraft left to the next. */
export interface LeftBehind {
  readonly what: "stands" | "fitted" | "said" | "added" | "faults";
  readonly words: string;
}

/** What the next walk opens with: where it stands, what is fitted, what was said and filled up, what is not right. */
export function sinceLast(book: Book, state: AircraftState): readonly LeftBehind[] {
  const parked = state.parkings.at(-1);
  const made = state.flightsMade.at(-1);
  const flown_ms = made === undefined ? undefined : Date.parse(made.landing);
  const pieces = book.groundGear.reduce((sum, { id }) => sum + (state.groundGear.get(id)?.fitted ?? 0), 0);
  const added = state.servicings.filter(({ at_ms }) => flown_ms !== undefined && at_ms >= flown_ms);
  const faults = [...state.discrepancies.values()].filter(({ isOpen }) => isOpen);
  return [
    ...(parked === undefined
      ? []
      : [{ what: "stands" as const, words: `Parked: ${parked.where}. ${parked.secured}` }]),
    ...(pieces === 0
      ? []
      : [{ what: "fitted" as const, words: `Ground gear fitted: ${tally(pieces, "piece")}` }]),
    ...(made?.words === undefined
      ? []
      : [{ what: "said" as const, words: `${made.author.name} of the last flight: “${made.words}”` }]),
    ...(added.length === 0
      ? []
      : [
          {
            what: "added" as const,
            words: `Since then: ${added.map(({ of, what }) => `${of} ${what}`).join(", ")}`,
          },
        ]),
    ...(faults.length === 0
      ? []
      : [
          {
            what: "faults" as const,
            words: `${countOf(faults.length, "discrepancy", "discrepancies")} open: ${faults[0]?.words ?? ""}`,
          },
        ]),
  ];
}
