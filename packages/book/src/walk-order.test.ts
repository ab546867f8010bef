import { expect, it } from "vitest";
import { readBook } from "./read-book.ts";
import { smallBookText } from "./testing/small-book.ts";

const withLines = async (lines: string, edit = (text: string): string => text) => {
  const result = await readBook(
    edit(smallBookText).replace("groundGear:\n", `${lines}groundGear:\n`),
    "small.yaml",
  );
  if (!result.ok) throw new Error(`expected a book, found ${JSON.stringify(result.faults)}`);
  return result.book;
};

it("the manual's order names stances, checks at one or all of their points, and ground gear; it holds for every walk", async () => {
  const { order } = await withLines(
    `order:\n  source: "Handbook, 4.2"\n  steps: [nose, { check: tyre-look, at: left-main-tyre }, { check: tyre-pressure }, { groundGear: chocks }]\n`,
    (text) => text.replace("after: [tyre-look]", "after: []"),
  );
  expect(order).toEqual({
    source: "Handbook, 4.2",
    walks: ["first-of-day", "turnaround", "after-flight"],
    steps: [
      { kind: "stance", id: "nose" },
      { kind: "check", id: "tyre-look.left-main-tyre" },
      { kind: "check", id: "tyre-pressure.right-main-tyre" },
      { kind: "check", id: "tyre-pressure.left-main-tyre" },
      { kind: "ground-gear", id: "chocks" },
    ],
  });
});

it("one may stand where a propeller turns when the book says why", async () => {
  const book = await withLines("", (text) =>
    text.replace(
      "place: [-0.9, 0], facing: 180, posture: stand }",
      "place: [0.1, 0.8], facing: 180, posture: stand, inArc: The seal is felt only from there }",
    ),
  );
  expect(book.stancesById.get("nose")?.inArc).toBe("The seal is felt only from there");
});

it("what a book says of the last looks and of hazards is in it, and a book that says nothing has neither", async () => {
  const said = await withLines(
    "last: [seat]\nhazards: [{ name: Exhaust stack, kind: exhaust, place: [0.8, 0.9], radius: 0.5 }]\n",
  );
  expect(said.last).toEqual(["seat"]);
  expect(said.hazards).toEqual([{ name: "Exhaust stack", kind: "exhaust", place: [0.8, 0.9], radius: 0.5 }]);
  const silent = await withLines("");
  expect([silent.order, silent.last, silent.hazards]).toEqual([undefined, undefined, undefined]);
});
