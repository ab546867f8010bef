import type { Book } from "@witnessmark/book";
import { planWalk, walkInOrder } from "@witnessmark/planner";
import { beforeAll, describe, expect, it } from "vitest";
import { demoBook } from "../../testing/told-ledger.ts";
import { stancesListed } from "./stances-listed.ts";

describe("the stances of a book on its page", () => {
  let book: Book;
  beforeAll(async () => {
    book = await demoBook("zz-brk");
  });

  it("have the numbers and the order of the walk, also when that is another than the book's", () => {
    const listed = planWalk(book, "first-of-day", new Set());
    const stops = listed.stops
      .map(({ stance, steps }) => ({ stance: stance.id, steps: steps.map(({ id }) => id) }))
      .toReversed();
    const plan = walkInOrder(listed, book, { stops, follows: "by-hand" });
    const numbered = stancesListed(book, plan).filter(({ number }) => number !== undefined);
    expect(numbered.map(({ number, stance }) => [number, stance])).toEqual(
      plan.stops.map(({ number, stance }) => [number, stance.id]),
    );
    expect(numbered[0]?.stance).toBe(listed.stops.at(-1)?.stance.id);
  });

  it("have every check once, also those that this walk leaves out", () => {
    const listed = stancesListed(book, planWalk(book, "after-flight", new Set()));
    const ids = listed.flatMap(({ checks }) => checks.map(({ id }) => id));
    expect(ids.toSorted()).toEqual(book.checks.map(({ id }) => id).toSorted());
    expect(listed.some(({ number }) => number === undefined)).toBe(true);
  });
});
