function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at += 1) if (!Object.is(one[at], other[at])) return false;
  return true;
}

/** How many are remembered at once, where nobody says: three fields, each as it is and with one value changed. */
const MOST = 8;

/**
 * Remembers what was made last for an object, as long as everything else that it was made from is the same. A flight is
 * asked about hundreds of times with one value changed; the parts that did not change are the same objects. It changes
 * no answer: what it gives back was made from the same things. What was not asked for lately is let go: a weak map keeps
 * it until the collector comes round, which then takes twice as long.
 *
 * @param most how many objects there are at once
 */
export function remembered<T>(most = MOST) {
  /** What was asked for last stands last. */
  const held = new Map<object, { readonly from: readonly unknown[]; readonly made: T }>();
  return (of: object, from: readonly unknown[], make: () => T): T => {
    const found = held.get(of);
    const kept = found !== undefined && isSame(from, found.from) ? found : { from, made: make() };
    held.delete(of);
    held.set(of, kept);
    const [oldest] = held.keys();
    if (held.size > most && oldest !== undefined) held.delete(oldest);
    return kept.made;
  };
}
