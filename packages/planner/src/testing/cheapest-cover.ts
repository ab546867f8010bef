import { type CoverProblem, coverCost, readyCover, visitsOf } from "../cover/cover-problem.ts";

/** The least that any row of stances costs, by going on from every row that may still be the cheapest. Small cases only. */
export function cheapestCover(problem: CoverProblem): number {
  const ready = readyCover(problem);
  let best = Number.POSITIVE_INFINITY;
  const goOn = (row: readonly number[], served: number): void => {
    const { isWhole } = visitsOf(ready, row);
    if (isWhole) {
      best = Math.min(best, coverCost(problem, row));
      return;
    }
    for (let stance = 1; stance < problem.stances - 1; stance += 1) {
      const longer = [...row, stance];
      const count = visitsOf(ready, longer).done.filter((done) => done === 1).length;
      if (count > served && coverCost(problem, longer) < best) goOn(longer, count);
    }
  };
  goOn([], 0);
  return best;
}
