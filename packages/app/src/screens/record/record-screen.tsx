import { BADNESS } from "@witnessmark/assess";
import type { Discrepancy } from "@witnessmark/ledger";
import { useEffect, useMemo, useRef } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href, type RecordPart } from "../../routes/route.ts";
import { figure } from "../../words/figures.ts";
import { Discrepancies } from "./discrepancies.tsx";
import { OlderEntries } from "./older-entries.tsx";
import { PastList } from "./past-list.tsx";
import { SaveFiles } from "./save-files.tsx";
import { Trends } from "./trends.tsx";
import { useAfterPaint } from "./use-after-paint.ts";
import { WhatRunsOut } from "./what-runs-out.tsx";
import "./record.css";

interface RecordScreenProps {
  readonly open: OpenAircraft;
  readonly part: RecordPart | undefined;
}

const PARTS = [
  { part: undefined, name: "Discrepancies" },
  { part: "timed", name: "Timed" },
  { part: "trends", name: "Trends" },
  { part: "past", name: "Past" },
] as const;

/** What is known of the aircraft beyond this walk: discrepancies, what runs out, what was decided. */
export function RecordScreen({ open, part }: RecordScreenProps) {
  const { registration, state, book } = open;
  const main = useRef<HTMLElement>(null);
  const found = useMemo(() => worstFirst(state, open.assessment), [state, open.assessment]);
  const whole = useAfterPaint(part !== undefined);
  const lookedAt = useRef<RecordPart | undefined>(undefined);
  useEffect(() => {
    if (part !== undefined) main.current?.querySelector(`#record-${part}`)?.scrollIntoView();
    // a sheet that was just opened is at its top, and to ask for it would lay the page out before it is painted
    else if (lookedAt.current !== undefined) main.current?.scrollTo?.(0, 0);
    lookedAt.current = part;
  }, [part]);
  return (
    <AircraftFrame open={open} sheet="record" title="Record" under={flownText(open)} className="record">
      <nav className="record-parts" aria-label="Parts of the record">
        {PARTS.map(({ part: to, name }) => (
          <a
            key={name}
            href={href({ at: "record", registration, ...(to === undefined ? {} : { part: to }) })}
            aria-current={to === part ? "true" : undefined}
          >
            {name}
            {to === undefined && found.length > 0 ? ` ${found.length}` : null}
          </a>
        ))}
      </nav>
      <main ref={main} className="record-main">
        <div>
          <Discrepancies open={open} found={found} whole={whole} />
        </div>
        <div>
          <WhatRunsOut open={open} whole={whole} />
          {whole ? (
            <>
              <Trends open={open} />
              <PastList open={open} />
              <OlderEntries open={open} />
              <SaveFiles open={open} />
              <a className="record-book" href={href({ at: "aircraft", registration })}>
                <b>The aircraft and its book</b>
                <span>Revision {book.revision}, gauges, ledger, people</span>
              </a>
            </>
          ) : null}
        </div>
      </main>
      <footer className="record-foot">
        <a
          className="button filled tall full"
          href={href({ at: "discrepancy", registration, discrepancy: "new" })}
        >
          Write down a discrepancy
        </a>
      </footer>
    </AircraftFrame>
  );
}

/** The open ones: what stops, then what warns, then what is let pass; among equals as they were raised. */
function worstFirst(state: OpenAircraft["state"], { verdicts }: OpenAircraft["assessment"]) {
  const statuses = new Map(verdicts.map(({ id, status }) => [id, status]));
  const badness = ({ id }: Discrepancy) => BADNESS[statuses.get(`discrepancy:${id}`) ?? "stop"];
  return [...state.discrepancies.values()]
    .filter(({ isOpen }) => isOpen)
    .sort((a, b) => badness(a) - badness(b));
}

/** `1,284.6 h flown`: what the first counter of the airframe's hours shows. */
function flownText({ book, state }: OpenAircraft): string {
  const hours = book.counters.find(({ of, unit }) => of === "airframe" && unit === "h");
  const total = hours === undefined ? undefined : state.counters.get(hours.id)?.at(-1)?.total;
  return total === undefined ? "Hours not written down" : `${figure(total, 1)} h flown`;
}
