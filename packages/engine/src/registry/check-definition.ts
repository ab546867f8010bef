import { InputError } from "../input-error.ts";
import { isUnitId, siUnitOf, UNITS } from "../units/units.ts";
import type { InputSpec, InputValue, OutputSpec, QuantitySource } from "./quantity.ts";

/** A quantity that is written down wrongly: a fault of the program, found when it loads. */
export class DefinitionError extends Error {
  override readonly name = "DefinitionError";
}

/** A definition before its types are believed. */
interface Written {
  readonly id: string;
  readonly title: string;
  readonly inputs: readonly InputSpec[];
  readonly output: OutputSpec;
  readonly formula: string;
  readonly sources: readonly QuantitySource[];
}

const ID = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
const STEM = /^[a-z][A-Za-z0-9]*$/;

function checkName(id: string, name: string, unit: string): void {
  if (!isUnitId(unit)) throw new DefinitionError(`${id}, ${name}: "${unit}" is no unit of the program`);
  const si = siUnitOf(UNITS[unit].dimension);
  if (unit !== si) throw new DefinitionError(`${id}, ${name}: "${unit}" is not an SI unit; use "${si}"`);
  const stem = name.slice(0, -(unit.length + 1));
  if (!name.endsWith(`_${unit}`) || !STEM.test(stem)) {
    throw new DefinitionError(`${id}, ${name}: expected a name in camelCase that ends in "_${unit}"`);
  }
}

/**
 * The promises that the types of `defineQuantity` make, checked again when the program loads.
 *
 * @throws {DefinitionError} names the quantity and the part at fault
 */
export function checkDefinition(written: Written): void {
  const { id, inputs, output } = written;
  if (!ID.test(id)) throw new DefinitionError(`"${id}": expected an id in kebab-case`);
  if (written.title.trim() === "") throw new DefinitionError(`${id}: no title`);
  if (written.formula.trim() === "") throw new DefinitionError(`${id}: no formula`);
  if (!written.sources.some((source) => source.title.trim() !== ""))
    throw new DefinitionError(`${id}: no source`);
  if (inputs.length === 0) throw new DefinitionError(`${id}: no inputs`);
  const names = new Set<string>();
  for (const { name, unit, range, meaning, many } of inputs) {
    checkName(id, name, unit);
    if (many !== undefined && many !== true) {
      throw new DefinitionError(`${id}, ${name}: "many" is true or left out`);
    }
    if (names.has(name)) throw new DefinitionError(`${id}, ${name}: registered twice`);
    names.add(name);
    if (meaning.trim() === "") throw new DefinitionError(`${id}, ${name}: no meaning`);
    const [low, high] = range;
    if (!(Number.isFinite(low) && Number.isFinite(high) && low < high)) {
      throw new DefinitionError(`${id}, ${name}: ${low} to ${high} is no range`);
    }
  }
  checkName(id, output.name, output.unit);
  if (names.has(output.name))
    throw new DefinitionError(`${id}, ${output.name}: both an input and the output`);
}

/** The middle of a range; of an input that is `many`, twice the middle. */
const middleOf = ({ range: [low, high], many }: InputSpec): InputValue => {
  const middle = (low + high) / 2;
  return many ? [middle, middle] : middle;
};

/**
 * Runs the formula once in the middle of its ranges and watches what it reads: an input that is not registered, and
 * one that is registered and never read, are faults. A list is tried with two values. A formula that refuses the middle (two inputs that contradict
 * each other) is believed.
 *
 * @throws {DefinitionError} names the input at fault
 */
export function checkReads(
  id: string,
  inputs: readonly InputSpec[],
  compute: (inputs: Readonly<Record<string, InputValue>>) => number,
): void {
  const middle = new Map<string, InputValue>(inputs.map((spec) => [spec.name, middleOf(spec)]));
  const read = new Set<string>();
  const watched = new Proxy<Record<string, InputValue>>(Object.create(null), {
    get(_target, name): InputValue {
      const value = typeof name === "string" ? middle.get(name) : undefined;
      if (value === undefined)
        throw new DefinitionError(`${id}: compute reads ${String(name)}, which is not registered`);
      read.add(String(name));
      return value;
    },
  });
  try {
    compute(watched);
  } catch (error) {
    if (error instanceof InputError) return;
    throw error;
  }
  for (const name of middle.keys()) {
    if (!read.has(name))
      throw new DefinitionError(`${id}: ${name} is registered, and compute never reads it`);
  }
}
