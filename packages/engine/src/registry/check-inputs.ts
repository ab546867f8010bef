import { InputError } from "../input-error.ts";
import type { InputSpec } from "./quantity.ts";
import { rangeText, valueText } from "./range-text.ts";

/** Refuses a value that is missing, not a finite number, or outside the input's range. */
function checkInput(quantity: string, spec: InputSpec, value: unknown): void {
  const { name, unit, range } = spec;
  const [low, high] = range;
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
  if (value < low || value > high) {
    throw new InputError("out-of-range", name, {
      quantity,
      value,
      range,
      expected: rangeText(range, unit),
      received: valueText(value, unit),
      remedy: "check the figure and its unit; nothing is computed outside the range",
    });
  }
}

/**
 * Refuses inputs of which a name is unknown or a value will not do.
 *
 * @throws {InputError} `missing`, `unknown-input`, `not-a-number`, `out-of-range`
 */
export function checkInputs(quantity: string, specs: readonly InputSpec[], inputs: object): void {
  const values = new Map<string, unknown>(Object.entries(inputs));
  for (const name of values.keys()) {
    if (specs.some((spec) => spec.name === name)) continue;
    throw new InputError("unknown-input", name, {
      quantity,
      expected: `one of ${specs.map((spec) => spec.name).join(", ")}`,
      received: name,
    });
  }
  for (const spec of specs) checkInput(quantity, spec, values.get(spec.name));
}
