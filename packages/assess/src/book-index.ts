import type { Book, Check, GroundGearItem, Point, WalkKind } from "@witnessmark/book";
import type { Source } from "./assessment.ts";

/** What is looked up in a book again and again; made once for each book. */
export interface BookIndex {
  readonly checks: ReadonlyMap<string, Check>;
  readonly gear: ReadonlyMap<string, GroundGearItem>;
  /** Pieces of ground gear in all. */
  readonly pieces: number;
  /** Checks of each kind of walk, in the order of the walk. */
  readonly ofKind: Readonly<Record<WalkKind, readonly Check[]>>;
  /** First-of-day checks together with those of a turnaround, in the order of the walk. */
  readonly ofTurnaround: readonly Check[];
  /** Where in the walk a check or an item stands; ground gear comes first at its stance. */
  readonly placeOfCheck: ReadonlyMap<string, number>;
  readonly placeOfGear: ReadonlyMap<string, number>;
  readonly stanceNames: ReadonlyMap<string, string>;
  readonly stanceOfGear: ReadonlyMap<string, string>;
}

/** After the last stance: verdicts that stand nowhere on the aircraft. */
export const NOWHERE = Number.MAX_SAFE_INTEGER;

const A_STANCE = 1_000_000;

const indexes = new WeakMap<Book, BookIndex>();

/** The index of a book; the same object for the same book. */
export function indexOf(book: Book): BookIndex {
  const known = indexes.get(book);
  if (known !== undefined) return known;
  const made = makeIndex(book);
  indexes.set(book, made);
  return made;
}

function makeIndex(book: Book): BookIndex {
  const stances = new Map(book.stances.map((stance, at) => [stance.id, at]));
  const stanceOfGear = new Map(
    book.groundGear.map((item) => [item.id, item.stance ?? book.points.get(item.point)?.stance ?? ""]),
  );
  const place = (stance: string, within: number): number =>
    (stances.get(stance) ?? stances.size) * A_STANCE + within;
  const checks = book.checks;
  return {
    checks: new Map(checks.map((check) => [check.id, check])),
    gear: new Map(book.groundGear.map((item) => [item.id, item])),
    pieces: book.groundGear.reduce((sum, item) => sum + item.count, 0),
    ofKind: {
      "first-of-day": checks.filter((check) => check.walks.includes("first-of-day")),
      turnaround: checks.filter((check) => check.walks.includes("turnaround")),
      "after-flight": checks.filter((check) => check.walks.includes("after-flight")),
    },
    ofTurnaround: checks.filter(
      (check) => check.walks.includes("turnaround") || check.walks.includes("first-of-day"),
    ),
    placeOfCheck: new Map(
      checks.map((check, at) => [check.id, place(check.stance, book.groundGear.length + at)]),
    ),
    placeOfGear: new Map(
      book.groundGear.map((item, at) => [item.id, place(stanceOfGear.get(item.id) ?? "", at)]),
    ),
    stanceNames: new Map(book.stances.map((stance) => [stance.id, stance.name])),
    stanceOfGear,
  };
}

/** `Book of ZZ-SKR, revision 14`, and where in it. */
export const bookSource = (book: Book, locator: string): Source => ({
  title: `Book of ${book.aircraft.registration}, revision ${book.revision}`,
  locator,
});

/** A point's name as the book has it, or the id where the book has none. */
export const pointName = (book: Book, point: string | undefined): string | undefined =>
  point === undefined ? undefined : ((book.points.get(point) satisfies Point | undefined)?.name ?? point);
