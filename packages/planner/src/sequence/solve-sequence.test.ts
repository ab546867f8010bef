import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allOrders } from "../testing/all-orders.ts";
import { arbitrarySequence } from "../testing/arbitrary-sequence.ts";
import { costOf, firstOrder, keepsRules, prepared, type SequenceProblem } from "./sequence-problem.ts";
import { solveSequence } from "./solve-sequence.ts";

/** The cheapest of all orders that keep the rules, by trying every one. */
function cheapest(problem: SequenceProblem): number {
  let best = Number.POSITIVE_INFINITY;
  for (const order of allOrders(problem.size)) {
    if (keepsRules(problem, order)) best = Math.min(best, costOf(problem, order));
  }
  return best;
}

describe("the order that is found", () => {
  it("is the cheapest of all that keep the rules, on problems small enough to try every order", () => {
    fc.assert(
      fc.property(arbitrarySequence(7), fc.integer(), (problem, seed) => {
        const { order, cost } = solveSequence(problem, { rounds: 200, seed });
        expect(keepsRules(problem, order)).toBe(true);
        expect(cost).toBe(costOf(problem, order));
        expect(cost).toBe(cheapest(problem));
      }),
      { numRuns: 25 },
    );
  });

  it("is never worse than the order that it began with", () => {
    fc.assert(
      fc.property(arbitrarySequence(20), (problem) => {
        const from = firstOrder(problem);
        expect(solveSequence(problem, { rounds: 0, from }).cost).toBeLessThanOrEqual(costOf(problem, from));
      }),
    );
  });

  it("is the same for the same seed and number of rounds", () => {
    fc.assert(
      fc.property(arbitrarySequence(20), fc.integer(), (problem, seed) => {
        expect(solveSequence(problem, { rounds: 30, seed })).toEqual(
          solveSequence(problem, { rounds: 30, seed }),
        );
      }),
      { numRuns: 30 },
    );
  });

  it("is given as far as it has come when the search is ended", () => {
    const size = 30;
    const cost = Float64Array.from({ length: size * size }, (_, at) => (at * 7919) % 97);
    const problem = { size, cost, after: Array.from({ length: size }, () => []) };
    const asked: number[] = [];
    const answer = solveSequence(problem, {
      rounds: 1_000_000,
      shouldStop: (best) => asked.push(best) > 3,
    });
    expect(answer.rounds).toBe(48);
    expect(keepsRules(problem, answer.order)).toBe(true);
    expect(asked).toEqual([...asked].sort((a, b) => b - a));
  });
});

describe("a problem that cannot be solved", () => {
  const two = { size: 2, cost: new Float64Array(4), after: [[], []] };

  it("is told with the cost that is none", () => {
    const cost = Float64Array.from([0, Number.NaN, 0, 0]);
    expect(() => prepared({ ...two, cost })).toThrow(
      "cost[0, 1]: expected a finite cost of zero or more, found NaN; leave no pair without a way",
    );
  });

  it("is told with those that wait for each other", () => {
    const after = [[], [2], [1], []];
    expect(() => prepared({ size: 4, cost: new Float64Array(16), after })).toThrow(
      "after: expected an order in which everything can be done, first to last, found 1, 2, 3 waiting for each other; take one of them out of what the others come after",
    );
  });
});
