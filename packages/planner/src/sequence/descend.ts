import { i32, u8 } from "../cells.ts";
import type { WorkingOrder } from "./working-order.ts";

/** Differences below this are rounding, not gain. */
const LEAST_GAIN = 1e-9;

/** The things whose surroundings have changed since they were last looked at. */
export class ToLookAt {
  private readonly queue: Int32Array;
  private readonly waiting: Uint8Array;
  private head = 0;
  private count = 0;

  constructor(size: number) {
    this.queue = new Int32Array(size);
    this.waiting = new Uint8Array(size);
  }

  add(node: number): void {
    if (u8(this.waiting, node) === 1) return;
    this.waiting[node] = 1;
    this.queue[(this.head + this.count) % this.queue.length] = node;
    this.count += 1;
  }

  /** The one that has waited longest, or −1. */
  next(): number {
    if (this.count === 0) return -1;
    const node = i32(this.queue, this.head);
    this.head = (this.head + 1) % this.queue.length;
    this.count -= 1;
    this.waiting[node] = 0;
    return node;
  }
}

/**
 * Makes every exchange that gains, until none is left around the things to be looked at: two neighbouring stretches
 * change places (the only exchange of three arcs that turns nothing round), and, where both directions cost the same,
 * a stretch is turned round.
 *
 * Each search begins with a new arc that is cheaper than the one it replaces at the same end: an exchange that gains
 * has such an arc.
 */
export function descend(work: WorkingOrder, toLookAt: ToLookAt): void {
  for (let node = toLookAt.next(); node >= 0; node = toLookAt.next()) {
    while (improve(work, node, toLookAt));
  }
}

function improve(work: WorkingOrder, node: number, toLookAt: ToLookAt): boolean {
  return (
    improveAfter(work, node, toLookAt) ||
    (work.problem.isSymmetric && (turnAfter(work, node, toLookAt) || turnBefore(work, node, toLookAt)))
  );
}

/** Looks for a swap in which `node` gets a cheaper follower. */
function improveAfter(work: WorkingOrder, node: number, toLookAt: ToLookAt): boolean {
  const { order, place, problem } = work;
  const { size, near } = problem;
  const at = i32(place, node);
  if (at === size - 1) return false;
  const now = work.arc(node, i32(order, at + 1));
  for (let rank = 0; rank < size - 1; rank += 1) {
    const other = i32(near, node * (size - 1) + rank);
    const gain = now - work.arc(node, other);
    if (gain <= LEAST_GAIN) return false;
    const there = i32(place, other);
    if (there === 0) continue;
    const isFound =
      there > at
        ? asFirstArc(work, at, there - 1, gain, toLookAt) || asLastArc(work, at, there - 1, gain, toLookAt)
        : asMiddleArc(work, there - 1, at, gain, toLookAt);
    if (isFound) return true;
  }
  return false;
}

/** The new arc joins `first` to `middle + 1`: looks for where the second stretch ends. */
function asFirstArc(
  work: WorkingOrder,
  first: number,
  middle: number,
  won: number,
  toLookAt: ToLookAt,
): boolean {
  const { order, problem } = work;
  let limit = problem.size - 1;
  for (let at = first + 1; at <= middle; at += 1) {
    limit = Math.min(limit, work.firstFollower(at, middle));
    if (limit === middle + 1) return false;
  }
  const head = i32(order, first + 1);
  const tail = i32(order, middle);
  const saved = won + work.arc(tail, i32(order, middle + 1));
  for (let last = middle + 1; last < limit; last += 1) {
    const end = i32(order, last);
    const next = i32(order, last + 1);
    const gain = saved + work.arc(end, next) - work.arc(end, head) - work.arc(tail, next);
    if (gain > LEAST_GAIN) return swapped(work, first, middle, last, gain, toLookAt);
  }
  return false;
}

