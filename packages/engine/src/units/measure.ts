import { InputError } from "../input-error.ts";
import { toSI } from "./convert.ts";
import { type Dimension, UNITS, type UnitId, unitFromText, unitsOf } from "./units.ts";

/** A value as it was written or read, its unit, and the same in SI. */
export interface Measure {
  readonly value: number;
  readonly unit: UnitId;
  readonly valueSI: number;
}

export const measure = (value: number, unit: UnitId): Measure => ({
  value,
  unit,
  valueSI: toSI(value, unit),
});

const NUMBER_THEN_UNIT = /^\s*([-+−]?\d+(?:[.,]\d+)?)\s*(.*?)\s*$/u;

/** `1,900`: nineteen hundred, or one and nine tenths. `0,125` is no thousand. */
const TWO_WAYS = /^[-+−]?[1-9]\d{0,2},\d{3}$/u;

/**
 * Reads `5.20 bar`, `−4 °C`, `12 US qt`: a number (point or comma), then a unit of the dimension asked for, or of one
 * of several.
 *
 * @throws {InputError} `not-a-number` (also one that can be read in two ways: `1,900 lb`), `missing` (no unit),
 *   `unknown-unit`, `wrong-unit`
 */
export function parseMeasure(
  text: string,
  dimension: Dimension | readonly [Dimension, ...Dimension[]],
  field: string,
): Measure {
  const dimensions: readonly Dimension[] = typeof dimension === "string" ? [dimension] : dimension;
  const units = dimensions
    .flatMap(unitsOf)
    .map((id) => UNITS[id].symbol || "a plain number")
    .join(", ");
  const found = NUMBER_THEN_UNIT.exec(text);
  if (found === null) {
    throw new InputError("not-a-number", field, {
      expected: `a number and a unit (${units})`,
      received: `"${text}"`,
    });
  }
  const [, digits = "", spelling = ""] = found;
  if (TWO_WAYS.test(digits)) {
    const ways = [digits.replace(",", ""), digits.replace(",", ".")].map((way) =>
      `${way} ${spelling}`.trim(),
    );
    throw new InputError("not-a-number", field, {
      expected: `a number that can be read in one way only, ${ways.join(" or ")}`,
      received: `"${text}"`,
    });
  }
  const value = Number(digits.replace("−", "-").replace(",", "."));
  if (spelling === "") {
    const bare = dimensions.find((each) => each === "count" || each === "ratio");
    const [plain] = bare === undefined ? [] : unitsOf(bare);
    if (plain !== undefined) return measure(value, plain);
    throw new InputError("missing", field, {
      expected: `a unit after the number (${units})`,
      received: `"${text}"`,
    });
  }
  const unit = unitFromText(spelling);
  if (unit === undefined) {
    throw new InputError("unknown-unit", field, { expected: `one of ${units}`, received: `"${spelling}"` });
  }
  if (!dimensions.includes(UNITS[unit].dimension)) {
    throw new InputError("wrong-unit", field, {
      expected: `a ${dimensions.join(" or a ")} (${units})`,
      received: `"${text}", a ${UNITS[unit].dimension}`,
    });
  }
  return measure(value, unit);
}
