import type { MissingInput } from "./ruling.ts";

/** One thing that has to be so: it is, it is not, or it is not known. */
export interface Condition extends MissingInput {
  readonly holds: boolean | undefined;
  /** The line of reasoning that it leaves: "ceiling 2500 ft, at least 2000 ft asked". */
  readonly step: string;
}

export type Together =
  | { readonly all: "hold" }
  | { readonly all: "fail"; readonly failing: readonly Condition[] }
  | { readonly all: "unknown"; readonly missing: readonly [MissingInput, ...MissingInput[]] };

/**
 * Whether all conditions hold. One that fails settles it, whatever else is not known; otherwise one that is not known
 * leaves it open.
 */
export function together(conditions: readonly Condition[]): Together {
  const failing = conditions.filter(({ holds }) => holds === false);
  if (failing.length > 0) return { all: "fail", failing };
  const [first, ...more] = conditions
    .filter(({ holds }) => holds === undefined)
    .map(({ input, what }) => ({ input, what }));
  return first === undefined ? { all: "hold" } : { all: "unknown", missing: [first, ...more] };
}

const WORDS = { true: "holds", false: "does not hold", undefined: "not known" } as const;

export const stepsOf = (conditions: readonly Condition[]): readonly string[] =>
  conditions.map(({ step, holds }) => `${step}: ${WORDS[`${holds}`]}.`);