/** The new arc joins `middle` to `last + 1`: looks for where the first stretch begins. */
function asLastArc(
  work: WorkingOrder,
  middle: number,
  last: number,
  won: number,
  toLookAt: ToLookAt,
): boolean {
  const { order } = work;
  if (last <= middle) return false;
  const head = i32(order, middle + 1);
  const end = i32(order, last);
  const saved = won + work.arc(end, i32(order, last + 1));
  for (let first = middle - 1; first >= 0; first -= 1) {
    if (work.firstFollower(first + 1, middle) <= last) return false;
    const start = i32(order, first);
    const second = i32(order, first + 1);
    const gain = saved + work.arc(start, second) - work.arc(start, head) - work.arc(end, second);
    if (gain > LEAST_GAIN) return swapped(work, first, middle, last, gain, toLookAt);
  }
  return false;
}

/** The new arc joins `last` to `first + 1`: looks for where the first stretch ends. */
function asMiddleArc(
  work: WorkingOrder,
  first: number,
  last: number,
  won: number,
  toLookAt: ToLookAt,
): boolean {
  const { order } = work;
  const start = i32(order, first);
  const next = i32(order, last + 1);
  const saved = won + work.arc(start, i32(order, first + 1));
  // how far those reach who must follow one of the first stretch: none of them may be in the second
  let reach = -1;
  for (let middle = first + 1; middle < last; middle += 1) {
    reach = Math.max(reach, work.lastFollower(middle, last));
    if (reach > middle) continue;
    const tail = i32(order, middle);
    const head = i32(order, middle + 1);
    const gain = saved + work.arc(tail, head) - work.arc(start, head) - work.arc(tail, next);
    if (gain > LEAST_GAIN) return swapped(work, first, middle, last, gain, toLookAt);
  }
  return false;
}

function swapped(
  work: WorkingOrder,
  first: number,
  middle: number,
  last: number,
  gain: number,
  toLookAt: ToLookAt,
): boolean {
  // what stands in a moved stretch has others after it than before, with which it can be exchanged
  for (let at = first; at <= last + 1; at += 1) toLookAt.add(i32(work.order, at));
  work.swap(first + 1, middle, last, gain);
  return true;
}

/** Looks for a turn in which `node` gets a cheaper follower. */
function turnAfter(work: WorkingOrder, node: number, toLookAt: ToLookAt): boolean {
  const { order, place, problem } = work;
  const { size, near } = problem;
  const at = i32(place, node);
  if (at >= size - 2) return false;
  const second = i32(order, at + 1);
  const now = work.arc(node, second);
  for (let rank = 0; rank < size - 1; rank += 1) {
    const other = i32(near, node * (size - 1) + rank);
    const won = now - work.arc(node, other);
    if (won <= LEAST_GAIN) return false;
    const there = i32(place, other);
    if (there <= at + 1 || there === size - 1) continue;
    const next = i32(order, there + 1);
    const gain = won + work.arc(other, next) - work.arc(second, next);
    if (gain > LEAST_GAIN && mayTurn(work, at + 1, there)) return turned(work, at + 1, there, gain, toLookAt);
  }
  return false;
}

/** Looks for a turn in which `node` gets a cheaper one before it. */
function turnBefore(work: WorkingOrder, node: number, toLookAt: ToLookAt): boolean {
  const { order, place, problem } = work;
  const { size, near } = problem;
  const at = i32(place, node);
  if (at < 2) return false;
  const tail = i32(order, at - 1);
  const now = work.arc(tail, node);
  for (let rank = 0; rank < size - 1; rank += 1) {
    const other = i32(near, node * (size - 1) + rank);
    // ranked by the way out, which costs the same as the way in, but for the ends
    if (work.arc(node, other) >= now && at !== size - 1) return false;
    const there = i32(place, other);
    if (there === 0 || there >= at - 1) continue;
    const start = i32(order, there - 1);
    const gain = now - work.arc(other, node) + work.arc(start, other) - work.arc(start, tail);
    if (gain > LEAST_GAIN && mayTurn(work, there, at - 1)) return turned(work, there, at - 1, gain, toLookAt);
  }
  return false;
}

function mayTurn(work: WorkingOrder, first: number, last: number): boolean {
  for (let at = first; at < last; at += 1) if (work.firstFollower(at, at) <= last) return false;
  return true;
}

function turned(work: WorkingOrder, first: number, last: number, gain: number, toLookAt: ToLookAt): boolean {
  for (const at of [first - 1, first, last, last + 1]) toLookAt.add(i32(work.order, at));
  work.reverse(first, last, gain);
  return true;
}
