/** Numbers from 0 up to, not including, 1; the same for the same seed, on every machine. */
export type Chance = () => number;

/**
 * A generator with a seed.
 *
 * @param seed any whole number
 * @source mulberry32, public domain, Tommy Ettinger
 */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A whole number from 0 up to, not including, `count`. */
export const below = (chance: Chance, count: number): number => Math.floor(chance() * count);
