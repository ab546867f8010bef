import type { Flight } from "@witnessmark/assess";
import { useRef } from "react";
import type { LoadStep } from "./live-load.ts";

/** The steps that a finger on a rule can come to from one load, each worked out once: a drag comes by many of them again. */
export interface Steps {
  /** `null` where what is in hand is not in the book. */
  at(value: number): LoadStep | null;
  /** Whether this flight is that of a step: what else is aboard is the same then, and so the steps from it are. */
  has(flight: Flight): boolean;
}

export function stepsFrom(workOut: (value: number) => LoadStep | null): Steps {
  const known = new Map<number, LoadStep | null>();
  return {
    at(value) {
      const found = known.get(value);
      if (found !== undefined) return found;
      const made = workOut(value);
      known.set(value, made);
      return made;
    },
    has: (flight) => [...known.values()].some((step) => step?.flight === flight),
  };
}

/** The steps from a flight as it is in hand, kept as long as nothing but what is on the rule was changed. */
export function useSteps(given: readonly unknown[], flight: Flight, make: () => Steps): Steps {
  const last = useRef<{
    readonly given: readonly unknown[];
    readonly flight: Flight;
    readonly steps: Steps;
  } | null>(null);
  const before = last.current;
  const isKept =
    before !== null &&
    given.every((one, index) => one === before.given[index]) &&
    (flight === before.flight || before.steps.has(flight));
  const steps = isKept ? before.steps : make();
  last.current = { given, flight, steps };
  return steps;
}

/** So far to either side it is worked out ahead; a rule in pounds is longer. */
const FAR = 100;

/** The places that a rule has, those next to where it stands first. */
export function placesAround(value: number, step: number, max: number): readonly number[] {
  const places: number[] = [];
  const here = Math.round(value / step);
  const last = Math.floor(max / step + 1e-9);
  for (let away = 0; away < FAR && (here - away >= 0 || here + away <= last); away += 1) {
    if (here + away <= last) places.push(here + away);
    if (away > 0 && here - away >= 0) places.push(here - away);
  }
  return places.map((place) => Number((place * step).toPrecision(12)));
}

/** What the first piece of work is taken to need, until one has been seen. */
const FIRST_ms = 4;

/**
 * Does some work for each of these while the page has nothing else to do, and never more at once than there is time
 * for. Where a browser does not tell of such times, nothing is done ahead.
 *
 * @returns ends it
 */
export function whenIdle<T>(all: readonly T[], work: (one: T) => void): () => void {
  if (typeof requestIdleCallback !== "function") return () => undefined;
  let next = 0;
  let slowest_ms = FIRST_ms;
  const some = (deadline: IdleDeadline) => {
    while (next < all.length && deadline.timeRemaining() > slowest_ms) {
      const [one] = all.slice(next, next + 1);
      next += 1;
      if (one === undefined) continue;
      const from_ms = deadline.timeRemaining();
      work(one);
      slowest_ms = Math.max(slowest_ms * SETTLES_1, from_ms - deadline.timeRemaining());
    }
    if (next < all.length) handle = requestIdleCallback(some);
  };
  let handle = requestIdleCallback(some);
  return () => cancelIdleCallback(handle);
}

/** What was slow once, such as the first, soon counts no more. */
const SETTLES_1 = 0.9;
