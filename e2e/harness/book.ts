import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Book, type Check, readBook } from "@witnessmark/book";
import { orderedWalk, type Step, type WalkPlan } from "@witnessmark/planner";
import { ROOT } from "./server.ts";

/** The aircraft that is walked in the tests. */
export const REGISTRATION = "ZZ-SKR";

/** The book of the demo's turboprop, as the server has it. */
export async function demoBook(): Promise<Book> {
  const file = "zz-skr.yaml";
  const result = await readBook(readFileSync(join(ROOT, "books", file), "utf8"), file);
  if (!result.ok)
    throw new Error(`${file}: expected a book that reads, found ${result.faults.length} faults`);
  return result.book;
}

/** What a card says of its step: where, and what to do. */
export interface OnCard {
  readonly place: string;
  readonly title: string;
}

/** The heading of every card that counts ground gear off. */
export const GEAR_TITLE = "Take it off and count it";

const walks = new WeakMap<Book, WalkPlan>();

/** The first walk of the day in the order in which the app walks it: the planner is the one truth for both. */
export function firstWalk(book: Book): WalkPlan {
  const plan = walks.get(book) ?? orderedWalk(book, "first-of-day");
  walks.set(book, plan);
  return plan;
}

/** The steps of the first walk of the day, in order, each with what its card says. */
export function firstOfDay(book: Book): readonly (OnCard & { readonly step: Step })[] {
  const steps = firstWalk(book).stops.flatMap((stop) => stop.steps);
  return steps.map((step) =>
    step.kind === "ground-gear"
      ? { place: step.item.name, title: GEAR_TITLE, step }
      : { place: placeOf(book, step.check), title: step.check.title, step },
  );
}

const placeOf = (book: Book, check: Check): string => book.points.get(check.point)?.name ?? check.title;
