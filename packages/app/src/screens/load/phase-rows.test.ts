import { loadFigures } from "@witnessmark/assess";
import { clinicPlan, weighed } from "@witnessmark/assess/testing/clinic-load";
import type { LoadedItem } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { phaseRow, type RowKey, rowKeys } from "./phase-rows.ts";
import { DEMO_BOOK, IN_SI } from "./testing/demo-load.ts";

const figuresOf = (items: readonly LoadedItem[]) =>
  loadFigures(DEMO_BOOK, { ...clinicPlan, load: { ...clinicPlan.load, items } });
const careless = figuresOf(clinicPlan.load.items);
const rowOf = (key: RowKey, figures = careless) => phaseRow(key, figures, IN_SI);

describe("the rows of the flight", () => {
  it("have the worst point in the order of the flight, where it is at no moment", () => {
    expect(rowKeys(careless)).toEqual(["zero-fuel", "ramp", "take-off", "worst", "landing"]);
    // by hand 2573.6 kg at 4.363655 m, the edge at 4.36
    expect(rowOf("worst")).toMatchObject({
      name: "Worst",
      under: "gear up, 128 kg burnt",
      mass: "2,574",
      limit: "",
      arm: "4.364",
      range: "to 4.360",
      massLeft: "",
      edgeLeft: "4 mm behind",
      status: "stop",
    });
  });

  it("have what is left to the mass limit and to the nearest edge, each with its own status", () => {
    // 2691.6 kg of 2720; (10 364.785 + 1359.817175) / 2691.6 = 4.355997 m, 4 mm left; the front edge 4.12335 m
    expect(rowOf("take-off")).toMatchObject({
      massLeft: "28 kg",
      massStatus: "clear",
      edgeLeft: "4 mm to aft",
      range: "4.124 to 4.360",
      arm: "4.356",
    });
    // (10 364.785 + 817.1227375) / 2563.6 = 4.361799 m
    expect(rowOf("landing")).toMatchObject({
      massLeft: "21 kg",
      massStatus: "clear",
      edgeLeft: "2 mm behind",
      edgeStatus: "stop",
      arm: "4.362",
    });
  });

  it("hold the ramp to its mass alone: the edges begin at take-off", () => {
    expect(rowOf("ramp")).toMatchObject({ range: "from take-off", edgeLeft: "", massLeft: "38 kg" });
  });

  it("say on which side the dry aircraft is out, and that it is not flown so", () => {
    const front = figuresOf([weighed("seat-1", 400)]);
    const row = rowOf("zero-fuel", front);
    // (1905 × 4.055 + 400 × 3.62) / 2305 = 3.97951 m; at 2305 kg the edge is at 4.02 + 0.11 × 55 / 470 = 4.032872
    expect(row).toMatchObject({
      edgeLeft: "54 mm ahead",
      edgeStatus: "caution",
      under: "only if flown dry",
      arm: "3.979",
      range: "4.033 to 4.360",
    });
  });
});
