import type { Book } from "@witnessmark/book";
import { fromSI, toSI, UNITS, withSymbol } from "@witnessmark/engine";
import type { Discrepancy } from "@witnessmark/ledger";
import { TwoPartRule } from "../../instruments/two-part-rule.tsx";
import { dayMonth } from "../../words/dates.ts";
import { figure } from "../../words/figures.ts";

/** How large it was, and is, against what the book allows; nothing where it was never measured. */
export function Growth({ book, discrepancy }: { readonly book: Book; readonly discrepancy: Discrepancy }) {
  const check = discrepancy.check === undefined ? undefined : book.checksById.get(discrepancy.check);
  const measure = check?.faults.find(({ id }) => id === discrepancy.fault)?.measure;
  const now = discrepancy.measurements.at(-1);
  if (measure === undefined || now === undefined) return null;
  const { unit } = measure.upTo;
  if (UNITS[now.measured.unit].dimension !== UNITS[unit].dimension) return null;
  const first = discrepancy.measurements[0];
  const inUnit = (read: typeof now.measured) => fromSI(toSI(read.value, read.unit), unit);
  const allowed = fromSI(measure.allowed.valueSI, unit);
  const value = inUnit(now.measured);
  const before = first === undefined || first === now ? undefined : inUnit(first.measured);
  const when = first === undefined ? "" : dayMonth(Date.parse(first.recordedAt));
  const label = `${measure.of}: ${before === undefined ? "" : `${withSymbol(figure(before), unit)} on ${when}, `}${withSymbol(figure(value), unit)} now, ${withSymbol(figure(allowed), unit)} allowed`;
  return (
    <div className="growth">
      <TwoPartRule
        values={{
          min: 0,
          max: Math.max(measure.upTo.value, value),
          high: allowed,
          now: value,
          ...(before === undefined ? {} : { last: before }),
        }}
        texts={{
          high: `${withSymbol(figure(allowed), unit)} allowed`,
          ...(before === undefined ? {} : { last: when }),
        }}
        step={1}
        outside={value > allowed}
        label={label}
        valueText={withSymbol(figure(value), unit)}
      />
    </div>
  );
}
