import fc from "fast-check";
import type { CoverProblem } from "../cover/cover-problem.ts";

/** Small walks: stances on a plane, straight ways between them, tasks that wait only for tasks before them. */
export function arbitraryCover(mostStances: number, mostTasks: number): fc.Arbitrary<CoverProblem> {
  return fc.integer({ min: 3, max: mostStances }).chain((stances) =>
    fc
      .record({
        places: fc.array(fc.tuple(fc.nat(20), fc.nat(20)), { minLength: stances, maxLength: stances }),
        tasks: fc.array(
          fc.record({
            at: fc.uniqueArray(fc.integer({ min: 1, max: stances - 2 }), { minLength: 1, maxLength: 3 }),
            after: fc.array(fc.nat(mostTasks), { maxLength: 2 }),
          }),
          { maxLength: mostTasks },
        ),
      })
      .map(({ places, tasks }) => {
        const cost = new Float64Array(stances * stances);
        for (const [a, from] of places.entries()) {
          for (const [b, to] of places.entries()) {
            const stops = [a, b].filter((one) => one > 0 && one < stances - 1).length;
            if (a !== b) cost[a * stances + b] = Math.hypot(from[0] - to[0], from[1] - to[1]) + stops;
          }
        }
        return {
          stances,
          cost,
          tasks: tasks.map(({ at, after }, i) => ({ at, after: after.filter((one) => one < i) })),
        };
      }),
  );
}
