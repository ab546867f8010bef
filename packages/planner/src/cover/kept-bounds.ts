import { f64 } from "../cells.ts";

const FIRST_ROOM = 1 << 12;
/** Of what is worked out, so much is kept: some 64 MB. */
const MOST_ROOM = 1 << 22;

/** Bounds by a whole number of 53 bits. When there are too many, the rest is worked out again each time. */
export class KeptBounds {
  private keys = new Float64Array(FIRST_ROOM).fill(-1);
  private bounds = new Float64Array(FIRST_ROOM);
  private count = 0;

  at(key: number): number | undefined {
    const slot = this.slotOf(key);
    return f64(this.keys, slot) === key ? f64(this.bounds, slot) : undefined;
  }

  keep(key: number, bound: number): number {
    if (this.count * 2 >= this.keys.length) {
      if (this.keys.length >= MOST_ROOM) return bound;
      this.grow();
    }
    const slot = this.slotOf(key);
    if (f64(this.keys, slot) !== key) this.count += 1;
    this.keys[slot] = key;
    this.bounds[slot] = bound;
    return bound;
  }

  private slotOf(key: number): number {
    const high = Math.floor(key / 4_294_967_296);
    let hash = Math.imul((key - high * 4_294_967_296) | 0, 0x9e37_79b1) ^ Math.imul(high + 1, 0x85eb_ca6b);
    hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b_3c6d);
    const mask = this.keys.length - 1;
    let slot = (hash ^ (hash >>> 12)) & mask;
    while (f64(this.keys, slot) !== key && f64(this.keys, slot) >= 0) slot = (slot + 1) & mask;
    return slot;
  }

  private grow(): void {
    const [keys, bounds] = [this.keys, this.bounds];
    this.keys = new Float64Array(keys.length * 2).fill(-1);
    this.bounds = new Float64Array(keys.length * 2);
    this.count = 0;
    for (const [slot, key] of keys.entries()) if (key >= 0) this.keep(key, f64(bounds, slot));
  }
}
