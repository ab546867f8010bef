import { newId } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { clockTime, isoWithOffset, lasting, momentOfField } from "../../words/dates.ts";
import { CountFields, fullStopFault, nightFault } from "./count-fields.tsx";
import { KeepRow, useKeptHere } from "./keep-and-undo.tsx";

/** No flight of these aircraft is longer; a longer one is a slip in the date. */
const LONGEST_MS = 24 * 3_600_000;
/** Clocks differ by less. */
const CLOCKS_MS = 60_000;

const COUNTED = {
  day: "Landings by day",
  night: "Landings at night",
  nightFullStop: "Of those at night, to a full stop",
  approaches: "Instrument approaches",
} as const;
/** With a tail-wheel it counts by day too whether a landing was to a full stop. */
const COUNTED_TAILWHEEL = {
  day: "Landings by day",
  dayFullStop: "Of those by day, to a full stop",
  night: COUNTED.night,
  nightFullStop: COUNTED.nightFullStop,
  approaches: COUNTED.approaches,
} as const;
const NO_COUNTS = { day: 0, dayFullStop: 0, night: 0, nightFullStop: 0, approaches: 0 };

/** The flight as it was made: it counts for its pilot's recency, and says that the aircraft has flown. */
export function FlightForm({ open }: { readonly open: OpenAircraft }) {
  const { registration, flight, person, snapshot } = open;
  const kept = useKeptHere(registration);
  const isTailwheel = open.book.aircraft.gear === "tail-wheel";
  const [from, setFrom] = useState(flight?.from ?? "");
  const [to, setTo] = useState(flight?.to ?? "");
  // no time is put in before it is known: what stands there already is kept unread
  const [off, setOff] = useState("");
  const [on, setOn] = useState("");
  const [counts, setCounts] = useState(NO_COUNTS);
  const [pilot, setPilot] = useState(
    person.role === "pilot" || person.role === "instructor" ? person.id : "",
  );
  const [words, setWords] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const off_ms = momentOfField(off);
  const on_ms = momentOfField(on);
  const faultOf = (): string | null => {
    if (from.trim() === "" || to.trim() === "") return "Say from where it went, and to where.";
    if (off_ms === null || on_ms === null) return "Say when it took off and when it landed.";
    if (on_ms <= off_ms) return "It landed before it took off: look at the day and the time.";
    if (on_ms - off_ms > LONGEST_MS) return "That is longer than a day: look at the day of each.";
    if (on_ms > Date.now() + CLOCKS_MS) return "The landing is still to come.";
    if (counts.day + counts.night === 0)
      return "A flight has one landing at least: say how many, by day or night.";
    return (
      nightFault(counts.night, counts.nightFullStop) ??
      (isTailwheel ? fullStopFault(counts.day, counts.dayFullStop) : null)
    );
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const wrong = faultOf();
    setFault(wrong);
    if (wrong !== null || off_ms === null || on_ms === null) return;
    const { approaches, dayFullStop, ...of } = counts;
    const landings = { ...of, ...(isTailwheel ? { dayFullStop } : {}) };
    const done = await kept.keepAll(
      [
        {
          type: "flight.made",
          body: {
            made: newId(),
            ...(flight?.id === undefined ? {} : { flight: flight.id }),
            from: from.trim(),
            to: to.trim(),
            takeOff: isoWithOffset(off_ms),
            landing: isoWithOffset(on_ms),
            landings,
            approaches,
            ...(pilot === "" ? {} : { pilot }),
            ...(words.trim() === "" ? {} : { words: words.trim() }),
          },
        },
        { type: "happening.recorded", body: { happening: "flown", at: isoWithOffset(on_ms) } },
      ],
      `Kept: ${from.trim()} to ${to.trim()}, landed ${clockTime(on_ms)}, ${lasting(on_ms - off_ms)}.`,
    );
    if (!done) return;
    // a second tap is no second flight
    setFrom(to.trim());
    setTo("");
    setOff("");
    setOn("");
    setCounts(NO_COUNTS);
    setWords("");
  };
  return (
    <section>
      <h2>The flight</h2>
      <form className="after-form" onSubmit={(event) => void send(event)} noValidate>
        <div className="after-pair">
          <label className="field">
            <span>From</span>
            <input
              value={from}
              onChange={(event) => setFrom(event.target.value)}
              maxLength={60}
              autoComplete="off"
            />
          </label>
          <label className="field">
            <span>To</span>
            <input
              value={to}
              onChange={(event) => setTo(event.target.value)}
              maxLength={60}
              autoComplete="off"
            />
          </label>
        </div>
        <label className="field">
          <span>Took off, local</span>
          <input type="datetime-local" value={off} onChange={(event) => setOff(event.target.value)} />
        </label>
        <label className="field">
          <span>Landed, local</span>
          <input type="datetime-local" value={on} onChange={(event) => setOn(event.target.value)} />
        </label>
        <label className="field">
          <span>Pilot whose landings they are</span>
          <select value={pilot} onChange={(event) => setPilot(event.target.value)}>
            <option value="">Nobody on this phone</option>
            {snapshot.people.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <CountFields
          names={isTailwheel ? COUNTED_TAILWHEEL : COUNTED}
          counts={counts}
          onCounts={(next) => setCounts({ ...counts, ...next })}
        />
        <label className="field">
          <span>In your words, for the next who walks it</span>
          <textarea
            value={words}
            onChange={(event) => setWords(event.target.value)}
            rows={2}
            maxLength={400}
          />
        </label>
        <KeepRow kept={kept} act="Keep the flight" fault={fault} />
      </form>
    </section>
  );
}
