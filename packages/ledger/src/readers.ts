import type { AdoptedBook, AircraftState, CheckAnswer, Discrepancy, FlightOnRecord, Walk } from "./state.ts";

/** The last answer to a check, whatever walk it was in; it may be one that an interruption asks for again. */
export const lastAnswer = (state: AircraftState, check: string): CheckAnswer | undefined =>
  state.checks.get(check)?.answers.at(-1);

/** Discrepancies that nobody closed, in the order in which they were raised. */
export const openDiscrepancies = (state: AircraftState): readonly Discrepancy[] =>
  [...state.discrepancies.values()].filter(({ isOpen }) => isOpen);

/** The walk in hand: the latest that began and was neither finished nor abandoned. */
export const currentWalk = (state: AircraftState): Walk | undefined =>
  [...state.walks.values()].findLast((walk) => walk.finished === undefined && walk.abandoned === undefined);

/** The book adopted last. */
export const bookInForce = (state: AircraftState): AdoptedBook | undefined => state.books.at(-1);

/** The flight planned last of those that were not dropped. */
export const plannedFlight = (state: AircraftState): FlightOnRecord | undefined =>
  [...state.flights.values()].at(-1);
