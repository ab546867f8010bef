import { f64, i32, u8 } from "../cells.ts";

/** In how many words of 32 the tasks of a walk stand, a one for each that is done. */
export const wordsFor = (tasks: number): number => Math.max(1, Math.ceil(tasks / 32));

const ROUNDING = 1e-9;
const FIRST_ROOM = 1024;

/**
 * The states that a walk can be in (where one stands, what is done), each with the least that was paid to come there.
 * They are named by numbers, and lie in a few long arrays: there are very many of them.
 */
export class WalkStates {
  count = 0;
  private done: Int32Array;
  private stance = new Int32Array(FIRST_ROOM);
  private paid = new Float64Array(FIRST_ROOM);
  private before = new Int32Array(FIRST_ROOM);
  private passed = new Uint8Array(FIRST_ROOM);
  /** By a hash, the number of a state and one; 0 where there is none. */
  private table = new Int32Array(4 * FIRST_ROOM);
  private readonly words: number;

  constructor(words: number) {
    this.words = words;
    this.done = new Int32Array(FIRST_ROOM * words);
  }

  stanceOf(state: number): number {
    return i32(this.stance, state);
  }

  paidTo(state: number): number {
    return f64(this.paid, state);
  }

  /** Whether the same was come to cheaper since. */
  isPassed(state: number): boolean {
    return u8(this.passed, state) === 1;
  }

  /** One of the words that say what is done. */
  wordOf(state: number, word: number): number {
    return i32(this.done, state * this.words + word);
  }

  /** @returns the number of the state, or nothing where it was come to as cheaply before */
  add(stance: number, done: Int32Array, paid: number, before: number): number | undefined {
    let slot = this.slotOf(stance, done);
    const known = i32(this.table, slot) - 1;
    if (known >= 0) {
      if (f64(this.paid, known) <= paid + ROUNDING) return undefined;
      this.passed[known] = 1;
    }
    if (this.count === this.stance.length) {
      this.grow();
      slot = this.slotOf(stance, done);
    }
    const state = this.count;
    this.count += 1;
    this.stance[state] = stance;
    this.paid[state] = paid;
    this.before[state] = before;
    this.done.set(done, state * this.words);
    this.table[slot] = state + 1;
    return state;
  }

  /** The stances from the first state to this one, without that in which one begins. */
  rowTo(state: number): number[] {
    const row: number[] = [];
    for (let at = state; i32(this.before, at) >= 0; at = i32(this.before, at)) row.unshift(this.stanceOf(at));
    return row;
  }

  /** Where this state stands in the table, or would. */
  private slotOf(stance: number, done: Int32Array): number {
    let hash = Math.imul(stance + 1, 0x9e37_79b1);
    for (let word = 0; word < this.words; word += 1) {
      hash = Math.imul(hash ^ i32(done, word), 0x85eb_ca6b);
      hash ^= hash >>> 13;
    }
    const mask = this.table.length - 1;
    let slot = hash & mask;
    for (let known = i32(this.table, slot); known > 0; known = i32(this.table, slot)) {
      if (this.isSame(known - 1, stance, done)) break;
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  private isSame(state: number, stance: number, done: Int32Array): boolean {
    if (i32(this.stance, state) !== stance) return false;
    for (let word = 0; word < this.words; word += 1) {
      if (this.wordOf(state, word) !== i32(done, word)) return false;
    }
    return true;
  }

  private grow(): void {
    const room = 2 * this.stance.length;
    const wider = <T extends Int32Array | Float64Array | Uint8Array>(cells: T, into: T): T => {
      into.set(cells);
      return into;
    };
    this.done = wider(this.done, new Int32Array(room * this.words));
    this.stance = wider(this.stance, new Int32Array(room));
    this.paid = wider(this.paid, new Float64Array(room));
    this.before = wider(this.before, new Int32Array(room));
    this.passed = wider(this.passed, new Uint8Array(room));
    this.table = new Int32Array(4 * room);
    const done = new Int32Array(this.words);
    for (let state = 0; state < this.count; state += 1) {
      if (this.isPassed(state)) continue;
      for (let word = 0; word < this.words; word += 1) done[word] = this.wordOf(state, word);
      this.table[this.slotOf(this.stanceOf(state), done)] = state + 1;
    }
  }
}
