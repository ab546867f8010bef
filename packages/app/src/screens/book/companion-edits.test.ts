import type { Plain } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { companionEdits } from "./companion-edits.ts";

const gauges = (gauge: Plain): Plain => ({ gauges: [gauge] });
const seats = (seat: Plain): Plain => ({ loading: { stations: [seat] } });
const ARM = ["loading", "stations", 0, "arm"] as const;

describe("a gauge", () => {
  const common = { unit: "bar", accuracy: "0.1 bar", resolution: "0.05 bar", assumed: true };

  it("that starts from common practice does so in its new unit", () => {
    expect(companionEdits(gauges(common), ["gauges", 0, "unit"], "psi")).toEqual([
      { set: ["gauges", 0, "accuracy"], to: "1 psi" },
      { set: ["gauges", 0, "resolution"], to: "0.5 psi" },
      { set: ["gauges", 0, "assumed"], to: true },
    ]);
  });

  it("of which nothing is common has to be told, and nothing is taken for its own", () => {
    expect(companionEdits(gauges(common), ["gauges", 0, "unit"], "N·m")).toEqual([
      { set: ["gauges", 0, "accuracy"], to: "" },
      { set: ["gauges", 0, "resolution"], to: "" },
      { remove: ["gauges", 0, "assumed"] },
    ]);
  });

  it("is its own once its accuracy is put in, and then keeps it in any unit", () => {
    expect(companionEdits(gauges(common), ["gauges", 0, "accuracy"], "0.05 bar")).toEqual([
      { remove: ["gauges", 0, "assumed"] },
    ]);
    const own = { unit: "bar", accuracy: "0.05 bar", resolution: "0.01 bar" };
    expect(companionEdits(gauges(own), ["gauges", 0, "unit"], "psi")).toEqual([]);
  });
});

describe("a seat", () => {
  it("is drawn where the arm of the handbook says, once that is put in", () => {
    const fresh = seats({ arm: "", place: [2.83, -0.25, 1.2] });
    expect(companionEdits(fresh, ARM, "0.94 m")).toEqual([
      { set: ["loading", "stations", 0, "place", 0], to: 0.94 },
    ]);
    expect(companionEdits(fresh, ARM, "37 in")).toEqual([
      { set: ["loading", "stations", 0, "place", 0], to: 0.94 }, // 37 × 0.0254 m = 0.9398 m
    ]);
  });

  it("stays where a hand has put it, and where the arm cannot be read", () => {
    expect(companionEdits(seats({ arm: "0.94 m", place: [1.1, 0, 1] }), ARM, "0.96 m")).toEqual([]);
    expect(companionEdits(seats({ arm: "", place: [2.83, 0, 1] }), ARM, "far aft")).toEqual([]);
    expect(companionEdits(seats({ arm: "0.94 m", place: [0.94, 0, 1] }), ARM, "0.94 m")).toEqual([]);
  });
});
