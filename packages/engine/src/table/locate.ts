import { InputError } from "../input-error.ts";
import type { TableAxis } from "./table.ts";

/** Where a value lies on an axis: between two of its values, or on one of them (then `upper` equals `lower`). */
export interface Place {
  readonly lower: number;
  readonly upper: number;
  /** 0 at the lower value, 1 at the upper one. */
  readonly share_1: number;
}

export type Located =
  | { readonly kind: "on"; readonly place: Place }
  | { readonly kind: "below" | "above"; readonly edge: number };

/** A value this close to a printed one, as a share of the axis, is on it: what a change of unit leaves over. */
const ON_THE_VALUE = 1e-9;

/** The axis's value at an index that is known to exist. */
export function valueAt({ name, values }: TableAxis, index: number): number {
  const value = values[index];
  if (value === undefined) throw new RangeError(`${name}: no value ${index}`);
  return value;
}

/**
 * @throws {InputError} `missing`, `not-a-number`
 */
export function askedOn({ name }: TableAxis, at: Readonly<Record<string, number>>): number {
  const asked = Object.hasOwn(at, name) ? at[name] : undefined;
  if (asked === undefined)
    throw new InputError("missing", name, {
      expected: "a value for each axis of the table",
      received: "nothing",
    });
  if (!Number.isFinite(asked))
    throw new InputError("not-a-number", name, { expected: "a finite number", received: String(asked) });
  return asked;
}

export function locate(axis: TableAxis, asked: number): Located {
  const last = axis.values.length - 1;
  const low = valueAt(axis, 0);
  const high = valueAt(axis, last);
  const near = ON_THE_VALUE * Math.max(high - low, Math.abs(low) * 1e-6, Math.abs(high) * 1e-6);
  if (asked < low - near) return { kind: "below", edge: 0 };
  if (asked > high + near) return { kind: "above", edge: last };
  let upper = 0;
  while (upper < last && valueAt(axis, upper) < asked - near) upper += 1;
  const to = valueAt(axis, upper);
  if (Math.abs(to - asked) <= near) return { kind: "on", place: { lower: upper, upper, share_1: 0 } };
  const from = valueAt(axis, upper - 1);
  return { kind: "on", place: { lower: upper - 1, upper, share_1: (asked - from) / (to - from) } };
}
