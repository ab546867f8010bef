import type { Counter } from "@witnessmark/book";
import type { CounterReading } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { readCounter } from "./counter-said.ts";

const HOURS: Counter = { id: "hours", name: "Airframe hours", of: "airframe", unit: "h" };
const LANDINGS: Counter = { id: "landings", name: "Landings", of: "airframe", unit: "1" };
const showed = (shown: number): CounterReading => ({
  event: "e",
  device: "d",
  deviceSeq: 1,
  author: { id: "p", name: "MK", role: "pilot" },
  hlc: "0",
  recordedAt: "2026-11-01T10:00:00Z",
  at: "2026-11-01T10:00:00Z",
  at_ms: Date.parse("2026-11-01T10:00:00Z"),
  shown,
  total: shown,
  backwards: false,
});

describe("what a counter shows, as typed", () => {
  it.each([
    ["", { kind: "nothing" }],
    ["1285.9", { kind: "shows", value: 1285.9 }],
    ["1285,9", { kind: "shows", value: 1285.9 }],
    ["1284.6", { kind: "shows", value: 1284.6 }],
    ["3.2", { kind: "backwards", value: 3.2, before: 1284.6 }],
  ])("hours “%s” after 1284.6", (text, said) => {
    expect(readCounter(text, HOURS, showed(1284.6))).toEqual(said);
  });

  it.each([
    ["plenty", HOURS],
    ["-4", HOURS],
    ["128590", HOURS],
    ["1285 psi", HOURS],
    ["1285.5", LANDINGS],
  ] as const)("“%s” is told as a fault that names the counter", (text, counter) => {
    const said = readCounter(text, counter, showed(1284));
    expect(said.kind).toBe("fault");
    expect(said.kind === "fault" ? said.words : "").toContain(counter.name);
  });

  it("the first figure of all is taken as it is", () => {
    expect(readCounter("128590", LANDINGS, undefined)).toEqual({ kind: "shows", value: 128_590 });
  });
});
