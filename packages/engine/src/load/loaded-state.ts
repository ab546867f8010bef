import { InputError } from "../input-error.ts";
import { exactSum, exactSumOfProducts } from "./exact-sum.ts";

/** One thing aboard, or the empty aircraft. */
export interface LoadItem {
  readonly mass_kg: number;
  /** Aft of the datum. */
  readonly arm_m: number;
  /** To the right of the centre line; 0 where it is left out. */
  readonly lateralArm_m?: number;
  /**
   * A moment that comes on top of mass times arm, for what is known by its moment: a gear that comes up, or an empty
   * aircraft whose printed arm is rounded (with an arm of 0).
   */
  readonly extraMoment_kgm?: number;
}

/** Everything aboard, added. */
export interface LoadedState {
  readonly mass_kg: number;
  readonly moment_kgm: number;
  /** Centre of gravity, aft of the datum. */
  readonly arm_m: number;
  /** Above zero the right side is heavy. */
  readonly lateralMoment_kgm: number;
  /** Centre of gravity, to the right of the centre line. */
  readonly lateralArm_m: number;
}

function check(value: number, field: string, least: number): void {
  if (Number.isFinite(value) && value >= least) return;
  throw new InputError(Number.isFinite(value) ? "out-of-range" : "not-a-number", field, {
    expected: least === 0 ? "a mass of zero or more" : "a finite number",
    received: String(value),
    remedy: "check the figure and its unit",
  });
}

/**
 * Mass, moments and centre of gravity of everything aboard. Each sum is rounded once, so the order of the items does
 * not matter, to the last bit.
 *
 * @throws {InputError} `not-a-number`, `out-of-range` (a mass below zero, or no mass at all); names the item
 */
export function loadedState(items: readonly LoadItem[]): LoadedState {
  items.forEach((item, index) => {
    const name = (field: string): string => `items[${index}].${field}`;
    check(item.mass_kg, name("mass_kg"), 0);
    check(item.arm_m, name("arm_m"), Number.NEGATIVE_INFINITY);
    check(item.lateralArm_m ?? 0, name("lateralArm_m"), Number.NEGATIVE_INFINITY);
    check(item.extraMoment_kgm ?? 0, name("extraMoment_kgm"), Number.NEGATIVE_INFINITY);
  });
  const mass_kg = exactSum(items.map((item) => item.mass_kg));
  if (!(mass_kg > 0)) {
    throw new InputError("out-of-range", "items", {
      expected: "items that have a mass together",
      received: `${mass_kg} kg`,
      remedy: "give the empty aircraft as an item",
    });
  }
  const moment_kgm = exactSumOfProducts(
    items.flatMap(({ mass_kg: mass, arm_m, extraMoment_kgm = 0 }) => [
      [mass, arm_m] as const,
      [extraMoment_kgm, 1] as const,
    ]),
  );
  const lateralMoment_kgm = exactSumOfProducts(
    items.map(({ mass_kg: mass, lateralArm_m = 0 }) => [mass, lateralArm_m] as const),
  );
  return {
    mass_kg,
    moment_kgm,
    arm_m: moment_kgm / mass_kg,
    lateralMoment_kgm,
    lateralArm_m: lateralMoment_kgm / mass_kg,
  };
}
