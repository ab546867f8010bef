import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arbitraryCover } from "../testing/arbitrary-cover.ts";
import { cheapestCover } from "../testing/cheapest-cover.ts";
import { type CoverProblem, coverCost, readyCover, type Visit, visitsOf } from "./cover-problem.ts";
import { proveCover } from "./prove-cover.ts";
import { solveCover } from "./solve-cover.ts";

function expectEverythingOnce({ tasks }: CoverProblem, visits: readonly Visit[]): void {
  const order = visits.flatMap((visit) => visit.tasks);
  expect(order.toSorted((a, b) => a - b)).toEqual(tasks.map((_, task) => task));
  for (const visit of visits) {
    for (const task of visit.tasks) {
      expect(tasks[task]?.at).toContain(visit.stance);
      for (const one of tasks[task]?.after ?? [])
        expect(order.indexOf(one)).toBeLessThan(order.indexOf(task));
    }
  }
}

describe("a walk that does everything", () => {
  it("does each task once, at a stance that serves it, after all that it waits for", () => {
    fc.assert(
      fc.property(arbitraryCover(12, 25), fc.integer(), (problem, seed) => {
        expectEverythingOnce(problem, solveCover(problem, { rounds: 3, seed }).visits);
      }),
      { numRuns: 40 },
    );
  });

  it("is the cheapest there is, by trying every row, where that can be tried", () => {
    fc.assert(
      fc.property(arbitraryCover(6, 6), (problem) => {
        expect(solveCover(problem, { rounds: 40 }).cost).toBeCloseTo(cheapestCover(problem), 6);
      }),
      { numRuns: 40 },
    );
  });

  it("is never worse than what it began with", () => {
    fc.assert(
      fc.property(arbitraryCover(10, 15), (problem) => {
        const row = problem.tasks.map(({ at }) => at[0] ?? 0);
        fc.pre(visitsOf(readyCover(problem), row).isWhole);
        expect(solveCover(problem, { rounds: 0, from: row }).cost).toBeLessThanOrEqual(
          coverCost(problem, row) + 1e-9,
        );
      }),
      { numRuns: 40 },
    );
  });

  it("is the same for the same seed", () => {
    fc.assert(
      fc.property(arbitraryCover(10, 15), fc.integer(), (problem, seed) => {
        expect(solveCover(problem, { rounds: 4, seed })).toEqual(solveCover(problem, { rounds: 4, seed }));
      }),
      { numRuns: 15 },
    );
  });
});

describe("the proof", () => {
  it("never claims more than is true, however early it ends, and closes when it may go on", () => {
    fc.assert(
      fc.property(arbitraryCover(6, 7), fc.nat(5), (problem, states) => {
        const { visits } = solveCover(problem, { rounds: 0 });
        const least = cheapestCover(problem);
        const early = proveCover(problem, visits, { target_1: 0, states });
        expect(early.bound).toBeLessThanOrEqual(least + 1e-6);
        expect(early.cost).toBeGreaterThanOrEqual(least - 1e-6);
        const whole = proveCover(problem, visits, { target_1: 0, states: 100_000 });
        expect(whole.bound).toBeCloseTo(least, 6);
        expect(whole.cost).toBeCloseTo(least, 6);
        expectEverythingOnce(problem, whole.visits);
      }),
      { numRuns: 40 },
    );
  });
});

it("a task that no stance serves is told", () => {
  const problem = { stances: 2, cost: new Float64Array(4), tasks: [{ at: [], after: [] }] };
  expect(() => solveCover(problem, { rounds: 1 })).toThrow(
    "tasks[0]: expected a stance from which it can be done, found none; give it a stance, or leave it out",
  );
});
