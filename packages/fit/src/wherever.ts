import { type Breach, breachesOf, type LimitFamily } from "./breaches.ts";
import type { FitInput } from "./fit-input.ts";

/** Limits that do not ask where things are put. */
export const WHEREVER: ReadonlySet<LimitFamily> = new Set<LimitFamily>([
  "ramp",
  "take-off",
  "landing",
  "zero-fuel",
  "minimum-flight",
  "imbalance",
  "fuel",
  "envelope-top",
  "envelope-bottom",
]);

/** What is broken wherever things are put. */
export const wherever = (input: FitInput): readonly Breach[] =>
  breachesOf(input).filter(({ family }) => WHEREVER.has(family));
