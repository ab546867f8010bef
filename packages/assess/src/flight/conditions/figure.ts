import { InputError } from "@witnessmark/engine";

/**
 * The parts of a plan or a book on which many answers rest. One that is missing is told once, and what only waits for
 * it is not told again.
 */
export type Root =
  | "route"
  | "rules"
  | "time"
  | "field"
  | "runway"
  | "surface"
  | "report"
  | "forecast"
  | "performance";

/** What is not known, as a person would ask for it: "the wind at ZZQN". */
export interface Missing {
  readonly what: string;
  readonly root?: Root;
}

/** Where a figure comes from. */
export interface Origin {
  readonly kind: "METAR" | "TAF" | "typed";
  /** Observed, issued or read at: milliseconds since 1970 UTC. */
  readonly at_ms: number;
  /** The words of the report that say so. */
  readonly words?: string;
  /** The group of the report that they stand in, where it is one that comes and goes: `TEMPO 2613/2616`. */
  readonly group?: string;
}

/**
 * A value with where it comes from. Known when there is a value and nothing is missing; a value of which something is
 * missing is the worst that is known so far, and may stop a flight, never clear it.
 */
export interface Figure<T> {
  readonly value?: T;
  readonly from: readonly Origin[];
  readonly missing: readonly Missing[];
  /** When what it comes from is too old to count, milliseconds since 1970 UTC. */
  readonly holdsUntil_ms?: number;
  /** Of several that speak, the one whose words made the value. */
  readonly saidBy?: Origin;
}

export const figureOf = <T>(value: T, from: readonly Origin[] = []): Figure<T> => ({
  value,
  from,
  missing: [],
});

export const lacking = (...missing: readonly Missing[]): Figure<never> => ({ from: [], missing });

/** Whether a figure may clear anything. */
export const isSettled = <T>(figure: Figure<T>): figure is Figure<T> & { readonly value: T } =>
  figure.value !== undefined && figure.missing.length === 0;

const earliest_ms = (figures: readonly Figure<unknown>[]): number | undefined => {
  let earliest: number | undefined;
  for (const { holdsUntil_ms } of figures) {
    if (holdsUntil_ms !== undefined && !(holdsUntil_ms >= (earliest ?? Number.POSITIVE_INFINITY)))
      earliest = holdsUntil_ms;
  }
  return earliest;
};

/** Each once, by its words. */
export const onceMissing = (all: readonly Missing[]): readonly Missing[] =>
  all.length < 2 ? all : [...new Map(all.map((missing) => [missing.what, missing])).values()];

const isSameOrigin = (one: Origin, other: Origin): boolean =>
  one.at_ms === other.at_ms && one.kind === other.kind && (one.words ?? "") === (other.words ?? "");

/** Each once; the list itself where that is so already. */
function onceOrigin(all: readonly Origin[]): readonly Origin[] {
  const isFirst = (origin: Origin, at: number): boolean =>
    all.findIndex((other) => isSameOrigin(other, origin)) === at;
  return all.every(isFirst) ? all : all.filter(isFirst);
}

/** What several lists have in them; the list itself where only one has anything. */
const joined = <T>(one: readonly T[], other: readonly T[]): readonly T[] =>
  other.length === 0 ? one : one.length === 0 ? other : [...one, ...other];

/** What several figures have in common: all that is missing of them, and the earliest end. */
export function restOf(figures: readonly Figure<unknown>[]): Omit<Figure<never>, "value"> {
  let from: readonly Origin[] = [];
  let missing: readonly Missing[] = [];
  for (const figure of figures) {
    from = joined(from, figure.from);
    missing = joined(missing, figure.missing);
  }
  const rest = { from: onceOrigin(from), missing: onceMissing(missing) };
  const holdsUntil_ms = earliest_ms(figures);
  return holdsUntil_ms === undefined ? rest : { ...rest, holdsUntil_ms };
}

/** A refusal of the engine is something missing; any other error is a defect and goes on. */
export function attempt<T>(compute: () => T, what: string): Figure<T> {
  try {
    return figureOf(compute());
  } catch (error) {
    if (error instanceof InputError) return lacking({ what: `${what} (${error.message})` });
    throw error;
  }
}

/** A figure worked out from another: what the engine refuses is missing. */
export function derived<A, B>(given: Figure<A>, what: string, compute: (value: A) => B): Figure<B> {
  const rest = restOf([given]);
  if (given.value === undefined) return rest;
  const { value } = given;
  const found = attempt(() => compute(value), what);
  return {
    ...rest,
    ...(found.value === undefined ? {} : { value: found.value }),
    missing: onceMissing([...rest.missing, ...found.missing]),
  };
}

/** The same from two. */
export function derivedFromTwo<A, B, C>(
  one: Figure<A>,
  other: Figure<B>,
  what: string,
  compute: (a: A, b: B) => C,
): Figure<C> {
  const rest = restOf([one, other]);
  if (one.value === undefined || other.value === undefined) return rest;
  const pair: Figure<readonly [A, B]> = { ...rest, value: [one.value, other.value] };
  return derived(pair, what, ([a, b]) => compute(a, b));
}
