function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at += 1) if (!Object.is(one[at], other[at])) return false;
  return true;
}

/**
 * Remembers what was made last for an object, as long as everything else that it was made from is the same. A flight is
 * asked about hundreds of times with one value changed; the parts that did not change are the same objects. It changes
 * no answer: what it gives back was made from the same things.
 */
export function remembered<T>() {
  const held = new WeakMap<object, { readonly from: readonly unknown[]; readonly made: T }>();
  return (of: object, from: readonly unknown[], make: () => T): T => {
    const found = held.get(of);
    if (found !== undefined && isSame(from, found.from)) return found.made;
    const made = make();
    held.set(of, { from, made });
    return made;
  };
}
