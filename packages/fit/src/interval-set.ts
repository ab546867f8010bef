/** From low to high, both ends in it; the ends may be infinite. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Intervals apart from one another, rising. */
export type IntervalSet = readonly Interval[];

export const EVERYTHING: IntervalSet = [{ low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY }];

/** All that is in any of the intervals; those with their ends in the wrong order hold nothing. */
export function union(intervals: readonly Interval[]): IntervalSet {
  const rising = intervals.filter(({ low, high }) => low <= high).sort((a, b) => a.low - b.low);
  const joined: Interval[] = [];
  for (const one of rising) {
    const last = joined.at(-1);
    if (last === undefined || one.low > last.high) joined.push(one);
    else joined[joined.length - 1] = { low: last.low, high: Math.max(last.high, one.high) };
  }
  return joined;
}

/** What is in both. */
export const intersection = (one: IntervalSet, other: IntervalSet): IntervalSet =>
  union(
    one.flatMap((a) =>
      other.map((b): Interval => ({ low: Math.max(a.low, b.low), high: Math.min(a.high, b.high) })),
    ),
  );
