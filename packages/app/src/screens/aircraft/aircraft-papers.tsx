import { type UNITS, withSymbol } from "@witnessmark/engine";
import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { saveFile } from "../../frame/save-file.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { shortDay } from "../../words/dates.ts";
import { figure, tally } from "../../words/figures.ts";
import { personText } from "../../words/people.ts";
import { BookFile } from "../add/add-aircraft.tsx";
import { CountersForm } from "../after/counters-form.tsx";
import { OlderEntries } from "../record/older-entries.tsx";
import { LedgerFile } from "./ledger-file.tsx";
import { PackFile } from "./pack-file.tsx";
import "../after/after.css";

/** What the book is and is fit for, its gauges, its next revision; the ledger; who and what wrote in it. */
export function AircraftPapers({ open }: { readonly open: OpenAircraft }) {
  const { book, state, entry } = open;
  return (
    <div className="papers">
      <section>
        <h2>{book.aircraft.type}</h2>
        <p className="notice">{book.notice}</p>
        <dl className="parts">
          <dt>Is a</dt>
          <dd>{book.aircraft.description}</dd>
          <dt>Book</dt>
          <dd>
            Revision {book.revision}, {shortDay(Date.parse(book.issued.on))}, {book.issued.by}
          </dd>
          <dt>Holds</dt>
          <dd>
            {tally(book.checks.length, "check")}, {tally(book.points.size, "point")},{" "}
            {tally(book.stances.length, "stance")}, {tally(book.groundGear.length, "item")} of ground gear
          </dd>
        </dl>
        <div className="row-of-buttons">
          <a className="button" href={href({ at: "learn", registration: open.registration })}>
            Learn this aircraft
          </a>
          <a className="button" href={href({ at: "paper", registration: open.registration })}>
            The walk on paper
          </a>
        </div>
      </section>
      <OpenDiscrepancies open={open} />
      {book.counters.length === 0 ? null : (
        <div className="after">
          <CountersForm open={open} />
        </div>
      )}
      <Gauges open={open} />
      <Revision open={open} />
      {entry.quarantined.length === 0 ? null : (
        <section>
          <h2>Kept apart</h2>
          <p>These entries were not taken into the ledger. They stay on this device.</p>
          <ul className="apart">
            {entry.quarantined.map(({ id, reason }) => (
              <li key={id}>
                <b>{reason}</b>
                <span>{id}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section>
        <h2>Its ledger</h2>
        <p>
          {tally(state.eventCount, "entry", "entries")}
          {entry.older === undefined ? "" : " here"},{" "}
          {entry.toSend === 0 ? "all on the server" : `${figure(entry.toSend)} to send`}.
          {state.unknown.length === 0
            ? ""
            : ` ${tally(state.unknown.length, "entry", "entries")} of a newer version: kept, not read.`}
        </p>
        <LedgerFile registration={open.registration} />
      </section>
      <OlderEntries open={open} as="h2" />
      <People open={open} />
      <PutAway open={open} />
    </div>
  );
}

function OpenDiscrepancies({ open }: { readonly open: OpenAircraft }) {
  const found = [...open.state.discrepancies.values()].filter(({ isOpen }) => isOpen);
  if (found.length === 0) return null;
  return (
    <section>
      <h2>Open discrepancies</h2>
      <ul className="apart">
        {found.map((each) => (
          <li key={each.id}>
            <Mark status="stop" size_px={24} />
            <b>{each.words}</b>
            <span>
              {shortDay(Date.parse(each.raised.recordedAt))}, {each.raised.author.name}
            </span>
          </li>
        ))}
      </ul>
      <a className="button" href={href({ at: "decide", registration: open.registration })}>
        Put right on Decide
      </a>
    </section>
  );
}

function Gauges({ open }: { readonly open: OpenAircraft }) {
  const gauges = [...open.book.gauges.values()];
  if (gauges.length === 0) return null;
  const text = (value: number, unit: keyof typeof UNITS) =>
    withSymbol(figure(value, String(value).split(".")[1]?.length ?? 0), unit);
  return (
    <section>
      <h2>Gauges</h2>
      <table className="gauges">
        <thead>
          <tr>
            <th scope="col">Gauge</th>
            <th scope="col">True to</th>
            <th scope="col">Read to</th>
          </tr>
        </thead>
        <tbody>
          {gauges.map((gauge) => (
            <tr key={gauge.id}>
              <th scope="row">{gauge.name}</th>
              <td>±{text(gauge.accuracy.value, gauge.accuracy.unit)}</td>
              <td>{text(gauge.resolution.value, gauge.resolution.unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Revision({ open }: { readonly open: OpenAircraft }) {
  const { state, book } = open;
  const [taken, setTaken] = useState<string | null>(null);
  const text = state.books.at(-1)?.text;
  const save = () => {
    if (text === undefined) return;
    saveFile(
      new Blob([text], { type: "text/yaml" }),
      `${open.registration.toLowerCase()}-rev-${book.revision}.yaml`,
    );
  };
  return (
    <section>
      <h2>Its book</h2>
      <a className="button filled tall full" href={href({ at: "book", registration: open.registration })}>
        Read or change it
      </a>
      <p>Decisions signed under an earlier revision keep it; a walk in hand is judged by the one in force.</p>
      {taken === null ? null : (
        <p className="taken" role="status">
          {taken}
        </p>
      )}
      <BookFile
        label="Choose a book file"
        onAdopted={(registration) => {
          if (registration === open.registration) setTaken("Taken. It is in force now.");
          else go({ at: "aircraft", registration });
        }}
      />
      <button type="button" className="button" onClick={save}>
        Save revision {book.revision} as text
      </button>
      {text === undefined ? null : <PackFile open={open} text={text} />}
      <a className="button" href={href({ at: "chart" })}>
        Tables from paper
      </a>
    </section>
  );
}

function People({ open }: { readonly open: OpenAircraft }) {
  const { state, snapshot } = open;
  const devices = [...state.devices.values()];
  return (
    <section>
      <h2>People and devices</h2>
      <p>
        {open.person.name} holds this device. {tally(snapshot.people.length, "person", "people")} known here.
      </p>
      <ul className="apart">
        {devices.map((device) => (
          <li key={device.device}>
            <b>{device.label}</b>
            <span>
              {device.key.kind === "none"
                ? `Signs without a key: ${device.key.why}`
                : "Signs with its own key"}
              . First seen {shortDay(Date.parse(device.recordedAt))}, {personText(device.author)}.
            </span>
          </li>
        ))}
      </ul>
      <a className="button" href={href({ at: "settings" })}>
        Hand it over
      </a>
    </section>
  );
}

function PutAway({ open }: { readonly open: OpenAircraft }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [why, setWhy] = useState<string | null>(null);
  const putAway = async () => {
    const kept = await keeping.keep(() =>
      keep.append(open.registration, [
        { type: "aircraft.archived", body: { why: (why ?? "").trim() || "Put away" } },
      ]),
    );
    if (kept) go({ at: "apron" });
  };
  return (
    <section>
      <h2>Put it away</h2>
      <p>It leaves the Apron; nothing of it is lost, and it can be fetched back.</p>
      {why === null ? (
        <button type="button" className="button" onClick={() => setWhy("")}>
          Put {open.registration} away
        </button>
      ) : (
        <>
          <label className="field">
            <span>Why</span>
            <input value={why} onChange={(event) => setWhy(event.target.value)} maxLength={200} />
          </label>
          <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
          <button type="button" className="button" aria-busy={keeping.busy} onClick={() => void putAway()}>
            Yes, put it away
          </button>
        </>
      )}
    </section>
  );
}
