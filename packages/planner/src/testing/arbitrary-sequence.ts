import fc from "fast-check";
import type { SequenceProblem } from "../sequence/sequence-problem.ts";

/** Any small problem that can be solved: a thing comes after others of a lower number only, in a shuffled numbering. */
export function arbitrarySequence(maxSize: number): fc.Arbitrary<SequenceProblem> {
  return fc.integer({ min: 2, max: maxSize }).chain((size) =>
    fc
      .record({
        costs: fc.array(fc.integer({ min: 0, max: 50 }), { minLength: size * size, maxLength: size * size }),
        isSymmetric: fc.boolean(),
        rules: fc.array(fc.tuple(fc.nat(size), fc.nat(size)), { maxLength: size }),
        names: fc.shuffledSubarray(inner(size), { minLength: size - 2, maxLength: size - 2 }),
      })
      .map(({ costs, isSymmetric, rules, names }) => {
        const cost = Float64Array.from(costs, (value, at) => {
          const [a, b] = [Math.floor(at / size), at % size];
          return isSymmetric ? (costs[Math.min(a, b) * size + Math.max(a, b)] ?? 0) : value;
        });
        const after: number[][] = Array.from({ length: size }, () => []);
        for (const [a, b] of rules) {
          const [first, second] = [names[Math.min(a, b)], names[Math.max(a, b)]];
          if (first !== undefined && second !== undefined && first !== second) after[second]?.push(first);
        }
        return { size, cost, after };
      }),
  );
}

const inner = (size: number): number[] => Array.from({ length: size - 2 }, (_, i) => i + 1);
