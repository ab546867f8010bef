/** Figures that look random and are the same for the same seed, so that a history can be made again. */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** 0 up to, not including, 1. Mulberry32 (public domain), good enough to shape test data. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  chance(probability_1: number): boolean {
    return this.next() < probability_1;
  }

  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  between(low: number, high: number): number {
    return low + this.next() * (high - low);
  }

  /** A UUIDv7 of this moment. */
  uuidv7(time_ms: number): string {
    const time = time_ms.toString(16).padStart(12, "0");
    const a = this.whole(0, 0xfff).toString(16).padStart(3, "0");
    const b = this.whole(0x8000, 0xbfff).toString(16);
    const c = this.whole(0, 0xffffff).toString(16).padStart(6, "0");
    const d = this.whole(0, 0xffffff).toString(16).padStart(6, "0");
    return `${time.slice(0, 8)}-${time.slice(8)}-7${a}-${b}-${c}${d}`;
  }
}
