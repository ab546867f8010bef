import {
  type AnyQuantity,
  fromSI,
  InputError,
  type InputSpec,
  type InputValue,
  stemOf,
  toSI,
  UNITS,
  type UnitId,
  type Worked,
  work,
} from "@witnessmark/engine";
import { readFigure } from "../../words/figures.ts";
import { plainFigure, plainMeasure } from "./plain-figure.ts";

/** What stands in the fields of one calculator. */
export interface Typed {
  /** By the input's name; one text, or one a row where the input is a list. */
  readonly texts: Readonly<Record<string, readonly string[]>>;
  readonly units: Readonly<Record<string, UnitId>>;
}

export type Outcome =
  | { readonly kind: "waiting"; readonly missing: readonly string[] }
  | { readonly kind: "faulty" }
  /** The inputs are each good, and together they are not. */
  | { readonly kind: "refused"; readonly says: string }
  | { readonly kind: "worked"; readonly worked: Worked };

export interface Calculation {
  /** What is wrong, by `placeOf` the field. */
  readonly faults: ReadonlyMap<string, string>;
  readonly outcome: Outcome;
}

/** The place of a field: an input, and the row where it is a list. */
export const placeOf = (name: string, row = 0): string => `${name} ${row}`;

/** One figure to be typed: what it means, the unit of its range, and the range. */
export interface FieldSpec {
  readonly name: string;
  readonly meaning: string;
  readonly unit: UnitId;
  readonly range: readonly [low: number, high: number];
}

/** What an input takes, in the unit chosen: `−1,968.5 to 29,527.6 ft`. */
export const rangeIn = ({ range: [low, high] }: Pick<FieldSpec, "range">, unit: UnitId): string =>
  `${plainFigure(fromSI(low, unit))} to ${plainMeasure(fromSI(high, unit), unit)}`;

/** As much as a conversion may put a value beyond the end of a range; the engine has the last word. */
const ROUNDING = 1e-12;

const isOutside = (value: number, [low, high]: readonly [number, number]): boolean =>
  value < low - ROUNDING * Math.abs(low) || value > high + ROUNDING * Math.abs(high);

/** A figure in the middle of the range, for saying what one would look like. */
const example = ({ range: [low, high] }: FieldSpec, unit: UnitId): string =>
  plainFigure(fromSI((low + high) / 2, unit), 2);

type Read = { readonly value: number; readonly unit: UnitId } | { readonly fault: string };

/** One figure as typed, held against its unit and range. */
export function readField(spec: FieldSpec, text: string, unit: UnitId): Read {
  const typed = readFigure(text, example(spec, unit));
  if (!typed.ok) return { fault: typed.why };
  const meant = typed.unit ?? unit;
  const { dimension } = UNITS[spec.unit];
  if (UNITS[meant].dimension !== dimension) {
    return { fault: `${UNITS[meant].symbol} is no unit of ${dimension}. Give it in ${UNITS[unit].symbol}.` };
  }
  if (isOutside(toSI(typed.value, meant), spec.range)) {
    return {
      fault: `${plainMeasure(typed.value, meant)} is outside ${rangeIn(spec, meant)}. Check the figure and its unit; nothing is worked out beyond.`,
    };
  }
  return { value: typed.value, unit: meant };
}

const wordsOf = ({ detail: { expected, received, remedy } }: InputError): string =>
  `Expected ${expected}, received ${received}${remedy === undefined ? "" : `; ${remedy}`}.`;

/** The rows of a calculator's lists in which anything stands. */
function rowsInUse(quantity: AnyQuantity, typed: Typed): readonly number[] {
  const lists = quantity.inputs.filter(({ many }) => many === true);
  const most = Math.max(0, ...lists.map(({ name }) => typed.texts[name]?.length ?? 0));
  return Array.from({ length: most }, (_, row) => row).filter((row) =>
    lists.some(({ name }) => (typed.texts[name]?.[row] ?? "").trim() !== ""),
  );
}

interface FieldsRead {
  readonly faults: Map<string, string>;
  readonly missing: string[];
  /** As `work` takes it. */
  readonly given: Record<string, InputValue>;
}

/** Reads the field of one input, or its rows. */
function readInput(spec: InputSpec, typed: Typed, rows: readonly number[], into: FieldsRead): void {
  const unit = typed.units[spec.name] ?? spec.unit;
  const values: number[] = [];
  if (rows.length === 0) into.missing.push(spec.meaning);
  for (const row of rows) {
    const text = (typed.texts[spec.name]?.[row] ?? "").trim();
    if (text === "") {
      into.missing.push(spec.many ? `${spec.meaning}, row ${row + 1}` : spec.meaning);
      continue;
    }
    const read = readField(spec, text, unit);
    if ("fault" in read) into.faults.set(placeOf(spec.name, row), read.fault);
    else values.push(read.unit === unit ? read.value : fromSI(toSI(read.value, read.unit), unit));
  }
  const [first] = values;
  if (first !== undefined) into.given[`${stemOf(spec.name)}_${unit}`] = spec.many ? values : first;
}

/**
 * Reads what stands in the fields, and works the quantity out once all of it is there. Never throws for a figure
 * typed.
 */
export function calculate(quantity: AnyQuantity, typed: Typed): Calculation {
  const rows = rowsInUse(quantity, typed);
  const read: FieldsRead = { faults: new Map(), missing: [], given: {} };
  for (const spec of quantity.inputs) readInput(spec, typed, spec.many ? rows : [0], read);
  const { faults, missing, given } = read;
  if (faults.size > 0) return { faults, outcome: { kind: "faulty" } };
  if (missing.length > 0) return { faults, outcome: { kind: "waiting", missing } };
  try {
    return { faults, outcome: { kind: "worked", worked: work(quantity.id, given) } };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const spec = quantity.inputs.find(({ name }) => name === error.field);
    if (spec === undefined) return { faults, outcome: { kind: "refused", says: wordsOf(error) } };
    const row = spec.many ? (rows[0] ?? 0) : 0;
    return { faults: new Map([[placeOf(spec.name, row), wordsOf(error)]]), outcome: { kind: "faulty" } };
  }
}
