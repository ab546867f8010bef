import type { Fault } from "@witnessmark/book";
import { differenceFromSI, roundToSafeSide, toSI, UNITS, withSymbol } from "@witnessmark/engine";
import type { Discrepancy, Read } from "@witnessmark/ledger";
import type { Margin, WorkingLine } from "../assessment.ts";
import { recorded_ms } from "../walk/moments.ts";
import { dayText, type LocalClock, momentText } from "../words/local-time.ts";

/** A measured size against what the book allows of that fault. */
export interface Sized {
  readonly over: boolean;
  readonly margin: Margin;
  /** `38 mm, 10 mm allowed` */
  readonly says: string;
  readonly lines: readonly WorkingLine[];
}

const plain = (value: number): string => String(Number(value.toPrecision(12))).replace("-", "−");
export const readText = ({ value, unit }: Read): string => withSymbol(plain(value), unit);

/** The finest step of the figures as they were written, so that 38 and 10 leave 28 and 12.5 and 10 leave 2.5. */
const stepOf = (...values: readonly number[]): number =>
  10 ** -Math.max(0, ...values.map((value) => plain(value).split(".")[1]?.length ?? 0));

export function sized(fault: Fault | undefined, measured: Read | undefined): Sized | undefined {
  const allowed = fault?.measure?.allowed;
  if (allowed === undefined || measured === undefined || !Number.isFinite(measured.value)) return undefined;
  if (UNITS[measured.unit].dimension !== UNITS[allowed.unit].dimension || measured.value < 0)
    return undefined;
  const { unit } = measured;
  const overSI = toSI(measured.value, unit) - allowed.valueSI;
  const step = stepOf(measured.value, unit === allowed.unit ? allowed.value : 0);
  const left = roundToSafeSide(differenceFromSI(-overSI, unit), step, "down");
  const over = overSI > 0 && left < 0; // a billionth of a step is the conversion's, not the fault's
  const size = withSymbol(plain(Math.abs(left)), unit);
  return {
    over,
    margin: { value: left, unit: UNITS[unit].symbol, text: over ? `${size} over` : `${size} left` },
    says: `${readText(measured)}, ${withSymbol(plain(allowed.value), allowed.unit)} allowed`,
    lines: [
      { label: "Measured", value: readText(measured) },
      { label: "Book allows", value: withSymbol(plain(allowed.value), allowed.unit) },
    ],
  };
}

/** `grew 30 mm since 30 Oct`, or shrank; nothing where it was measured once, or in another dimension. */
export function grown({ measurements }: Discrepancy, clock: LocalClock): readonly string[] {
  const [first] = measurements;
  const last = measurements.at(-1);
  if (first === undefined || last === undefined || first === last) return [];
  const { unit } = last.measured;
  if (UNITS[first.measured.unit].dimension !== UNITS[unit].dimension) return [];
  const more = differenceFromSI(
    toSI(last.measured.value, unit) - toSI(first.measured.value, first.measured.unit),
    unit,
  );
  const size = withSymbol(plain(Math.abs(Number(more.toPrecision(6)))), unit);
  const since = dayText(recorded_ms(first), clock);
  return [more === 0 ? `as large as on ${since}` : `${more > 0 ? "grew" : "shrank"} ${size} since ${since}`];
}

/** Every size that was measured, when it was measured more than once. */
export const measuredLines = ({ measurements }: Discrepancy, clock: LocalClock): readonly WorkingLine[] =>
  measurements.length < 2
    ? []
    : measurements.map((one) => ({
        label: `Measured ${momentText(recorded_ms(one), clock)}`,
        value: readText(one.measured),
      }));
