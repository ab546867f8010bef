import type { Counter } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { readCounter } from "./counter-said.ts";

const HOURS: Counter = { id: "hours", name: "Airframe hours", of: "airframe", unit: "h" };
const LANDINGS: Counter = { id: "landings", name: "Landings", of: "airframe", unit: "1" };
const DAY_MS = 86_400_000;
const NOW_MS = Date.parse("2026-11-12T10:00:00Z");
/** Read the day before. */
const showed = (shown: number) => ({ shown, at_ms: NOW_MS - DAY_MS });
const read = (text: string, counter: Counter, shown?: number) =>
  readCounter(text, counter, shown === undefined ? undefined : showed(shown), NOW_MS);

describe("what a counter shows, as typed", () => {
  it.each([
    ["", { kind: "nothing" }],
    ["1285.9", { kind: "shows", value: 1285.9 }],
    ["1285,9", { kind: "shows", value: 1285.9 }],
    ["1284.6", { kind: "shows", value: 1284.6 }],
  ])("hours “%s” after 1284.6", (text, said) => {
    expect(read(text, HOURS, 1284.6)).toEqual(said);
  });

  it("asks whether the meter was replaced where it would run backwards, or faster than time", () => {
    expect(read("3.2", HOURS, 1284.6)).toMatchObject({ kind: "cannot-be", why: "would run backwards" });
    // a day has 24 hours
    expect(read("1308.6", HOURS, 1284.6)).toMatchObject({ kind: "shows" });
    expect(read("1310", HOURS, 1284.6)).toMatchObject({ kind: "cannot-be", before: 1284.6 });
    expect(read("12859", HOURS, 1284.6)).toMatchObject({ kind: "cannot-be", before: 1284.6 });
  });

  it.each([
    ["plenty", HOURS],
    ["-4", HOURS],
    ["1285 psi", HOURS],
    ["1285.5", LANDINGS],
  ] as const)("“%s” is told as a fault that names the counter", (text, counter) => {
    const said = read(text, counter, 1284);
    expect(said.kind).toBe("fault");
    expect(said.kind === "fault" ? said.words : "").toContain(counter.name);
  });

  it("the first figure of all is taken as it is", () => {
    expect(read("128590", LANDINGS)).toEqual({ kind: "shows", value: 128_590 });
  });
});
