import type { Book, Check } from "./book.ts";
import type { Point, Stance } from "./schema/book-source.ts";
import type { Gauge } from "./schema/gauge.ts";

/** The gauge that a check's reading is taken with; `undefined` when it asks for none. */
export const bookGauge = (book: Book, check: Check): Gauge | undefined =>
  check.reading === undefined ? undefined : held(book.gauges, check.reading.gauge, "gauge");

/** Where a check looks. */
export const pointOf = (book: Book, check: Pick<Check, "point">): Point =>
  held(book.points, check.point, "point");

/** Where a check is made from. */
export const stanceOf = (book: Book, check: Pick<Check, "stance">): Stance =>
  held(book.stancesById, check.stance, "stance");

function held<T>(items: ReadonlyMap<string, T>, id: string, kind: string): T {
  const item = items.get(id);
  if (item === undefined) {
    throw new Error(`expected a ${kind} of this book, found \`${id}\`; is the check from another book?`);
  }
  return item;
}
