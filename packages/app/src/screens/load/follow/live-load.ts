import type { Flight, LoadFigures } from "@witnessmark/assess";
import { useLayoutEffect, useRef, useState, useSyncExternalStore } from "react";
import type { Amount } from "../amount.ts";
import type { LoadAnswer } from "../envelope-words.ts";
import { rowKeys } from "../phase-rows.ts";

/** A load, and everything that is worked out from it in the frame in which a finger moves. */
export interface LoadStep {
  readonly flight: Flight;
  readonly figures: LoadFigures;
  readonly answer: LoadAnswer;
  /** What is in hand, as it stands at this step. */
  readonly amount: Amount;
}

/** Something drawn that follows a finger. */
export interface Follower {
  /** Works out what a step comes to here, and keeps it: it is written without more work then. */
  prepare(step: LoadStep): void;
  /**
   * Writes a step into what is drawn.
   *
   * @returns false where that needs more than other words and other places, so that the screen is made anew
   */
  write(step: LoadStep): boolean;
}

const TURNS = ["margins", "drawing", "names", "words"] as const;

/**
 * When a step is written: the figures at once; what says the same in another place, such as a tank on the drawing, takes
 * turns, one a step, so that no frame has to carry all of it; and what lays out its whole surroundings when it changes,
 * when the finger rests.
 */
export type Turn = (typeof TURNS)[number] | "rest";

/**
 * The load under a moving finger, ahead of what the screen was last made of. Making the screen anew costs several
 * frames on a slow tablet; writing the figures that changed costs a part of one. So a step is written straight into
 * what is drawn, and the screen is made of it when the finger rests.
 */
export interface LiveLoad {
  /** `null` while the screen is as it was made. */
  ahead(): LoadStep | null;
  /** Works out what a step comes to everywhere, before a finger is there. */
  prepare(step: LoadStep): void;
  /** @returns whether all that follows could follow */
  step(step: LoadStep): boolean;
  /** The screen is made of this one now: what was written over it is put as it was made. */
  settle(made: LoadStep | null): void;
  /** What is written at each step, or in its turn. @returns takes it away again */
  follow(follower: Follower, turn?: Turn): () => void;
  /** What is asked again at each step. @returns takes it away again */
  subscribe(listener: () => void): () => void;
}

/** A finger that has not moved for so long rests: three frames and some. */
const REST_ms = 60;

const afterRest = (call: () => void): (() => void) => {
  const timer = setTimeout(call, REST_ms);
  return () => clearTimeout(timer);
};

/** @param later calls back after a rest, and gives what calls that off; asking for frames would cost something in each */
export function liveLoad(later: (call: () => void) => () => void = afterRest): LiveLoad {
  let ahead: LoadStep | null = null;
  let turn = 0;
  let late: ReadonlySet<Turn> = new Set();
  let callOff = () => {};
  const followers = new Map<Follower, Turn | undefined>();
  const listeners = new Set<() => void>();
  const write = (step: LoadStep, whose: (turn: Turn | undefined) => boolean): boolean => {
    let all = true;
    for (const [follower, its] of followers) if (whose(its) && !follower.write(step)) all = false;
    return all;
  };
  const tell = () => {
    for (const listener of listeners) listener();
  };
  /** What has not had its turn yet is written when the finger rests. */
  const catchUp = () => {
    if (ahead === null) return;
    const theirs = late;
    late = new Set();
    write(ahead, (its) => its !== undefined && theirs.has(its));
  };
  return {
    ahead: () => ahead,
    prepare(step) {
      for (const follower of followers.keys()) follower.prepare(step);
    },
    step(step) {
      ahead = step;
      const now = TURNS[turn % TURNS.length];
      turn += 1;
      late = new Set<Turn>(["rest", ...TURNS.filter((one) => one !== now)]);
      const all = write(step, (its) => its === undefined || its === now);
      tell();
      callOff();
      callOff = later(catchUp);
      return all;
    },
    settle(made) {
      if (ahead === null) return;
      ahead = null;
      late = new Set();
      callOff();
      if (made !== null) write(made, () => true);
      tell();
    },
    follow(follower, its) {
      followers.set(follower, its);
      return () => void followers.delete(follower);
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/**
 * Writes each step of a drag into what this component has drawn, and again after it was drawn anew meanwhile.
 *
 * @param of what a step comes to here, in the words and places that are written
 * @param write writes them; false where that does not do
 */
export function useFollowing<T>(
  live: LiveLoad,
  of: (step: LoadStep) => T,
  write: (now: T) => boolean,
  turn?: Turn,
): void {
  // another drawing may say the same step in other words: what was worked out for the last one is not kept
  const drawn = { of, write, known: new WeakMap<LoadStep, { readonly now: T }>() };
  const latest = useRef(drawn);
  latest.current = drawn;
  const [follower] = useState(() => followerOf(latest));
  useLayoutEffect(() => live.follow(follower, turn), [live, follower, turn]);
  useLayoutEffect(() => {
    const step = live.ahead();
    if (step !== null) follower.write(step);
  });
}

interface Drawn<T> {
  readonly of: (step: LoadStep) => T;
  readonly write: (now: T) => boolean;
  readonly known: WeakMap<LoadStep, { readonly now: T }>;
}

function followerOf<T>(latest: { readonly current: Drawn<T> }): Follower {
  const nowOf = (step: LoadStep): T => {
    const { of, known } = latest.current;
    const found = known.get(step);
    if (found !== undefined) return found.now;
    const now = of(step);
    known.set(step, { now });
    return now;
  };
  return { prepare: (step) => void nowOf(step), write: (step) => latest.current.write(nowOf(step)) };
}

/** What a step comes to for this component: it is made anew in the same frame, and only when that changes. */
export function useLive<T extends string>(live: LiveLoad, made: T, ofStep: (step: LoadStep) => T): T {
  return useSyncExternalStore(live.subscribe, () => {
    const step = live.ahead();
    return step === null ? made : ofStep(step);
  });
}

/** The moments that there are figures of, and the worst between them: which they are depends on what is aboard. */
const rowsOf = (figures: LoadFigures): string => rowKeys(figures).join();

/** The figures a component is to draw: those of a step where another moment has come, gone or changed its place with it. */
export function useRows(live: LiveLoad, made: LoadFigures): LoadFigures {
  const rows = useLive(live, rowsOf(made), ({ figures }) => rowsOf(figures));
  const step = live.ahead();
  return step === null || rows === rowsOf(made) ? made : step.figures;
}
