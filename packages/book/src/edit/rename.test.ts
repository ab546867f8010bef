import { expect, it } from "vitest";
import { readBook } from "../read-book.ts";
import { smallBookText } from "../testing/small-book.ts";
import { editText } from "./edit-text.ts";
import { plainOf } from "./plain-of.ts";
import { renameEdits } from "./rename.ts";

it("a short name is changed wherever it is named: the book reads as before", async () => {
  const read = plainOf(smallBookText, "small.yaml");
  if (!read.ok) throw new Error(read.fault.found);
  const edits = [
    ...renameEdits(read.plain, ["points", 1], "right-tyre"),
    ...renameEdits(read.plain, ["stances", 1], "by-the-right-wheel"),
    ...renameEdits(read.plain, ["gauges", 0], "tyre-gauge-2"),
    ...renameEdits(read.plain, ["checks", 1], "tread"),
  ];
  const book = await readBook(editText(smallBookText, edits), "small.yaml");
  if (!book.ok) throw new Error(`${book.faults[0].path}: ${book.faults[0].found}`);
  expect(book.book.points.get("left-main-tyre")?.mirrors).toBe("right-tyre");
  expect(book.book.groundGear[0]?.point).toBe("right-tyre");
  expect(book.book.checks.find(({ id }) => id === "tyre-pressure.right-tyre")).toMatchObject({
    stance: "by-the-right-wheel",
    after: ["tread.right-tyre"],
    reading: { gauge: "tyre-gauge-2" },
  });
});
