import type { RuledStep } from "./relief.ts";
import type { Citations } from "./ruling.ts";

/** A rule as its steps: allowed only when every one holds; a step that is not known permits nothing. */
export interface RuledSteps {
  readonly allowed: boolean;
  readonly steps: readonly RuledStep[];
  /** The rules of the steps that do not hold, each once. */
  readonly failing: readonly string[];
  readonly citations: Citations;
}

export const ruledSteps = (steps: readonly RuledStep[], citations: Citations): RuledSteps => ({
  allowed: steps.every(({ holds }) => holds === true),
  steps,
  failing: [...new Set(steps.flatMap(({ rule, holds }) => (holds === false ? [rule] : [])))],
  citations,
});

/** All of them are so; one that is not so settles it, whatever else is not known. */
export function every(...said: readonly (boolean | undefined)[]): boolean | undefined {
  if (said.includes(false)) return false;
  return said.includes(undefined) ? undefined : true;
}

/** One of them is so; one that is so settles it, whatever else is not known. */
export function any(...said: readonly (boolean | undefined)[]): boolean | undefined {
  if (said.includes(true)) return true;
  return said.includes(undefined) ? undefined : false;
}
