import type { Book } from "@witnessmark/book";
import { planWalk } from "@witnessmark/planner";
import { beforeAll, expect, it } from "vitest";
import { demoBook } from "../testing/told-ledger.ts";
import { shortName } from "./short-name.ts";

let book: Book;
beforeAll(async () => {
  book = await demoBook("zz-skr");
});

it("tells the steps of every stance apart in a word or two", () => {
  for (const stop of planWalk(book, "first-of-day").stops) {
    const names = stop.steps.map((step) => shortName(step, stop.steps, book));
    expect(new Set(names).size, `${stop.stance.name}: ${names.join(", ")}`).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[A-Z]/);
  }
});

it("drops the place where several checks share it", () => {
  const stop = planWalk(book, "first-of-day").stops.find(({ steps }) =>
    steps.some(({ id }) => id.startsWith("main-tyre-pressure")),
  );
  const step = stop?.steps.find(({ id }) => id.startsWith("main-tyre-pressure"));
  expect(step === undefined || stop === undefined ? "" : shortName(step, stop.steps, book)).toBe("Pressure");
});
