import { InputError } from "../input-error.ts";

/** A value this close to a step, as a share of the step, is on it: what floating point adds is not a reading. */
const ON_THE_STEP = 1e-9;

/**
 * The next step on the side that does not flatter: a distance needed goes up, a margin left goes down.
 *
 * @param value in any unit; `step` in the same, above zero
 * @returns a whole number of steps, never on the wrong side of `value` by more than a billionth of a step, or
 *   the rounding of the value itself
 * @throws {InputError} `not-a-number`, `out-of-range` (step)
 */
export function roundToSafeSide(value: number, step: number, direction: "up" | "down"): number {
  if (!Number.isFinite(value)) {
    throw new InputError("not-a-number", "value", { expected: "a finite number", received: String(value) });
  }
  if (!(step > 0 && Number.isFinite(step))) {
    throw new InputError("out-of-range", "step", { expected: "a step above zero", received: String(step) });
  }
  const steps = value / step;
  const nearest = Math.round(steps);
  const noise = Math.max(ON_THE_STEP, 4 * Number.EPSILON * Math.abs(steps));
  const whole =
    Math.abs(steps - nearest) <= noise ? nearest : direction === "up" ? Math.ceil(steps) : Math.floor(steps);
  const rounded = whole * step;
  // fifteen digits hold it as it is; zero without a sign, as the digits would have it
  if (Number.isInteger(rounded) && Math.abs(rounded) < 1e15) return rounded + 0;
  return Number(rounded.toPrecision(15)); // the last digits of 3 × 0.1 are noise
}
