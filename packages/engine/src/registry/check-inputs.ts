import { InputError } from "../input-error.ts";
import type { InputSpec } from "./quantity.ts";
import { rangeText, valueText } from "./range-text.ts";

/** What a conversion from another unit may leave over at the end of a range: 140 °F comes to a hair over 333.15 K. */
const ROUNDING = 4 * Number.EPSILON;

/** The value, on the end of its range where only rounding puts it beyond; undefined outside. */
function withinRange(value: number, [low, high]: readonly [number, number]): number | undefined {
  if (value >= low && value <= high) return value;
  if (value < low) return value >= low - ROUNDING * Math.abs(low) ? low : undefined;
  return value <= high + ROUNDING * Math.abs(high) ? high : undefined;
}

/** Refuses a value that is missing, not a finite number, or outside the input's range. */
function checkInput(quantity: string, spec: InputSpec, value: unknown): number {
  const { name, unit, range } = spec;
  if (value === undefined) {
    throw new InputError("missing", name, {
      quantity,
      range,
      expected: `${spec.meaning}, ${rangeText(range, unit)}`,
      received: "nothing",
    });
  }
  if (typeof value !== "number" || !Number.isFinite(value)) {
    throw new InputError("not-a-number", name, {
      quantity,
      range,
      expected: `a number, ${rangeText(range, unit)}`,
      received: String(value),
    });
  }
  const within = withinRange(value, range);
  if (within === undefined) {
    throw new InputError("out-of-range", name, {
      quantity,
      value,
      range,
      expected: rangeText(range, unit),
      received: valueText(value, unit),
      remedy: "check the figure and its unit; nothing is computed outside the range",
    });
  }
  return within;
}

/**
 * Refuses inputs of which a name is unknown or a value will not do.
 *
 * @returns the inputs to compute with, by name
 * @throws {InputError} `missing`, `unknown-input`, `not-a-number`, `out-of-range`
 */
export function checkInputs(
  quantity: string,
  specs: readonly InputSpec[],
  inputs: object,
): Readonly<Record<string, number>> {
  const values = new Map<string, unknown>(Object.entries(inputs));
  for (const name of values.keys()) {
    if (specs.some((spec) => spec.name === name)) continue;
    throw new InputError("unknown-input", name, {
      quantity,
      expected: `one of ${specs.map((spec) => spec.name).join(", ")}`,
      received: name,
    });
  }
  return Object.fromEntries(
    specs.map((spec) => [spec.name, checkInput(quantity, spec, values.get(spec.name))]),
  );
}
