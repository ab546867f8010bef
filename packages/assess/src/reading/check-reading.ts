import { type Book, type Check, type Gauge, type Reading, rangeShown } from "@witnessmark/book";
import { fromSI, toSI, UNITS, type UnitId, unitFromText, unitsOf, withSymbol } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { figuresOf, shown } from "./figures.ts";

/** What was typed, as a value that can be kept; or why it cannot, in words for the person who typed it. */
export type CheckedReading =
  | { readonly ok: true; readonly read: Read }
  | { readonly ok: false; readonly message: string };

const NUMBER_THEN_REST = /^([-+−]?\d+(?:[.,]\d+)?)\s*(.*)$/u;
const LONGEST = 40;
/** The slips that are looked for: a decimal point one, two or three places off. */
const SLIPS = [0.1, 10, 0.01, 100, 0.001, 1000] as const;

const refuse = (message: string): CheckedReading => ({ ok: false, message });

const symbol = (unit: UnitId): string => UNITS[unit].symbol;

/** `in bar`; nothing for a plain number. */
const inUnit = (unit: UnitId): string => (symbol(unit) === "" ? "" : `, in ${symbol(unit)}`);

/** Why a value cannot be one of this gauge: `The gauge shows 0 to 10 bar`. */
const rangeText = ({ range, unit }: Gauge, lowSI: number, highSI: number): string => {
  const plain = (valueSI: number): string =>
    String(Number(fromSI(valueSI, unit).toPrecision(6))).replace("-", "−");
  const ends = `${plain(lowSI)} to ${withSymbol(plain(highSI), unit)}`;
  return range === undefined ? `It is likely ${ends}` : `The gauge shows ${ends}`;
};

/** What was probably meant: a value within the rule that the book draws, a slip of the point or of the unit away. */
function probably(read: Read, gauge: Gauge, reading: Reading): string | undefined {
  const [least, most] = reading.scale;
  const likely = (value: number, unit: UnitId): boolean => {
    const valueSI = toSI(value, unit);
    return valueSI >= least.valueSI && valueSI <= most.valueSI;
  };
  for (const slip of SLIPS) {
    const value = Number((read.value * slip).toPrecision(12));
    if (likely(value, read.unit)) return withSymbol(String(value).replace("-", "−"), read.unit);
  }
  if (likely(-read.value, read.unit)) return withSymbol(String(-read.value).replace("-", "−"), read.unit);
  const other = unitsOf(gauge.dimension).find((unit) => unit !== read.unit && likely(read.value, unit));
  return other === undefined ? undefined : withSymbol(String(read.value).replace("-", "−"), other);
}

/** The unit that was typed after the number, or the chosen one. */
function unitOf(typed: string, unit: UnitId, reading: Reading): UnitId | { readonly message: string } {
  if (typed === "") return unit;
  const found = unitFromText(typed);
  if (found === undefined) {
    return { message: `"${typed}" is no unit of a ${reading.dimension}; type a number${inUnit(unit)}` };
  }
  if (UNITS[found].dimension !== reading.dimension) {
    return {
      message: `${symbol(found)} is a unit of ${UNITS[found].dimension}; this is a ${reading.dimension}, type it${inUnit(unit)}`,
    };
  }
  return found;
}

/**
 * Reads what a person typed for a check's reading. Comma and point are both decimal marks; a unit after the number
 * wins over the chosen one. A value that the gauge cannot show is a slip, and the message says what was likely meant.
 *
 * @param unit the unit chosen on the screen
 */
export function checkReading(
  check: Pick<Check, "reading">,
  book: Pick<Book, "gauges">,
  text: string,
  unit: UnitId,
): CheckedReading {
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) return refuse("This check asks for no reading");
  if (UNITS[unit].dimension !== reading.dimension) {
    return refuse(`${symbol(unit)} is a unit of ${UNITS[unit].dimension}; this is a ${reading.dimension}`);
  }
  const written = text.trim();
  const example = shown(middleSI(reading), figuresOf(gauge));
  if (written === "") return refuse(`Type what the gauge shows${inUnit(unit)}`);
  const found = written.length > LONGEST ? null : NUMBER_THEN_REST.exec(written);
  if (found === null) {
    return refuse(
      `"${written.slice(0, LONGEST)}" is not a number; type what the gauge shows, such as ${example}`,
    );
  }
  const [, digits = "", rest = ""] = found;
  if (/^[.,\d]/.test(rest))
    return refuse(`"${written}" has more than one decimal mark; type it such as ${example}`);
  const meant = unitOf(rest, unit, reading);
  if (typeof meant === "object") return refuse(meant.message);
  const read: Read = { value: Number(digits.replace("−", "-").replace(",", ".")) + 0, unit: meant };
  const valueSI = toSI(read.value, read.unit);
  const [low, high] = rangeShown(gauge, reading);
  if (valueSI >= low && valueSI <= high) return { ok: true, read };
  const guess = probably(read, gauge, reading);
  return refuse(`${rangeText(gauge, low, high)}${guess === undefined ? "" : `; was that ${guess}?`}`);
}

const middleSI = ({ scale: [low, high] }: Reading): number => (low.valueSI + high.valueSI) / 2;
