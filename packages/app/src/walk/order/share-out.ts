import type { Book, WalkKind } from "@witnessmark/book";
import { askShares } from "./ask-order.ts";
import { myRow } from "./my-orders.ts";
import { setTurn } from "./walk-turn.ts";

/** One's own half of a walk first, then what of the other's is still to do. Both phones come to the same two halves. */
export async function shareOut(
  book: Book,
  kind: WalkKind,
  also: readonly string[],
  walk: string,
  half: 0 | 1,
): Promise<void> {
  const by = myRow(book.aircraft.registration, kind);
  const { mine, others } = (await askShares({ ask: "shared", book, kind, also, by }))[half];
  setTurn({ walk, half, mine: mine.length, stops: [...mine, ...others] });
}
