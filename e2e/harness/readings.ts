import { band, judge } from "@witnessmark/assess";
import { type Book, type Check, type Gauge, type Reading, rangeShown } from "@witnessmark/book";
import { fromSI, type UnitId } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";

/** What a person would read off a gauge and type in. */
export interface ToType {
  readonly value: string;
  /** Of the thing itself, degrees Celsius; only where the limit moves with it. */
  readonly temperature_degC: string | null;
}

/** A cool morning, which every table and formula of the demo's book covers. */
const MORNING_degC = 8;

/**
 * A reading well inside the book's limits, in the gauge's own unit and steps.
 *
 * @throws {Error} when none of the values tried is judged clear: the test would not be about what it says
 */
export function goodReading(book: Book, check: Check): ToType {
  return reading(book, check, "inside");
}

/** A reading past a limit, still one that the gauge can show. */
export function badReading(book: Book, check: Check): ToType {
  return reading(book, check, "outside");
}

function reading(book: Book, check: Check, where: "inside" | "outside"): ToType {
  const { reading: asked } = check;
  const gauge = asked === undefined ? undefined : book.gauges.get(asked.gauge);
  if (asked === undefined || gauge === undefined) {
    throw new Error(`readings: expected a check with a reading and its gauge, found ${check.id}`);
  }
  const temperature: Read | undefined =
    asked.limit.by === "fixed" ? undefined : { value: MORNING_degC, unit: "degC" };
  const wanted = where === "inside" ? "clear" : "stop";
  for (const valueSI of candidates(book, check, asked, temperature)) {
    const read = asShown(valueSI, gauge);
    const { status } = judge(check, book, { read, ...(temperature === undefined ? {} : { temperature }) });
    if (status === wanted && canShow(valueSI, gauge, asked)) {
      return {
        value: String(read.value),
        temperature_degC: temperature === undefined ? null : String(MORNING_degC),
      };
    }
  }
  throw new Error(`readings: found no value of ${check.id} that is judged ${wanted}`);
}

/** Values over the rule that the book draws, from the middle of what is allowed outward. */
function candidates(
  book: Book,
  check: Check,
  { scale: [from, to] }: Reading,
  temperature: Read | undefined,
): readonly number[] {
  const { low, high } = band(check, book, temperature) ?? {};
  const middle = ((low ?? from.valueSI) + (high ?? to.valueSI)) / 2;
  const span = to.valueSI - from.valueSI;
  const over = Array.from({ length: 81 }, (_, at) => from.valueSI + (span * at) / 80);
  return [middle, ...over.toSorted((a, b) => Math.abs(a - middle) - Math.abs(b - middle))];
}

function canShow(valueSI: number, gauge: Gauge, reading: Reading): boolean {
  const [low, high] = rangeShown(gauge, reading);
  return valueSI >= low && valueSI <= high;
}

function asShown(valueSI: number, gauge: Gauge): Read {
  const unit: UnitId = gauge.unit;
  const step = gauge.resolution.unit === unit ? gauge.resolution.value : 0;
  const value = fromSI(valueSI, unit);
  const shown = step === 0 ? Number(value.toPrecision(3)) : Math.round(value / step) * step;
  return { value: Number(shown.toPrecision(10)), unit };
}
