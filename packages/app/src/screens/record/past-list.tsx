import type { AircraftState } from "@witnessmark/ledger";
import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href, type Route } from "../../routes/route.ts";
import { dayMonth } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";

interface PastRow {
  readonly key: string;
  readonly at_ms: number;
  readonly words: string;
  readonly tail: string;
  readonly to?: Exclude<Route, { at: "unknown" }>;
}

/** So many at once: ten years are shown a page at a time. */
const SHOWN = 20;

/** What was put in order for a state: ten years are thousands of rows, and the sheet is opened many times a day. */
const held = new WeakMap<AircraftState, readonly PastRow[]>();

function pastOf(registration: string, state: AircraftState): readonly PastRow[] {
  const rows = held.get(state) ?? rowsOf(registration, state);
  held.set(state, rows);
  return rows;
}

function rowsOf(registration: string, state: AircraftState): readonly PastRow[] {
  const decisions = state.decisions.map((decision): PastRow => {
    const { flight, answer, counts } = decision;
    const route = flight === null ? "" : `${flight.from} to ${flight.to}, `;
    const notClear = counts.stop + counts.caution + counts.open;
    return {
      key: decision.id,
      at_ms: Date.parse(decision.recordedAt),
      words: `${route}${answer === "go" ? "go" : "not going"}${notClear === 0 ? "" : `, ${tally(notClear, "thing")} not clear`}`,
      tail: decision.author.name,
      to: { at: "decision", registration, decision: decision.id },
    };
  });
  const closed = [...state.discrepancies.values()].flatMap((discrepancy): readonly PastRow[] => {
    const closing = discrepancy.closings.at(-1);
    if (closing === undefined || discrepancy.isOpen) return [];
    return [
      {
        key: discrepancy.id,
        at_ms: Date.parse(closing.recordedAt),
        words: discrepancy.words,
        tail: closing.how === "put-right" ? "put right" : "no fault",
        to: { at: "discrepancy", registration, discrepancy: discrepancy.id },
      },
    ];
  });
  const flown = state.flightsMade.map(
    (flight): PastRow => ({
      key: flight.id,
      at_ms: Date.parse(flight.landing),
      words: `${flight.from} to ${flight.to}`,
      tail: "flown",
    }),
  );
  return [...decisions, ...closed, ...flown].sort((a, b) => b.at_ms - a.at_ms);
}

/** Past decisions, flights and closed discrepancies, latest first. */
export function PastList({ open }: { readonly open: OpenAircraft }) {
  const { registration, state } = open;
  const [shown, setShown] = useState(SHOWN);
  const rows = pastOf(registration, state);
  return (
    <section id="record-past" className="past-list">
      <h2>
        Past <span>{rows.length}</span>
      </h2>
      {rows.length === 0 ? (
        <p className="record-none">Nothing yet: decisions, flights and what was put right will stand here.</p>
      ) : (
        <ul>
          {rows.slice(0, shown).map((row) => (
            <li key={row.key}>
              {row.to === undefined ? (
                <div>
                  <Words row={row} />
                </div>
              ) : (
                <a href={href(row.to)}>
                  <Words row={row} />
                </a>
              )}
            </li>
          ))}
        </ul>
      )}
      {rows.length > shown ? (
        <button type="button" className="group chevron" onClick={() => setShown(shown + 5 * SHOWN)}>
          <span>{rows.length - shown} earlier</span>
        </button>
      ) : null}
    </section>
  );
}

function Words({ row }: { readonly row: PastRow }) {
  const year = new Date(row.at_ms).getFullYear();
  return (
    <>
      <b>
        {dayMonth(row.at_ms)}
        {year === new Date().getFullYear() ? "" : ` ${year}`}
      </b>
      <span>{row.words}</span>
      <b>{row.tail}</b>
    </>
  );
}
