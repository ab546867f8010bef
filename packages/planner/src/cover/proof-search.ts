import { i32 } from "../cells.ts";
import { type CoverProblem, coverCost, type ReadyCover, readyCover } from "./cover-problem.ts";
import { LeastFirst } from "./least-first.ts";
import { neededTasks } from "./needed-tasks.ts";
import { type TreeBound, treeBound } from "./tree-bound.ts";
import { WalkStates, wordsFor } from "./walk-states.ts";

const ASK_EVERY = 256;
const ROUNDING = 1e-9;

/**
 * Looks at the states of a walk (where one stands, what is done) in the order of what they must cost at least. The least
 * of those not yet looked at is a bound at any moment, so that it can end early and still tell no more than it knows.
 */
export class ProofSearch {
  /** No way of doing everything costs less. */
  bound: number;
  /** The best known row of stances and its cost. */
  row: readonly number[];
  best: number;
  /** How many states were looked at. */
  looked = 0;
  private readonly problem: ReadyCover;
  private readonly target_1: number;
  private readonly bounds: TreeBound;
  private readonly open = new LeastFirst<number>();
  private readonly states: WalkStates;
  private readonly words: number;
  private readonly doing: Doing;
  /** The least that a state costs which needs no look: it is good enough already. */
  private leastCut = Number.POSITIVE_INFINITY;

  constructor(given: CoverProblem, row: readonly number[], target_1: number) {
    this.problem = neededTasks(readyCover(given));
    this.row = row;
    this.best = coverCost(given, row);
    this.target_1 = target_1;
    this.bounds = treeBound(this.problem, this.best);
    this.bound = Math.min(this.bounds.root, this.best);
    this.words = wordsFor(this.problem.tasks.length);
    this.states = new WalkStates(this.words);
    this.doing = doingAt(this.problem, this.words);
    this.add(0, 0, -1, this.bound);
  }

  /** Whether the bound is as near to the best as it is to be. */
  get isDone(): boolean {
    return this.bound >= this.best * (1 - this.target_1) - ROUNDING;
  }

  /** A row found elsewhere, where it is better. */
  learn(row: readonly number[], cost: number): void {
    if (cost < this.best) [this.row, this.best] = [row, cost];
  }

  /** Goes on until it is done, or has looked at so many states in all, or is told to stop. */
  goOn(states: number, shouldStop: ((bound: number, best: number) => boolean) | undefined): void {
    const { open, doing, bounds } = this;
    while (!this.isDone) {
      const next = open.take();
      if (next === undefined) {
        this.bound = Math.min(this.best, this.leastCut);
        return;
      }
      const state = next.item;
      if (this.states.isPassed(state)) continue;
      const paid = this.states.paidTo(state);
      for (let word = 0; word < this.words; word += 1) doing.before[word] = this.states.wordOf(state, word);
      const left = bounds.leftOf(doing.before);
      const closer = paid + bounds.closer(this.states.stanceOf(state), left, this.best - paid);
      if (closer > next.key + ROUNDING) {
        open.add(closer, state);
        continue;
      }
      this.bound = Math.min(Math.max(this.bound, next.key), this.best, this.leastCut);
      const isAsked = this.looked % ASK_EVERY === 0;
      if (this.isDone || this.looked >= states || (isAsked && shouldStop?.(this.bound, this.best) === true)) {
        open.add(next.key, state);
        return;
      }
      this.looked += 1;
      this.lookAt(state, next.key);
    }
  }

  private lookAt(state: number, atLeast: number): void {
    const { stances, cost } = this.problem;
    const [from, paid] = [this.states.stanceOf(state), this.states.paidTo(state)];
    for (let stance = 0; stance < stances; stance += 1) {
      const did = this.doing.at(stance);
      if (did === "nothing") continue;
      const arrived = paid + (cost[from * stances + stance] ?? 0);
      if (did === "some") {
        this.add(stance, arrived, state, atLeast);
        continue;
      }
      const ended = arrived + (cost[stance * stances + stances - 1] ?? 0);
      if (ended < this.best - ROUNDING) this.learn([...this.states.rowTo(state), stance], ended);
    }
  }

  private add(stance: number, paid: number, before: number, atLeast: number): void {
    const { bounds, doing } = this;
    const total = Math.max(atLeast, paid + bounds.from(stance, bounds.leftOf(doing.done)));
    if (total >= this.best * (1 - this.target_1) - ROUNDING) {
      this.leastCut = Math.min(this.leastCut, total);
      return;
    }
    const state = this.states.add(stance, doing.done, paid, before);
    if (state !== undefined) this.open.add(total, state);
  }
}

/** What is done by coming to a stance: from the tasks in `before` to those in `done`, a bit for each. */
interface Doing {
  readonly before: Int32Array;
  readonly done: Int32Array;
  at(stance: number): "nothing" | "some" | "all";
}

function doingAt({ tasksAt, tasks }: ReadyCover, words: number): Doing {
  const [before, done, all] = [new Int32Array(words), new Int32Array(words), new Int32Array(words)];
  const set = (into: Int32Array, task: number): void => {
    into[task >> 5] = i32(into, task >> 5) | (1 << (task & 31));
  };
  const has = (from: Int32Array, task: number): boolean => ((i32(from, task >> 5) >>> (task & 31)) & 1) === 1;
  for (const task of tasks.keys()) set(all, task);
  return {
    before,
    done,
    at(stance) {
      done.set(before);
      let did: "nothing" | "some" = "nothing";
      for (const task of tasksAt[stance] ?? []) {
        if (has(done, task) || !(tasks[task]?.after ?? []).every((one) => has(done, one))) continue;
        set(done, task);
        did = "some";
      }
      return did === "some" && done.every((word, i) => word === all[i]) ? "all" : did;
    },
  };
}
