import {
  fromSI,
  type InputValue,
  isUnitId,
  siUnitOf,
  stemOf,
  toSI,
  UNITS,
  type UnitId,
  work,
} from "@witnessmark/engine";
import { type Case, type CaseInputs, isGiven } from "./case-file.ts";

/** One expected figure of a case beside what the program makes of it. */
export interface Compared {
  /** `pressure_hPa` */
  readonly name: string;
  readonly unit: UnitId;
  readonly expected: number;
  readonly computed: number;
  readonly tolerance: number;
  readonly agrees: boolean;
}

/** A decimal figure and its nearest double, through one conversion there and back. */
const ROUNDING = 4 * Number.EPSILON;

const within = (computed: number, expected: number, tolerance: number): boolean =>
  Math.abs(computed - expected) <= tolerance + ROUNDING * Math.abs(expected);

function unitOf(name: string, caseId: string): UnitId {
  const unit = name.slice(stemOf(name).length + 1);
  if (!isUnitId(unit)) throw new Error(`${caseId}, ${name}: "${unit}" is no unit of the program`);
  return unit;
}

/** Turns quantities that stand for inputs into numbers, innermost first. */
function resolveInputs(inputs: CaseInputs, caseId: string): Record<string, InputValue> {
  const resolved: Record<string, InputValue> = {};
  for (const [name, input] of Object.entries(inputs)) {
    if (isGiven(input)) {
      resolved[name] = input;
      continue;
    }
    const { outputSI, quantity } = work(input.quantity, resolveInputs(input.inputs, caseId));
    if (unitOf(name, caseId) !== quantity.output.unit) {
      throw new Error(`${caseId}, ${name}: ${input.quantity} comes in ${quantity.output.unit}`);
    }
    resolved[name] = outputSI;
  }
  return resolved;
}

/** The SI value of what a case asks for, and the stem that its expected figures must have. */
function compute({ id, quantity, inputs }: Case): {
  readonly stem: string;
  readonly unit: UnitId;
  readonly valueSI: number;
} {
  const resolved = resolveInputs(inputs, id);
  if (quantity !== "conversion") {
    const worked = work(quantity, resolved);
    const { name, unit } = worked.quantity.output;
    return { stem: stemOf(name), unit, valueSI: worked.outputSI };
  }
  const [first, ...more] = Object.entries(resolved);
  if (first === undefined || more.length > 0) throw new Error(`${id}: a conversion has one input`);
  const [name, value] = first;
  if (typeof value !== "number") throw new Error(`${id}, ${name}: a conversion has one number`);
  const unit = unitOf(name, id);
  return { stem: stemOf(name), unit: siUnitOf(UNITS[unit].dimension), valueSI: toSI(value, unit) };
}

/**
 * Computes a case and compares each of its expected figures.
 *
 * @throws {Error} when the case asks for something that its quantity does not give
 * @throws {InputError} when the quantity refuses its inputs
 */
export function runCase(one: Case): readonly Compared[] {
  const { stem, unit, valueSI } = compute(one);
  return Object.entries(one.expected).map(([name, expected]) => {
    const asked = unitOf(name, one.id);
    if (stemOf(name) !== stem || UNITS[asked].dimension !== UNITS[unit].dimension) {
      throw new Error(`${one.id}, ${name}: ${one.quantity} gives ${stem}, a ${UNITS[unit].dimension}`);
    }
    const computed = fromSI(valueSI, asked);
    const tolerance = one.tolerance[name];
    if (tolerance === undefined) throw new Error(`${one.id}, ${name}: no tolerance`);
    return {
      name,
      unit: asked,
      expected,
      computed,
      tolerance,
      agrees: within(computed, expected, tolerance),
    };
  });
}

/**
 * What is wrong with a case: a figure that does not agree, or one that was said to disagree and does not do so as
 * explained. Empty when all is as the file says.
 */
export function faultsOf(one: Case): readonly string[] {
  return runCase(one).flatMap(({ name, expected, computed, tolerance, agrees }) => {
    const told = `${name} ${computed}, expected ${expected} ± ${tolerance}`;
    const explained = one.disagrees?.computed[name];
    if (explained === undefined) return agrees ? [] : [told];
    if (agrees) return [`${told}: said to disagree, and agrees`];
    return within(computed, explained, tolerance) ? [] : [`${told}: explained as ${explained}`];
  });
}

/** @throws {Error} when fewer cases were read than there should be: a runner that reads nothing finds nothing. */
export function requireFloor(count: number, floor: number): void {
  if (count < floor) throw new Error(`${count} cases were read; at least ${floor} are expected`);
}
