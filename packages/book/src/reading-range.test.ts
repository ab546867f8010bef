import { measure } from "@witnessmark/engine";
import { expect, it } from "vitest";
import { readBook } from "./read-book.ts";
import { rangeShown } from "./reading-range.ts";
import { smallBookText } from "./testing/small-book.ts";

const bookOf = async (text: string) => {
  const result = await readBook(text, "small.yaml");
  if (!result.ok)
    throw new Error(result.faults.map(({ path, expected }) => `${path}: ${expected}`).join("\n"));
  return result.book;
};

it("is the gauge's own where the book has it", async () => {
  const { gauges, checks } = await bookOf(smallBookText);
  for (const { reading } of checks) {
    const gauge = gauges.get(reading?.gauge ?? "");
    if (reading === undefined || gauge?.range === undefined) continue;
    expect(rangeShown(gauge, reading)).toEqual(gauge.range.map(({ valueSI }) => valueSI));
  }
});

it("is told by the rule where it has none: zero for a pressure, beyond both ends for a temperature", async () => {
  const { gauges } = await bookOf(smallBookText);
  const [first] = gauges.values();
  if (first === undefined) throw new Error("expected a gauge");
  const { range: _, ...gauge } = first;
  const scale = [measure(2, "bar"), measure(3, "bar")] as const;
  expect(rangeShown({ ...gauge, dimension: "pressure" }, { scale })).toEqual([0, 4e5]);
  const warm = [measure(280, "K"), measure(300, "K")] as const;
  expect(rangeShown({ ...gauge, dimension: "temperature" }, { scale: warm })).toEqual([260, 320]);
});
