import type { Book } from "@witnessmark/book";
import type { AircraftState, Done, LocalDate } from "@witnessmark/ledger";
import { duesOf, type Item } from "../timed/due.ts";

/** An inspection that the rules ask for, as 14 CFR 91.409 names them. */
const isRequired = ({ rule }: Item): boolean => rule?.includes("91.409") === true;

const inspectionsOf = (book: Book, state: AircraftState): readonly Item[] => {
  const inBook = new Set(book.timedItems.map(({ id }) => id));
  const added = [...state.timedAdded.values()].flatMap(({ item }) => (inBook.has(item.id) ? [] : [item]));
  return [...book.timedItems, ...added].filter(
    (item) => isRequired(item) && !state.timedDropped.has(item.id),
  );
};

/**
 * The last day of the required inspection that comes next, at which a deferred item must be dealt with. Undefined
 * where no such inspection is followed, or it runs by hours alone.
 *
 * @source 14 CFR 91.405(c)
 */
export function nextRequiredInspection(book: Book, state: AircraftState): LocalDate | undefined {
  return inspectionsOf(book, state)
    .flatMap((item) => duesOf(item, state.timedDone.get(item.id) ?? [], state, book))
    .flatMap((due) => (due.by === "date" ? [due.on] : []))
    .toSorted()[0];
}

/** A required inspection that was made on a later day than this one, the last of them. */
export function inspectedAfter(
  book: Book,
  state: AircraftState,
  day: LocalDate,
): (Done & { readonly name: string }) | undefined {
  return inspectionsOf(book, state)
    .flatMap(({ id, name }) => (state.timedDone.get(id) ?? []).map((done) => ({ ...done, name })))
    .filter(({ on }) => on > day)
    .toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
    .at(-1);
}
