import { readFileSync } from "node:fs";
import { keepsRules, solveSequence } from "@witnessmark/planner";
import { describe, expect, it } from "vitest";
import index from "./index.json" with { type: "json" };
import { readInstance } from "./read-instance.ts";

const textOf = (file: string): string => readFileSync(new URL(file, import.meta.url), "utf8");

/** What the search needs for these, five times over; larger ones are in the benchmark. */
const ROUNDS = 6000;
const small = index.instances.filter(({ dimension }) => dimension <= 30);

describe("the instances of the library", () => {
  it("are all there: 27 round trips and 24 sequences with rules", () => {
    expect(index.instances.filter(({ type }) => type === "TSP")).toHaveLength(27);
    expect(index.instances.filter(({ type }) => type === "SOP")).toHaveLength(24);
  });

  // TSPLIB 95, tables 1 and 2 (the optimum of each stands in index.json with its status)
  it.each(small)("$name is solved to its known optimum", ({ file, best }) => {
    const problem = readInstance(textOf(file));
    const { order, cost } = solveSequence(problem, { rounds: ROUNDS, shouldStop: (cost) => cost <= best });
    expect(keepsRules(problem, order)).toBe(true);
    expect(cost).toBe(best);
  });

  it.each(index.instances)(
    "$name is read whole: as many nodes as it says, a cost for each pair",
    (instance) => {
      const { size, cost } = readInstance(textOf(instance.file));
      expect(size).toBe(instance.dimension + (instance.type === "TSP" ? 1 : 0));
      expect(cost.every((value) => value >= 0 && Number.isFinite(value))).toBe(true);
    },
  );
});
