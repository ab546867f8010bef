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
  /** Where the change is likely to be, by two answers that differ: it saves steps and never decides anything. */
  readonly guess?: (near: Asked<A>, far: Asked<A>) => number | undefined;
}

/** A value and the answer there. */
export interface Asked<A> {
  readonly value: number;
  readonly answer: A;
}

/**
 * Shares of the way to the end at which is looked first: close together near now, where a change matters most. A change
 * that is undone again between two of them is not seen.
 */
const STATIONS_1 = [0.06, 0.22, 0.5, 1] as const;

/** How often a guess is tried before the rest is halved, and how many resolutions apart it is worth one. */
const GUESSES = 3;
const GUESS_BEYOND = 4;

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
  guess = () => undefined,
}: Search<A>): Change<A> | undefined {
  if (now === end) return undefined;
  const first = answerAt(now);
  let holds: Asked<A> = { value: now, answer: first };
  for (const share_1 of STATIONS_1) {
    const value = now + (end - now) * share_1;
    const answer = answerAt(value);
    if (!isSame(first, answer)) return closeIn(holds, { value, answer });
    holds = { value, answer };
  }
  return undefined;

  /**
   * Halves the way between the two until they are close. A guess is tried first, at the halves between which it lies;
   * what it shows, the halving need not ask again. Where there is but one change it ends where it would without.
   */
  function closeIn(from: Asked<A>, to: Asked<A>): Change<A> {
    let [near, far] = [from, to];
    const isBeyond = (value: number, other: number): boolean => (end > now ? value >= other : value <= other);
    const look = (value: number): void => {
      const answer = answerAt(value);
      if (isSame(first, answer)) near = { value, answer };
      else far = { value, answer };
    };
    for (let tried = 0; tried < GUESSES; tried += 1) {
      if (Math.abs(far.value - near.value) <= GUESS_BEYOND * resolution) break;
      const target = guess(near, far);
      if (target === undefined || !isBeyond(target, near.value) || isBeyond(target, far.value)) break;
      const [low, high] = halvesAround(target, from.value, to.value);
      if (!isBeyond(near.value, low)) look(low);
      else if (!isBeyond(high, far.value)) look(high);
    }
    let [low, high] = [from.value, to.value];
    while (Math.abs(high - low) > resolution) {
      const middle = (low + high) / 2;
      if (!isBeyond(near.value, middle) && !isBeyond(middle, far.value)) look(middle);
      if (isBeyond(near.value, middle)) low = middle;
      else high = middle;
    }
    return { holds: near.value, changes: far.value, answer: far.answer };
  }

  /** The two places between which halving would come to an end, were the change at a target. */
  function halvesAround(target: number, from: number, to: number): readonly [number, number] {
    let [low, high] = [from, to];
    while (Math.abs(high - low) > resolution) {
      const middle = (low + high) / 2;
      if (end > now ? target >= middle : target <= middle) low = middle;
      else high = middle;
    }
    return [low, high];
  }
}
