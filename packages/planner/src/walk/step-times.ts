import type { Method } from "@witnessmark/book";

/** How long one look took on a walk, and the least that the book gives it. */
export interface PastLook {
  readonly method: Method;
  readonly least_s: number;
  readonly took_s: number;
}

/** The book's `least` is the bare minimum for one look; an unhurried one takes about twice that. From memory. */
const UNHURRIED_1 = 2;
/** How many past looks weigh as much as that memory. From memory. */
const MEMORY_LOOKS = 5;

/**
 * How many times the book's least a look takes, for each method that has been timed: the median of past looks, drawn
 * towards twice the least while they are few. The median, because a look that was interrupted says nothing.
 *
 * @param past looks with a time above zero; others say nothing and are passed over
 */
export function timesLeast(past: readonly PastLook[]): ReadonlyMap<Method, number> {
  const byMethod = new Map<Method, number[]>();
  for (const { method, least_s, took_s } of past) {
    const times_1 = took_s / least_s;
    if (!(times_1 > 0 && times_1 < Number.POSITIVE_INFINITY)) continue;
    byMethod.set(method, [...(byMethod.get(method) ?? []), times_1]);
  }
  return new Map(
    [...byMethod].map(([method, times]) => {
      const weight = times.length / (times.length + MEMORY_LOOKS);
      return [method, weight * median(times) + (1 - weight) * UNHURRIED_1] as const;
    }),
  );
}

/** Seconds that a look is likely to take. */
export const look_s = (
  { method, least_s }: Pick<PastLook, "method" | "least_s">,
  learnt: ReadonlyMap<Method, number>,
): number => least_s * (learnt.get(method) ?? UNHURRIED_1);

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? 0) + upper) / 2;
}
