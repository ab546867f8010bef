import type { Trend } from "@witnessmark/assess";
import { decimalsOf } from "@witnessmark/engine";
import { useMemo, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { clockTime, dayMonth } from "../../words/dates.ts";
import { figure } from "../../words/figures.ts";
import { rowsOf, type TableRow } from "./trend-rows.ts";

/** So many rows at once: ten years are shown a page at a time. */
const PAGE = 20;

/** Every reading behind a chart, latest first, with what began it anew. */
export function TrendTable({ open, trend }: { readonly open: OpenAircraft; readonly trend: Trend }) {
  const { book, state } = open;
  const [asked, setAsked] = useState(0);
  const rows = useMemo(() => rowsOf(book, state, trend), [book, state, trend]);
  const pages = Math.max(1, Math.ceil(rows.length / PAGE));
  const page = Math.min(asked, pages - 1);
  return (
    <section className="one-section trend-table">
      <h3 id="trend-readings">All readings</h3>
      <table aria-labelledby="trend-readings">
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">As read</th>
            <th scope="col">{trend.unit.symbol === "" ? "Value" : trend.unit.symbol}</th>
            <th scope="col">By</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(page * PAGE, (page + 1) * PAGE).map((row) => (
            <Row key={row.key} row={row} decimals={decimalsOf(trend.unit.step)} />
          ))}
        </tbody>
      </table>
      {pages === 1 ? null : (
        <nav className="trend-pages" aria-label="Pages of readings">
          <button type="button" className="button" disabled={page === 0} onClick={() => setAsked(page - 1)}>
            Later
          </button>
          <span aria-live="polite">
            Page {page + 1} of {pages}
          </span>
          <button
            type="button"
            className="button"
            disabled={page === pages - 1}
            onClick={() => setAsked(page + 1)}
          >
            Earlier
          </button>
        </nav>
      )}
    </section>
  );
}

function Row({ row, decimals }: { readonly row: TableRow; readonly decimals: number }) {
  if (row.kind === "restart") {
    return (
      <tr className="trend-began">
        <th scope="row">{dayText(row.at_ms)}</th>
        <td colSpan={3}>{row.words}: it begins anew</td>
      </tr>
    );
  }
  const shown = row.shown();
  return (
    <tr>
      <th scope="row">
        {dayText(row.at_ms)} <span>{clockTime(row.at_ms)}</span>
      </th>
      <td>{row.asRead}</td>
      <td>{shown === undefined ? "not known" : figure(shown, decimals)}</td>
      <td>{row.by}</td>
    </tr>
  );
}

function dayText(at_ms: number): string {
  const year = new Date(at_ms).getFullYear();
  return year === new Date().getFullYear() ? dayMonth(at_ms) : `${dayMonth(at_ms)} ${year}`;
}
