import { TREND_SOURCES, type Trend, valueText } from "@witnessmark/assess";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { useMinute } from "../../preferences/clock.ts";
import { href } from "../../routes/route.ts";
import { TrendChart } from "./trend-chart.tsx";
import { addressOf, useTrends } from "./trend-hand.ts";
import { TrendTable } from "./trend-table.tsx";
import "./record.css";
import "./trends.css";

interface TrendScreenProps {
  readonly open: OpenAircraft;
  /** The check of the series, or its own name where it has none. */
  readonly id: string;
}

/** One series: its chart, what it says and how sure that is, and every reading behind it. */
export function TrendScreen({ open, id }: TrendScreenProps) {
  const trends = useTrends(open);
  const trend = trends?.find((each) => addressOf(each) === id);
  return (
    <AircraftFrame open={open} sheet="record" title="Record" under="Has it moved?" className="record">
      <main className="record-one">
        <a
          className="back-row"
          href={href({ at: "record", registration: open.registration, part: "trends" })}
        >
          Back to the trends
        </a>
        {trends === null ? (
          <p className="record-none">Comparing every reading with those before it.</p>
        ) : trend === undefined ? (
          <p className="record-none">
            {open.book.checksById.has(id)
              ? "No reading of this check can be compared: none was taken yet, or it is a count, or fuel and load that each flight changes."
              : `Nothing of this name is followed for ${open.registration}.`}
          </p>
        ) : (
          <One open={open} trend={trend} />
        )}
      </main>
    </AircraftFrame>
  );
}

function One({ open, trend }: { readonly open: OpenAircraft; readonly trend: Trend }) {
  const now_ms = useMinute() * 60_000;
  const last = trend.points.at(-1);
  return (
    <>
      <div className={`one-head timed-head trend-head row-${trend.status}`}>
        <div>
          <span className="discrepancy-head">
            <Mark status={trend.status} size_px={28} />
            <h2>{trend.title}</h2>
            <b className={trend.status}>{last === undefined ? "" : valueText(last.shown, trend.unit)}</b>
          </span>
          <p>{trend.sentence}</p>
          <p className="record-small">
            {trend.quantity}
            {trend.unit.symbol === "" ? "" : `, ${trend.unit.symbol}`}
          </p>
        </div>
      </div>
      {last === undefined ? null : <TrendChart trend={trend} now_ms={now_ms} />}
      {trend.fit.kind === "too-few" ? null : (
        <ul className="trend-legend" aria-label="What the chart shows">
          <li>
            <i className="legend-line" aria-hidden="true" /> the line they follow
          </li>
          <li>
            <i className="legend-band" aria-hidden="true" /> where 95 of 100 readings belong
          </li>
          <li>
            <i className="legend-hatch" aria-hidden="true" /> past the limit
          </li>
          {trend.fit.odd.length === 0 ? null : (
            <li>
              <i className="legend-odd" aria-hidden="true" /> odd, left out of the line
            </li>
          )}
        </ul>
      )}
      <section className="one-section">
        <h3>How sure that is</h3>
        {trend.more.map((line) => (
          <p key={line} className="trend-more">
            {line}
          </p>
        ))}
        <p className="record-small">
          By {TREND_SOURCES.map(({ title, locator }) => `${title} (${locator})`).join("; ")}.
        </p>
        {trend.check === undefined ? null : (
          <a
            className="trend-check"
            href={href({ at: "aircraft", registration: open.registration, check: trend.check })}
          >
            The check and its limits in the book
          </a>
        )}
      </section>
      <TrendTable open={open} trend={trend} />
    </>
  );
}
