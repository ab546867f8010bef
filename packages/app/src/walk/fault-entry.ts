import type { Check, Fault } from "@witnessmark/book";
import { decimalsOf, fromSI, toSI, withSymbol } from "@witnessmark/engine";
import type { AircraftState, Discrepancy } from "@witnessmark/ledger";
import type { RuleTexts, RuleValues } from "../instruments/rule-layout.ts";
import { lower } from "../words/capital.ts";
import { dayMonth } from "../words/dates.ts";
import { figure } from "../words/figures.ts";

type Sized = NonNullable<Fault["measure"]>;

/** The rule of a fault's size: what the book allows, what it was last, what it is now. */
export interface FaultRule {
  readonly values: RuleValues;
  readonly texts: RuleTexts;
  readonly step: number;
  readonly decimals: number;
  readonly over: boolean;
  readonly says: string;
}

export function faultRule(measure: Sized, now: number | null, last: Discrepancy | undefined): FaultRule {
  const { unit } = measure.upTo;
  const allowed = fromSI(measure.allowed.valueSI, unit);
  const step = stepOf(measure.upTo.value);
  const decimals = decimalsOf(step);
  const before =
    last?.measured === undefined ? undefined : fromSI(toSI(last.measured.value, last.measured.unit), unit);
  const over = now !== null && now > allowed;
  return {
    values: {
      min: 0,
      max: Math.max(measure.upTo.value, now ?? 0),
      high: allowed,
      now,
      ...(before === undefined ? {} : { last: before }),
    },
    texts: {
      high: `${withSymbol(figure(allowed, decimals), unit)} allowed`,
      ...(last === undefined ? {} : { last: dayMonth(Date.parse(last.raised.recordedAt)) }),
    },
    step,
    decimals,
    over,
    says:
      now === null
        ? `How large: ${measure.of}`
        : over
          ? `${withSymbol(figure(now - allowed, decimals), unit)} over what the book allows`
          : `Within the ${withSymbol(figure(allowed, decimals), unit)} that the book allows`,
  };
}

/** A rule of 50 mm is read to 1 mm, one of 5 to 0.1. */
const stepOf = (upTo: number): number => 10 ** (Math.floor(Math.log10(upTo)) - 1);

/** What was last written down of the same fault, to see whether it grew. */
export const lastOfFault = (state: AircraftState, check: string, fault: string): Discrepancy | undefined =>
  [...state.discrepancies.values()].findLast((found) => found.check === check && found.fault === fault);

/** "Right boot, outboard: split or torn, near the tip": where, the fault, and the person's own words. */
export function discrepancyWords(place: string, fault: Fault | undefined, own: string): string {
  const said = [fault === undefined ? "" : lower(fault.name), own.trim()]
    .filter((part) => part !== "")
    .join(", ");
  return said === "" ? "" : `${place}: ${said}`;
}

/** Discrepancies of this check that nobody has put right. */
export const openOfCheck = (state: AircraftState, check: Check): readonly Discrepancy[] =>
  [...state.discrepancies.values()].filter((found) => found.check === check.id && found.isOpen);
