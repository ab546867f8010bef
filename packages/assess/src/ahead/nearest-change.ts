/** Where an answer changes as one value moves away from what it is now. */
export interface Change<A> {
  /** The last value, on the way from now, at which the answer is still what it is now. */
  readonly holds: number;
  /** The first value found at which it is another; no further from `holds` than the resolution. */
  readonly changes: number;
  /** The answer there. */
  readonly answer: A;
}

export interface Search<A> {
  readonly now: number;
  /** How far to look; on the side of now that is meant, which may be below it. */
  readonly end: number;
  /** How close to close in. */
  readonly resolution: number;
  readonly answerAt: (value: number) => A;
  readonly isSame: (a: A, b: A) => boolean;
}

/**
 * Shares of the way to the end at which is looked first: close together near now, where a change matters most. A change
 * that is undone again between two of them is not seen.
 */
const STATIONS_1 = [0.04, 0.12, 0.3, 0.6, 1] as const;

/**
 * The change nearest to now on one side, by bracketing: the answer need not be monotone.
 *
 * @returns `undefined` when the answer stays the same at every place that was looked at
 */
export function nearestChange<A>({
  now,
  end,
  resolution,
  answerAt,
  isSame,
}: Search<A>): Change<A> | undefined {
  if (now === end) return undefined;
  const first = answerAt(now);
  let holds = now;
  for (const share_1 of STATIONS_1) {
    const value = now + (end - now) * share_1;
    const answer = answerAt(value);
    if (!isSame(first, answer)) return closeIn({ holds, changes: value, answer }, first);
    holds = value;
  }
  return undefined;

  function closeIn(found: Change<A>, same: A): Change<A> {
    let { holds: near, changes: far, answer } = found;
    while (Math.abs(far - near) > resolution) {
      const middle = (near + far) / 2;
      const there = answerAt(middle);
      if (isSame(same, there)) near = middle;
      else {
        far = middle;
        answer = there;
      }
    }
    return { holds: near, changes: far, answer };
  }
}
