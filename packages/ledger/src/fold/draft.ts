import type { KnownEvent, LedgerEvent } from "../event.ts";
import type { AircraftState, CheckAnswer, CheckHistory, Origin } from "../state.ts";

/*
 * A state while it is being folded. A full fold of ten years is hundreds of thousands of events, so events change the
 * draft's containers in place; a container that belongs to an earlier state is copied once, before its first change.
 */

type Mutable<T> =
  T extends ReadonlyMap<infer K, infer V>
    ? Map<K, V>
    : T extends ReadonlySet<infer V>
      ? Set<V>
      : T extends readonly (infer V)[]
        ? V[]
        : T;

type Fields = { -readonly [K in keyof AircraftState]: Mutable<AircraftState[K]> };
type ListField = { [K in keyof Fields]: Fields[K] extends unknown[] ? K : never }[keyof Fields];
type MapField = { [K in keyof Fields]: Fields[K] extends Map<infer _K, infer _V> ? K : never }[keyof Fields];

type ListMapField = "timedDone" | "counters";
type ListOf<K extends ListMapField> =
  AircraftState[K] extends ReadonlyMap<string, readonly (infer V)[]> ? V : never;

export interface History {
  answers: CheckAnswer[];
  readings: CheckHistory["readings"][number][];
}

export class Draft {
  readonly state: Fields;
  /** Containers that this draft made, and therefore may change. */
  readonly #own = new Set<object>();

  constructor(from: AircraftState) {
    // Read as mutable only here: `list`, `map`, `history` and `answersOf` copy what the draft does not own.
    this.state = { ...from } as Fields;
  }

  list<K extends ListField>(field: K): Fields[K] {
    const list = this.state[field];
    if (this.#own.has(list)) return list;
    const copy = list.slice() as Fields[K]; // a slice of a list is a list of the same
    this.#own.add(copy);
    this.state[field] = copy;
    return copy;
  }

  map<K extends MapField>(field: K): Fields[K] {
    const map = this.state[field];
    if (this.#own.has(map)) return map;
    const copy = new Map(map as Map<unknown, unknown>) as Fields[K]; // a copy of a map is a map of the same
    this.#own.add(copy);
    this.state[field] = copy;
    return copy;
  }

  /** The list that a map holds by this key, as one that may be changed. */
  listIn<K extends ListMapField>(field: K, key: string): ListOf<K>[] {
    const found = this.state[field].get(key);
    if (found !== undefined && this.#own.has(found)) return found as ListOf<K>[]; // owned, hence made below
    const copy = (found?.slice() ?? []) as ListOf<K>[]; // a slice of a list is a list of the same
    this.#own.add(copy);
    (this.map(field) as Map<string, readonly ListOf<K>[]>).set(key, copy); // the map of this field
    return copy;
  }

  history(check: string): History {
    const found = this.state.checks.get(check);
    if (found !== undefined && this.#own.has(found)) return found as History; // owned, hence made below
    const history: History = {
      answers: found?.answers.slice() ?? [],
      readings: found?.readings.slice() ?? [],
    };
    this.#own.add(history);
    this.map("checks").set(check, history);
    return history;
  }

  answersOf(walk: string): CheckAnswer[] {
    const found = this.state.answersByWalk.get(walk);
    if (found !== undefined && this.#own.has(found)) return found as CheckAnswer[]; // owned, hence made below
    const answers = found?.slice() ?? [];
    this.#own.add(answers);
    this.map("answersByWalk").set(walk, answers);
    return answers;
  }
}

export const originOf = (event: LedgerEvent): Origin => ({
  event: event.id,
  device: event.device,
  deviceSeq: event.deviceSeq,
  author: event.author,
  hlc: event.hlc,
  recordedAt: event.recordedAt,
});

/** When something that was said of a walk was seen: while it was walked, also when that was on paper. */
export function seenAt(draft: Draft, walk: string | undefined, event: KnownEvent): string {
  const onPaper = walk === undefined ? undefined : draft.state.walks.get(walk)?.onPaper;
  return onPaper === undefined ? event.recordedAt : onPaper.begun;
}

/** A copy of `part` without the fields that are `undefined`. */
export function present<T extends object>(part: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  const copy: Partial<T> = {};
  for (const key of Object.keys(part) as (keyof T)[]) {
    // the keys of a T
    if (part[key] !== undefined) copy[key] = part[key];
  }
  return copy as { [K in keyof T]: Exclude<T[K], undefined> }; // what is left has no undefined
}
