function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at += 1) if (!Object.is(one[at], other[at])) return false;
  return true;
}

/** How many objects of a kind are remembered at once, where nobody says: three fields, each as it is and with one value changed. */
const MOST = 8;

interface Held<T> {
  readonly of: object;
  readonly from: readonly unknown[];
  readonly made: T;
}

/**
 * Remembers what was made last for an object, as long as everything else that it was made from is the same. A flight is
 * asked about hundreds of times with one value changed; the parts that did not change are the same objects. It changes
 * no answer: what it gives back was made from the same things. What was not asked for lately is let go: a weak map keeps
 * it until the collector comes round, which then takes twice as long.
 *
 * @param most how many objects there are at once
 */
export function remembered<T>(most = MOST) {
  const held: Held<T>[] = [];
  let oldest = 0;
  return (of: object, from: readonly unknown[], make: () => T): T => {
    const at = held.findIndex((one) => one.of === of);
    const found = held[at];
    if (found !== undefined && isSame(from, found.from)) return found.made;
    const made = make();
    if (found !== undefined) held[at] = { of, from, made };
    else {
      held[oldest] = { of, from, made };
      oldest = (oldest + 1) % most;
    }
    return made;
  };
}
