import { PILOT_ITEMS, type PilotItem, pilotItemsFor } from "@witnessmark/assess";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";

/** An item that some rule pack offers for this aircraft. */
export const offeredItem = (id: string, book: OpenAircraft["book"]): PilotItem | undefined =>
  [...PILOT_ITEMS.keys()].flatMap((pack) => pilotItemsFor(pack, book)).find(({ item }) => item.id === id);

/** What a rule pack offers a pilot and nobody follows on this aircraft yet. */
export function offersOf(
  { book, state }: Pick<OpenAircraft, "book" | "state">,
  pack: string,
): readonly PilotItem[] {
  const inBook = new Set(book.timedItems.map(({ id }) => id));
  const isFollowed = (id: string): boolean =>
    inBook.has(id) || (state.timedAdded.has(id) && !state.timedDropped.has(id));
  return pilotItemsFor(pack, book).filter(({ item }) => !isFollowed(item.id));
}
