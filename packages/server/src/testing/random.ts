/**
 * Numbers from 0 to below 1 that follow from a seed, so that a run can be repeated.
 *
 * @source mulberry32, public domain, Tommy Ettinger
 */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** The seed of this run: given with SEED to repeat one, and told in any case. */
export function seedOfRun(of: string): number {
  const seed = Number(process.env["SEED"] ?? Date.now() % 1_000_000_000);
  console.log(`${of}: SEED=${seed}`);
  return seed;
}
