import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arbitraryCover } from "../testing/arbitrary-cover.ts";
import { cheapestCover } from "../testing/cheapest-cover.ts";
import { coverCost, readyCover, visitsOf } from "./cover-problem.ts";
import { KeptBounds } from "./kept-bounds.ts";
import { neededTasks } from "./needed-tasks.ts";
import { PickedTree } from "./picked-tree.ts";
import { ProofSearch } from "./proof-search.ts";
import { reversedCover } from "./reversed-cover.ts";
import { WalkStates } from "./walk-states.ts";

describe("the proof's parts", () => {
  it("tasks that get done by themselves are done by every row that does the rest", () => {
    fc.assert(
      fc.property(arbitraryCover(7, 12), fc.array(fc.integer({ min: 1, max: 5 })), (problem, stances) => {
        const row = stances.filter((stance) => stance < problem.stances - 1);
        const ready = readyCover(problem);
        const needed = neededTasks(ready);
        expect(needed.tasks.length).toBeLessThanOrEqual(ready.tasks.length);
        expect(visitsOf(needed, row).isWhole).toBe(visitsOf(ready, row).isWhole);
      }),
      { numRuns: 100 },
    );
  });

  it("a walk from its end costs at least the same, and its proof is one for the walk", () => {
    fc.assert(
      fc.property(arbitraryCover(6, 7), fc.nat(6), (problem, states) => {
        const back = reversedCover(problem);
        const least = cheapestCover(problem);
        expect(cheapestCover(back.problem)).toBeCloseTo(least, 6);
        const row = problem.tasks.map(({ at }) => at[0] ?? 0);
        fc.pre(visitsOf(readyCover(problem), row).isWhole);
        const search = new ProofSearch(back.problem, back.row(row), 0);
        search.goOn(states, undefined);
        expect(search.bound).toBeLessThanOrEqual(least + 1e-6);
        search.goOn(100_000, undefined);
        expect(search.bound).toBeCloseTo(least, 6);
        const found = back.row(search.row);
        expect(visitsOf(readyCover(problem), found).isWhole).toBe(true);
        expect(coverCost(problem, found)).toBeCloseTo(least, 6);
      }),
      { numRuns: 40 },
    );
  });

  it("a proof that may be a share off never claims more than is true", () => {
    fc.assert(
      fc.property(arbitraryCover(6, 7), fc.constantFrom(0.02, 0.1, 0.3), (problem, target_1) => {
        const row = problem.tasks.map(({ at }) => at[0] ?? 0);
        fc.pre(visitsOf(readyCover(problem), row).isWhole);
        const search = new ProofSearch(problem, row, target_1);
        search.goOn(100_000, undefined);
        expect(search.bound).toBeLessThanOrEqual(cheapestCover(problem) + 1e-6);
        expect(search.bound).toBeGreaterThanOrEqual(search.best * (1 - target_1) - 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it("tightening never passes what a walk through the picked tasks costs", () => {
    fc.assert(
      fc.property(arbitraryCover(6, 6), (problem) => {
        const ready = neededTasks(readyCover(problem));
        const tree = new PickedTree(ready, [...ready.tasks.keys()]);
        const all = 2 ** ready.tasks.length - 1;
        const toll = new Float64Array(ready.tasks.length);
        const by = { steps: 40, stride: 1, patience: 8, enough: 1e6 };
        expect(tree.tightened(0, all, toll, by)).toBeLessThanOrEqual(cheapestCover(problem) + 1e-6);
      }),
      { numRuns: 60 },
    );
  });
});

it("a state is kept once, with the least that was paid for it, however many there are", () => {
  const states = new WalkStates(2);
  const known = new Map<string, number>();
  let seed = 1;
  const wrong: string[] = [];
  for (let turn = 0; turn < 6000; turn += 1) {
    seed = (Math.imul(seed, 48_271) >>> 0) % 2_147_483_647;
    const [stance, low, high, paid] = [seed % 7, (seed >>> 3) % 40, (seed >>> 9) % 40, (seed >>> 15) % 90];
    const key = `${stance} ${low} ${high}`;
    const added = states.add(stance, Int32Array.of(low, high), paid, -1);
    const before = known.get(key) ?? Number.POSITIVE_INFINITY;
    if ((added !== undefined) !== paid < before) wrong.push(key);
    known.set(key, Math.min(before, paid));
  }
  const live = Array.from({ length: states.count }, (_, i) => i).filter((state) => !states.isPassed(state));
  expect(live).toHaveLength(known.size);
  for (const state of live) {
    const key = `${states.stanceOf(state)} ${states.wordOf(state, 0)} ${states.wordOf(state, 1)}`;
    if (states.paidTo(state) !== known.get(key)) wrong.push(key);
  }
  expect(wrong).toEqual([]);
});

it("a kept bound is found again under its own number, however many there are", () => {
  const kept = new KeptBounds();
  const numbers = Array.from({ length: 6000 }, (_, i) => i * 1_048_583 * (i % 3 === 0 ? 997 : 1));
  const early = numbers.filter((number) => {
    const known = kept.at(number);
    kept.keep(number, number / 2);
    return known !== undefined;
  });
  expect(early).toEqual([]);
  expect(numbers.filter((number) => kept.at(number) !== number / 2)).toEqual([]);
});
