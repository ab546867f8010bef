import { InputError } from "../input-error.ts";
import type { InputSpec, InputValue } from "./quantity.ts";
import { rangeText, valueText } from "./range-text.ts";

/** What a conversion from another unit may leave over at the end of a range: 140 °F comes to a hair over 333.15 K. */
const ROUNDING = 4 * Number.EPSILON;

/** The value, on the end of its range where only rounding puts it beyond; undefined outside. */
function withinRange(value: number, [low, high]: readonly [number, number]): number | undefined {
  if (value >= low && value <= high) return value;
  if (value < low) return value >= low - ROUNDING * Math.abs(low) ? low : undefined;
  return value <= high + ROUNDING * Math.abs(high) ? high : undefined;
}

/** Where a value stands: in a list, with its place, counted from one. */
const atPlace = (place: number | undefined): string => (place === undefined ? "" : ` as value ${place}`);

/** Refuses a value that is not a finite number, or outside the input's range. */
function checkValue(quantity: string, spec: InputSpec, value: unknown, place?: number): number {
  const { name, unit, range } = spec;
  if (typeof value !== "number" || !Number.isFinite(value)) {
    throw new InputError("not-a-number", name, {
      quantity,
      range,
      expected: `a number, ${rangeText(range, unit)}`,
      received: `${Array.isArray(value) ? `a list of ${value.length}` : String(value)}${atPlace(place)}`,
    });
  }
  const within = withinRange(value, range);
  if (within === undefined) {
    throw new InputError("out-of-range", name, {
      quantity,
      value,
      range,
      expected: rangeText(range, unit),
      received: `${valueText(value, unit)}${atPlace(place)}`,
      remedy: "check the figure and its unit; nothing is computed outside the range",
    });
  }
  return within;
}

/** Refuses what is missing, and what is a list where one number is asked for or the other way about. */
function checkInput(quantity: string, spec: InputSpec, value: unknown): InputValue {
  const { name, unit, range, many } = spec;
  if (value === undefined || (many && Array.isArray(value) && value.length === 0)) {
    throw new InputError("missing", name, {
      quantity,
      range,
      expected: `${spec.meaning}, ${many ? "at least one value, each " : ""}${rangeText(range, unit)}`,
      received: value === undefined ? "nothing" : "an empty list",
    });
  }
  if (!many) return checkValue(quantity, spec, value);
  if (!Array.isArray(value)) {
    throw new InputError("not-a-number", name, {
      quantity,
      range,
      expected: `a list of numbers, each ${rangeText(range, unit)}`,
      received: String(value),
    });
  }
  return Array.from(value, (one: unknown, index) => checkValue(quantity, spec, one, index + 1)); // a hole is undefined
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
): Readonly<Record<string, InputValue>> {
  const given: Readonly<Record<string, unknown>> = { ...inputs };
  for (const name of Object.keys(given)) {
    if (specs.some((spec) => spec.name === name)) continue;
    throw new InputError("unknown-input", name, {
      quantity,
      expected: `one of ${specs.map((spec) => spec.name).join(", ")}`,
      received: name,
    });
  }
  const checked: Record<string, InputValue> = {};
  for (const spec of specs) {
    const { name } = spec;
    checked[name] = checkInput(quantity, spec, Object.hasOwn(given, name) ? given[name] : undefined);
  }
  return checked;
}
