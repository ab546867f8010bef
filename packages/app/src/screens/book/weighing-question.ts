import { type Plain, valueAt } from "@witnessmark/book";

type Plains = { readonly [key: string]: Plain };

/** What the empty mass and its arm are; which change, and the day they were weighed on. */
const WEIGHED = ["mass", "arm", "lateralArm"] as const;

/**
 * What is asked before a revision is issued: the empty mass or its arm is another, and the day of the weighing is not.
 * Nothing where both moved together, or the change is written as a later one with a day of its own.
 */
export function weighingQuestion(before: Plains | null, now: Plains | null): string | undefined {
  if (before === null || now === null) return undefined;
  const of = (book: Plains, key: string) => valueAt(book, ["loading", "empty", key]);
  const day = of(now, "weighedOn");
  const hasMoved = WEIGHED.some((key) => of(before, key) !== undefined && of(before, key) !== of(now, key));
  return hasMoved && typeof day === "string" && day !== "" && day === of(before, "weighedOn")
    ? `The empty mass or its arm is another, and the day of the weighing is still ${day}. Is it?`
    : undefined;
}
