import { type Assessment, assess, type Flight } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";

interface Held {
  readonly book: Book;
  readonly flight: Flight | null;
  readonly minute: number;
  readonly assessment: Assessment;
}

const held = new WeakMap<AircraftState, Held>();

/**
 * The assessment of an aircraft as it stands. Made once for each change of its ledger, its flight or the minute,
 * however many screens ask.
 */
export function assessed(
  book: Book,
  state: AircraftState,
  flight: Flight | null,
  minute: number,
): Assessment {
  const found = held.get(state);
  if (found !== undefined && found.book === book && found.flight === flight && found.minute === minute) {
    return found.assessment;
  }
  const assessment = assess(book, state, flight, Date.now());
  held.set(state, { book, flight, minute, assessment });
  return assessment;
}
