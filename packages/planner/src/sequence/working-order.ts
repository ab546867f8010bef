import { f64, i32 } from "../cells.ts";
import type { Prepared } from "./sequence-problem.ts";

/** An order that is being worked on, with where each stands, so that a move is cheap to judge. */
export class WorkingOrder {
  readonly problem: Prepared;
  readonly order: Int32Array;
  readonly place: Int32Array;
  cost = 0;
  private readonly spare: Int32Array;

  constructor(problem: Prepared, order: Int32Array | readonly number[]) {
    this.problem = problem;
    this.order = Int32Array.from(order);
    this.place = new Int32Array(problem.size);
    this.spare = new Int32Array(problem.size);
    this.settle(0, problem.size - 1);
    for (let at = 1; at < problem.size; at += 1)
      this.cost += this.arc(i32(this.order, at - 1), i32(this.order, at));
  }

  arc(from: number, to: number): number {
    return f64(this.problem.cost, from * this.problem.size + to);
  }

  /** Takes over an order as a whole. */
  take(order: Int32Array, cost: number): void {
    this.order.set(order);
    this.cost = cost;
    this.settle(0, this.problem.size - 1);
  }

  /** Lets `first..middle` and `middle + 1..last` change places. The caller has seen that the rules are kept. */
  swap(first: number, middle: number, last: number, gain: number): void {
    const { order, spare } = this;
    spare.set(order.subarray(first, middle + 1));
    order.copyWithin(first, middle + 1, last + 1);
    order.set(spare.subarray(0, middle + 1 - first), first + last - middle);
    this.cost -= gain;
    this.settle(first, last);
  }

  /** Turns `first..last` round. The caller has seen that the rules are kept. */
  reverse(first: number, last: number, gain: number): void {
    this.order.subarray(first, last + 1).reverse();
    this.cost -= gain;
    this.settle(first, last);
  }

  /** Whether `first..middle` may come after `middle + 1..last`. */
  maySwap(first: number, middle: number, last: number): boolean {
    for (let at = first; at <= middle; at += 1) if (this.firstFollower(at, middle) <= last) return false;
    return true;
  }

  /** The first place after `beyond` of one that must come straight after what stands here; the size when there is none. */
  firstFollower(at: number, beyond: number): number {
    const { next, bounds, size } = this.problem;
    const node = i32(this.order, at);
    const end = i32(bounds, node + 1);
    let first = size;
    for (let i = i32(bounds, node); i < end; i += 1) {
      const there = i32(this.place, i32(next, i));
      if (there > beyond && there < first) first = there;
    }
    return first;
  }

  /** The last place up to `end` of one that must come straight after what stands here; −1 when there is none. */
  lastFollower(at: number, end: number): number {
    const { next, bounds } = this.problem;
    const node = i32(this.order, at);
    const stop = i32(bounds, node + 1);
    let last = -1;
    for (let i = i32(bounds, node); i < stop; i += 1) {
      const there = i32(this.place, i32(next, i));
      if (there <= end && there > last) last = there;
    }
    return last;
  }

  private settle(first: number, last: number): void {
    for (let at = first; at <= last; at += 1) this.place[i32(this.order, at)] = at;
  }
}
