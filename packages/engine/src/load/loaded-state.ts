import { InputError } from "../input-error.ts";
import { ExactSum } from "./exact-sum.ts";

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
  /** The same across: a moment about the centre line that comes on top. */
  readonly extraLateralMoment_kgm?: number;
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

const FIELDS = ["mass_kg", "arm_m", "lateralArm_m", "extraMoment_kgm", "extraLateralMoment_kgm"] as const;

const isSound = (item: LoadItem): boolean =>
  item.mass_kg >= 0 &&
  Number.isFinite(
    item.mass_kg +
      item.arm_m +
      (item.lateralArm_m ?? 0) +
      (item.extraMoment_kgm ?? 0) +
      (item.extraLateralMoment_kgm ?? 0),
  );

function check(items: readonly LoadItem[]): void {
  const index = items.findIndex((item) => !isSound(item));
  const item = items[index];
  if (item === undefined) return;
  for (const field of FIELDS) {
    const value = item[field] ?? 0;
    if (Number.isFinite(value) && (field !== "mass_kg" || value >= 0)) continue;
    throw new InputError(
      Number.isFinite(value) ? "out-of-range" : "not-a-number",
      `items[${index}].${field}`,
      {
        expected: field === "mass_kg" ? "a mass of zero or more" : "a finite number",
        received: String(value),
        remedy: "check the figure and its unit",
      },
    );
  }
}

/**
 * Mass, moments and centre of gravity of everything aboard. Each sum is rounded once, so the order of the items does
 * not matter, to the last bit.
 *
 * @throws {InputError} `not-a-number`, `out-of-range` (a mass below zero, or no mass at all); names the item
 */
export function loadedState(items: readonly LoadItem[]): LoadedState {
  check(items);
  const [mass, along, across] = [new ExactSum(), new ExactSum(), new ExactSum()];
  for (const item of items) {
    mass.add(item.mass_kg);
    along.addProduct(item.mass_kg, item.arm_m);
    across.addProduct(item.mass_kg, item.lateralArm_m ?? 0);
    along.add(item.extraMoment_kgm ?? 0);
    across.add(item.extraLateralMoment_kgm ?? 0);
  }
  const mass_kg = mass.total();
  if (!(mass_kg > 0)) {
    throw new InputError("out-of-range", "items", {
      expected: "items that have a mass together",
      received: `${mass_kg} kg`,
      remedy: "give the empty aircraft as an item",
    });
  }
  const moment_kgm = along.total();
  const lateralMoment_kgm = across.total();
  return {
    mass_kg,
    moment_kgm,
    arm_m: moment_kgm / mass_kg,
    lateralMoment_kgm,
    lateralArm_m: lateralMoment_kgm / mass_kg,
  };
}
