/** Every order of the things from 1 up to, not including, `size - 1`, with 0 before and the last behind. Small sizes only. */
export function* allOrders(size: number): Generator<readonly number[]> {
  const inner = Array.from({ length: Math.max(size - 2, 0) }, (_, i) => i + 1);
  for (const order of permutations(inner)) yield [0, ...order, size - 1];
}

function* permutations(items: readonly number[]): Generator<readonly number[]> {
  if (items.length === 0) {
    yield [];
    return;
  }
  for (const [at, item] of items.entries()) {
    for (const rest of permutations(items.toSpliced(at, 1))) yield [item, ...rest];
  }
}
