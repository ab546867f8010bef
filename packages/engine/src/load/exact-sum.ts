/**
 * Sums that are rounded once, at their end: the double nearest to the true sum. So a sum is the same in any order, to
 * the last bit, and a weight put in and taken out again leaves nothing behind.
 *
 * @source Shewchuk, Adaptive Precision Floating-Point Arithmetic, 1997 (sums without error); Dekker, 1971 (products)
 */

const SPLITTER = 2 ** 27 + 1;

/** Adds one term to partial sums that do not overlap, smallest first, without losing a bit. */
function grow(partials: number[], term: number): void {
  if (term === 0) return; // most products of a load lose nothing
  let carried = term;
  let kept = 0;
  const { length } = partials;
  for (let at = 0; at < length; at += 1) {
    const partial = partials[at] ?? 0;
    const larger = Math.abs(carried) < Math.abs(partial);
    const large = larger ? partial : carried;
    const high = carried + partial;
    const low = (larger ? carried : partial) - (high - large);
    if (low !== 0) {
      partials[kept] = low;
      kept += 1;
    }
    carried = high;
  }
  partials[kept] = carried;
  if (partials.length > kept + 1) partials.length = kept + 1;
}

/** The nearest double to partial sums that do not overlap, halves to even. */
function rounded(partials: readonly number[]): number {
  let at = partials.length - 1;
  let high = partials[at] ?? 0;
  let low = 0;
  while (low === 0) {
    at -= 1;
    const next = partials[at];
    if (next === undefined) return high;
    const before = high;
    high = before + next;
    low = next - (high - before);
  }
  // Half a digit is left over: what lies below decides which way it rounds.
  const below = partials[at - 1] ?? 0;
  if ((low < 0 && below < 0) || (low > 0 && below > 0)) {
    const twice = low * 2;
    const up = high + twice;
    if (twice === up - high) return up;
  }
  return high;
}

/** The upper half of a number, of at most 26 bits; what is left of it is the lower. */
function upperHalf(value: number): number {
  const shifted = SPLITTER * value;
  return shifted - (shifted - value);
}

/** What a product loses when it is rounded. */
function productRest(a: number, b: number, product: number): number {
  const aHigh = upperHalf(a);
  const aLow = a - aHigh;
  const bHigh = upperHalf(b);
  const bLow = b - bHigh;
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
}

/** A sum on its way, for what is not in a list yet. Terms as in `exactSum`, products as in `exactSumOfProducts`. */
export class ExactSum {
  readonly #partials: number[] = [];

  add(term: number): void {
    grow(this.#partials, term);
  }

  /** The product is added whole, not as a double. */
  addProduct(a: number, b: number): void {
    const product = a * b;
    if (product === 0) return;
    grow(this.#partials, productRest(a, b, product));
    grow(this.#partials, product);
  }

  total(): number {
    return rounded(this.#partials);
  }
}

/**
 * The sum of the terms, correctly rounded.
 *
 * @param terms finite, below 1e300 in magnitude; none gives 0
 */
export function exactSum(terms: Iterable<number>): number {
  const sum = new ExactSum();
  for (const term of terms) sum.add(term);
  return sum.total();
}

/**
 * The sum of products, correctly rounded: each product is added whole, not as a double.
 *
 * @param pairs finite, each number below 1e150 in magnitude
 */
export function exactSumOfProducts(pairs: Iterable<readonly [number, number]>): number {
  const sum = new ExactSum();
  for (const [a, b] of pairs) sum.addProduct(a, b);
  return sum.total();
}
