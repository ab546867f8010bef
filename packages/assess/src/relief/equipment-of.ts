import type { Book, Equipment } from "@witnessmark/book";
import type { Discrepancy } from "@witnessmark/ledger";

/**
 * The piece of the book's equipment that a discrepancy is of: as somebody named it; else the one at its point, where
 * only one of that system, or one at all, is there. Undefined when that does not tell.
 */
export function equipmentOf(
  book: Pick<Book, "equipment" | "checksById">,
  discrepancy: Pick<Discrepancy, "assessments" | "point" | "check" | "jasc">,
): Equipment | undefined {
  const named = discrepancy.assessments.findLast(({ equipment }) => equipment !== undefined)?.equipment;
  if (named !== undefined) return book.equipment.find(({ id }) => id === named);
  const check = discrepancy.check === undefined ? undefined : book.checksById.get(discrepancy.check);
  const point = discrepancy.point ?? check?.point;
  if (point === undefined) return undefined;
  const there = book.equipment.filter(({ points }) => points.includes(point));
  const system = discrepancy.jasc ?? check?.jasc;
  const ofSystem = there.filter(({ jasc }) => jasc === system);
  const candidates = ofSystem.length > 0 ? ofSystem : there;
  return candidates.length === 1 ? candidates[0] : undefined;
}
