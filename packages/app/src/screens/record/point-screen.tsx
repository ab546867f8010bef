import { useMemo, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { PhotoStrip } from "../../frame/photo-strip.tsx";
import { href } from "../../routes/route.ts";
import { clockTime, dayMonth } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { OlderEntries } from "./older-entries.tsx";
import { type PointLine, pastOfPoint } from "./point-past.ts";
import "./record.css";
import "./point.css";

/** So many at once: ten years are shown a page at a time. */
const SHOWN = 20;

interface PointScreenProps {
  readonly open: OpenAircraft;
  readonly id: string;
}

/** What is on the record of one point: results, readings, photos and faults, and who said so. */
export function PointScreen({ open, id }: PointScreenProps) {
  const { book, state, registration } = open;
  const [shown, setShown] = useState(SHOWN);
  const point = book.points.get(id);
  const lines = useMemo(() => pastOfPoint(book, state, id), [book, state, id]);
  const checks = book.checks.filter((check) => check.point === id);
  return (
    <AircraftFrame open={open} sheet="record" title="Record" under="One point" className="record">
      <main className="record-one">
        <a className="back-row" href={href({ at: "record", registration, part: "past" })}>
          Back to the past
        </a>
        <section className="one-section">
          <h2>{point?.name ?? "No such point"}</h2>
          {point === undefined ? (
            <p className="record-none">
              The book of {registration} has no point “{id}” in this revision.
            </p>
          ) : (
            <ul className="point-checks">
              {checks.map((check) => (
                <li key={check.id}>
                  <a href={href({ at: "walk", registration, step: { kind: "check", id: check.id } })}>
                    <b>{check.title}</b>
                    <span>{check.shouldBe}</span>
                  </a>
                  {check.reading === undefined ? null : (
                    <a className="quiet" href={href({ at: "trend", registration, trend: check.id })}>
                      Has it moved?
                    </a>
                  )}
                </li>
              ))}
            </ul>
          )}
        </section>
        <section className="one-section">
          <h3>What is on its record</h3>
          {lines.length === 0 ? (
            <p className="record-none">Nothing yet. The first walk that comes by it begins its past.</p>
          ) : (
            <ol className="life">
              {lines.slice(0, shown).map((line) => (
                <Line key={line.key} line={line} registration={registration} isOne={checks.length === 1} />
              ))}
            </ol>
          )}
          {lines.length <= shown ? null : (
            <button type="button" className="button full" onClick={() => setShown(shown + SHOWN)}>
              Earlier: {tally(lines.length - shown, "more entry", "more entries")}
            </button>
          )}
        </section>
        <OlderEntries open={open} />
      </main>
    </AircraftFrame>
  );
}

interface LineProps {
  readonly line: PointLine;
  readonly registration: string;
  /** The point has one check: its title need not be said again with each line. */
  readonly isOne: boolean;
}

function Line({ line, registration, isOne }: LineProps) {
  const { discrepancy, photo } = line;
  return (
    <li>
      <b>
        {dayText(line.at_ms)}, {clockTime(line.at_ms)}
      </b>
      <span>{line.who}</span>
      <p>
        {discrepancy === undefined && isOne ? null : `${line.title}: `}
        {discrepancy === undefined ? (
          line.words
        ) : (
          <a href={href({ at: "discrepancy", registration, discrepancy })}>{line.words}</a>
        )}
      </p>
      {photo === undefined ? null : <PhotoStrip photos={[photo]} about={line.title} />}
    </li>
  );
}

function dayText(at_ms: number): string {
  const year = new Date(at_ms).getFullYear();
  return year === new Date().getFullYear() ? dayMonth(at_ms) : `${dayMonth(at_ms)} ${year}`;
}
