import { InputError } from "../input-error.ts";

/** One axis of a table: its name ends in the unit of its values (`pressureAltitude_m`), which ascend. */
export interface TableAxis {
  readonly name: string;
  readonly values: readonly number[];
}

/**
 * A printed table of one to five dimensions. Cells are row-major: the last axis runs fastest. `null` is a cell that the
 * print leaves empty: no figure.
 */
export interface Table {
  readonly axes: readonly TableAxis[];
  readonly cells: readonly (number | null)[];
}

export const MOST_AXES = 5;

/** How far apart in `cells` two neighbours on each axis lie. */
function strides(axes: readonly TableAxis[]): readonly number[] {
  const steps: number[] = [];
  let step = 1;
  for (const { values } of axes.toReversed()) {
    steps.unshift(step);
    step *= values.length;
  }
  return steps;
}

const cellCount = (axes: readonly TableAxis[]): number =>
  axes.reduce((count, { values }) => count * values.length, 1);

function axisFaults({ name, values }: TableAxis, sameName: number): readonly string[] {
  const faults: string[] = [];
  if (sameName > 1) faults.push(`${name}: expected each axis once, received it ${sameName} times`);
  if (values.length === 0) faults.push(`${name}: expected at least one value, received none`);
  values.forEach((value, at) => {
    const before = values[at - 1];
    if (!Number.isFinite(value))
      faults.push(`${name}, value ${at + 1}: expected a number, received ${value}`);
    else if (before !== undefined && !(value > before))
      faults.push(`${name}, value ${at + 1}: expected more than ${before}, received ${value}`);
  });
  return faults;
}

/** What is wrong with the shape of a table, one sentence a fault; empty when nothing is. */
export function tableFaults({ axes, cells }: Table): readonly string[] {
  const faults: string[] = [];
  if (axes.length === 0 || axes.length > MOST_AXES)
    faults.push(`axes: expected 1 to ${MOST_AXES}, received ${axes.length}`);
  for (const axis of axes)
    faults.push(...axisFaults(axis, axes.filter(({ name }) => name === axis.name).length));
  if (cells.length !== cellCount(axes))
    faults.push(
      `cells: expected ${cellCount(axes)} (one for each corner of the axes), received ${cells.length}`,
    );
  cells.forEach((cell, at) => {
    if (cell !== null && !Number.isFinite(cell))
      faults.push(`cell ${at + 1}: expected a number or no figure, received ${cell}`);
  });
  return faults;
}

/** Tables that have passed, with the strides of their cells: a table is read thousands of times and never changes. */
const sound = new WeakMap<Table, readonly number[]>();

/**
 * Refuses a table that is not one. A table that has passed is not looked at again.
 *
 * @returns the strides of its cells
 * @throws {InputError} `out-of-range`, with the first fault
 */
export function requireSoundTable(table: Table): readonly number[] {
  const known = sound.get(table);
  if (known !== undefined) return known;
  const [fault] = tableFaults(table);
  if (fault !== undefined) {
    throw new InputError("out-of-range", "table", {
      expected: "axes that ascend and one cell for each corner",
      received: fault,
      remedy: "mend the table in the book",
    });
  }
  const steps = strides(table.axes);
  sound.set(table, steps);
  return steps;
}

/** The axis values of a cell, by axis name. */
export function axisValuesOfCell(table: Table, index: number): Readonly<Record<string, number>> {
  const steps = requireSoundTable(table);
  const values = table.axes.map(({ name, values: on }, axis) => {
    const value = on[Math.floor(index / (steps[axis] ?? 1)) % on.length];
    if (value === undefined || index < 0 || index >= table.cells.length)
      throw new RangeError(`the table has no cell ${index}`);
    return [name, value] as const;
  });
  return Object.fromEntries(values);
}
