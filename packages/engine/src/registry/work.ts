import { InputError } from "../input-error.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { withSymbol } from "../units/format.ts";
import { toSignificant } from "../units/plain-number.ts";
import { isUnitId, UNITS, type UnitId, unitsOf } from "../units/units.ts";
import { quantities } from "./quantities.ts";
import type { AnyQuantity, InputSpec, InputValue } from "./quantity.ts";
import { rangeText, valueText } from "./range-text.ts";

/** One input as it was given and as it was used. */
export interface WorkedInput {
  /** The registered name: `elevation_m`. */
  readonly name: string;
  readonly meaning: string;
  /** A list where the input is `many`. */
  readonly given: { readonly value: InputValue; readonly unit: UnitId };
  /** A list where the input is `many`. */
  readonly valueSI: InputValue;
}

/** A quantity worked through with the figures of one case. */
export interface Worked {
  readonly quantity: AnyQuantity;
  readonly inputs: readonly WorkedInput[];
  /** In the SI unit of the quantity's output. */
  readonly outputSI: number;
  /** For a person: each input, the formula, the result. */
  readonly lines: readonly { readonly label: string; readonly value: string }[];
}

/** Splits `elevation_ft` into its stem and its unit; the stem is empty when there is none. */
function splitName(name: string): readonly [stem: string, unit: string] {
  const at = name.lastIndexOf("_");
  return at < 0 ? [name, ""] : [name.slice(0, at), name.slice(at + 1)];
}

export const stemOf = (name: string): string => splitName(name)[0];

const unitList = (unit: UnitId): string => unitsOf(UNITS[unit].dimension).join(", ");

/** Reads one given input against the registered ones. */
function readInput(
  quantity: AnyQuantity,
  name: string,
  value: InputValue,
): WorkedInput & { readonly spec: InputSpec } {
  const [stem, unit] = splitName(name);
  const spec = quantity.inputs.find((input) => stemOf(input.name) === stem);
  if (spec === undefined) {
    throw new InputError("unknown-input", name, {
      quantity: quantity.id,
      expected: `one of ${quantity.inputs.map((input) => input.name).join(", ")}, or the same in another unit`,
      received: name,
    });
  }
  if (!isUnitId(unit)) {
    throw new InputError("unknown-unit", name, {
      quantity: quantity.id,
      expected: `a unit at its end (${unitList(spec.unit)})`,
      received: unit === "" ? "no unit" : `"${unit}"`,
    });
  }
  if (UNITS[unit].dimension !== UNITS[spec.unit].dimension) {
    throw new InputError("wrong-unit", name, {
      quantity: quantity.id,
      expected: `a ${UNITS[spec.unit].dimension} (${unitList(spec.unit)})`,
      received: `a ${UNITS[unit].dimension}`,
    });
  }
  const toSIChecked = (one: number): number => {
    if (Number.isFinite(one)) return toSI(one, unit);
    throw new InputError("not-a-number", name, {
      quantity: quantity.id,
      expected: `a number, ${rangeText(spec.range, spec.unit)}`,
      received: String(one),
    });
  };
  // One value given for a list is a list of one.
  const given: InputValue = spec.many && typeof value === "number" ? [value] : value;
  const valueSI = typeof given === "number" ? toSIChecked(given) : given.map(toSIChecked);
  return { spec, name: spec.name, meaning: spec.meaning, given: { value: given, unit }, valueSI };
}

/** One value, or a list with its unit at the end: `340, 350, 450 lb`. */
const listText = (value: InputValue, digits: number, unit: UnitId): string =>
  withSymbol(
    (typeof value === "number" ? [value] : value).map((one) => toSignificant(one, digits)).join(", "),
    unit,
  );

const givenText = ({ given, spec, valueSI }: WorkedInput & { readonly spec: InputSpec }): string => {
  const asGiven = listText(given.value, 12, given.unit);
  return given.unit === spec.unit ? asGiven : `${asGiven} = ${listText(valueSI, 6, spec.unit)}`;
};

/** The result in SI, and in the unit in which the first input of its dimension was given. */
function resultText({ output }: AnyQuantity, outputSI: number, inputs: readonly WorkedInput[]): string {
  const inSI = valueText(outputSI, output.unit);
  const asked = inputs.find(({ given }) => UNITS[given.unit].dimension === UNITS[output.unit].dimension)
    ?.given.unit;
  return asked === undefined || asked === output.unit
    ? inSI
    : `${inSI} = ${valueText(fromSI(outputSI, asked), asked)}`;
}

/** The quantity of an id. @throws {InputError} `unknown-quantity` */
export function quantityOf(id: string): AnyQuantity {
  const quantity = quantities.get(id);
  if (quantity !== undefined) return quantity;
  throw new InputError("unknown-quantity", id, {
    expected: `one of the ${quantities.size} quantities of the registry`,
    received: `"${id}"`,
  });
}

/**
 * Computes a quantity from inputs in any unit of their dimension and shows how.
 *
 * @param id of a registered quantity: `pressure-altitude`
 * @param inputs keyed by the registered stem and any unit: `{ elevation_ft: 5883, altimeterSetting_inHg: 30.1 }`;
 *   a list for an input that is `many`: `{ mass_lb: [340, 350], arm_in: [85, 121] }`
 * @throws {InputError} `unknown-quantity`, `unknown-input`, `unknown-unit`, `wrong-unit`, `missing`, `not-a-number`,
 *   `out-of-range`
 */
export function work(id: string, inputs: Readonly<Record<string, InputValue>>): Worked {
  const quantity = quantityOf(id);
  const read = Object.entries(inputs).map(([name, value]) => readInput(quantity, name, value));
  const valuesSI = new Map<string, InputValue>();
  for (const { name, valueSI } of read) {
    if (valuesSI.has(name)) {
      throw new InputError("unknown-input", name, {
        quantity: id,
        expected: "it once",
        received: "it twice, in two units",
      });
    }
    valuesSI.set(name, valueSI);
  }
  const outputSI = quantity.compute(Object.fromEntries(valuesSI));
  const ordered = quantity.inputs.flatMap((spec) => read.filter(({ name }) => name === spec.name));
  return {
    quantity,
    inputs: ordered.map(({ name, meaning, given, valueSI }) => ({ name, meaning, given, valueSI })),
    outputSI,
    lines: [
      ...ordered.map((input) => ({ label: input.meaning, value: givenText(input) })),
      { label: "formula", value: quantity.formula },
      { label: quantity.title, value: resultText(quantity, outputSI, ordered) },
    ],
  };
}
