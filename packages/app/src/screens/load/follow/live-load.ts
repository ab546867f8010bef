import type { Flight, LoadFigures } from "@witnessmark/assess";
import { type RefCallback, useLayoutEffect, useRef, useState, useSyncExternalStore } from "react";
import type { Amount } from "./amount.ts";
import type { LoadAnswer } from "./envelope-words.ts";

/** A load, and everything that is worked out from it in the frame in which a finger moves. */
export interface LoadStep {
  readonly flight: Flight;
  readonly figures: LoadFigures;
  readonly answer: LoadAnswer;
  /** What is in hand, as it stands at this step. */
  readonly amount: Amount;
}

/**
 * Writes the figures of a step into what is drawn.
 *
 * @returns false where that needs more than other words and other places, so that the screen is made anew
 */
export type WriteStep = (step: LoadStep) => boolean;

/**
 * When a step is written: the figures at once; what says the same in another place, such as a tank on the drawing, takes
 * turns, one a step, so that no frame has to carry all of it.
 */
export type Turn = "chart" | "drawing" | "words";

const TURNS: readonly Turn[] = ["chart", "drawing", "words"];

/**
 * The load under a moving finger, ahead of what the screen was last made of. Making the screen anew costs several
 * frames on a slow tablet; writing the figures that changed costs a part of one. So a step is written straight into
 * what is drawn, and the screen is made of it when the finger rests.
 */
export interface LiveLoad {
  /** `null` while the screen is as it was made. */
  ahead(): LoadStep | null;
  /** @returns whether all that follows could follow */
  step(step: LoadStep): boolean;
  /** The screen is made of this one now: what was written over it is put as it was made. */
  settle(made: LoadStep | null): void;
  /** What is written at each step, or in its turn. @returns takes it away again */
  follow(write: WriteStep, turn?: Turn): () => void;
  /** What is asked again at each step. @returns takes it away again */
  subscribe(listener: () => void): () => void;
}

/** @param nextFrame calls back before the next frame is painted, after a movement of the finger has been heard */
export function liveLoad(
  nextFrame: (call: () => void) => void = (call) => void requestAnimationFrame(call),
): LiveLoad {
  let ahead: LoadStep | null = null;
  let steps = 0;
  let turn = 0;
  let late: ReadonlySet<Turn> = new Set();
  let waits = false;
  const writers = new Map<WriteStep, Turn | undefined>();
  const listeners = new Set<() => void>();
  const write = (step: LoadStep, whose: (turn: Turn | undefined) => boolean): boolean => {
    let all = true;
    for (const [writer, its] of writers) if (whose(its) && !writer(step)) all = false;
    return all;
  };
  const tell = () => {
    for (const listener of listeners) listener();
  };
  /**
   * What has not had its turn yet is written in the first frame in which no finger moves. The frame that a movement is
   * heard in calls back too: it is no such frame, and would have to carry all of it.
   */
  const catchUp = () => {
    if (waits) return;
    waits = true;
    let seen: number | null = null;
    const look = () =>
      nextFrame(() => {
        if (ahead !== null && late.size > 0 && steps !== seen) {
          seen = steps;
          return look();
        }
        waits = false;
        if (ahead === null) return;
        const theirs = late;
        late = new Set();
        write(ahead, (its) => its !== undefined && theirs.has(its));
      });
    look();
  };
  return {
    ahead: () => ahead,
    step(step) {
      ahead = step;
      steps += 1;
      const now = TURNS[turn % TURNS.length];
      turn += 1;
      late = new Set(TURNS.filter((one) => one !== now));
      const all = write(step, (its) => its === undefined || its === now);
      tell();
      catchUp();
      return all;
    },
    settle(made) {
      if (ahead === null) return;
      ahead = null;
      late = new Set();
      if (made !== null) write(made, () => true);
      tell();
    },
    follow(writer, its) {
      writers.set(writer, its);
      return () => void writers.delete(writer);
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/** Writes each step of a drag into what this component has drawn, and again after it was drawn anew meanwhile. */
export function useFollowing(live: LiveLoad, write: WriteStep, turn?: Turn): void {
  const latest = useRef(write);
  latest.current = write;
  useLayoutEffect(() => live.follow((step) => latest.current(step), turn), [live, turn]);
  useLayoutEffect(() => {
    const step = live.ahead();
    if (step !== null) latest.current(step);
  });
}

/** What a step comes to for this component: it is made anew in the same frame, and only when that changes. */
export function useLive<T extends string>(live: LiveLoad, made: T, ofStep: (step: LoadStep) => T): T {
  return useSyncExternalStore(live.subscribe, () => {
    const step = live.ahead();
    return step === null ? made : ofStep(step);
  });
}

/** The moments that there are figures of: which they are depends on what is aboard. */
const momentsOf = ({ states }: LoadFigures): string => states.map(({ at }) => at).join();

/** The figures a component is to draw: those of a step where another moment has come or gone with it. */
export function useMoments(live: LiveLoad, made: LoadFigures): LoadFigures {
  const moments = useLive(live, momentsOf(made), ({ figures }) => momentsOf(figures));
  const step = live.ahead();
  return step === null || moments === momentsOf(made) ? made : step.figures;
}

/** Elements by name, for what is written into them. */
export interface Parts {
  ref(name: string): RefCallback<Element>;
  /** Another text in it; a text is all that it holds. */
  say(name: string, text: string): void;
  /** Another value of one of its attributes. */
  put(name: string, attribute: string, value: string): void;
}

/** The same for the life of the component. */
export function useParts(): Parts {
  return useState(newParts)[0];
}

function newParts(): Parts {
  const found = new Map<string, Element>();
  const refs = new Map<string, RefCallback<Element>>();
  const refOf = (name: string): RefCallback<Element> => {
    const known = refs.get(name);
    if (known !== undefined) return known;
    const ref: RefCallback<Element> = (element) => {
      if (element === null) found.delete(name);
      else found.set(name, element);
    };
    refs.set(name, ref);
    return ref;
  };
  return {
    ref: refOf,
    say(name, text) {
      const element = found.get(name);
      if (element === undefined) return;
      const { firstChild } = element;
      if (!(firstChild instanceof Text)) element.textContent = text;
      else if (firstChild.data !== text) firstChild.data = text;
    },
    put(name, attribute, value) {
      const element = found.get(name);
      if (element !== undefined && element.getAttribute(attribute) !== value)
        element.setAttribute(attribute, value);
    },
  };
}
