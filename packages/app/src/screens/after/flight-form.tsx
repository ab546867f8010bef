import { newId } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { clockTime, fieldTime, isoWithOffset, lasting, momentOfField } from "../../words/dates.ts";
import { KeepRow, useKeptHere } from "./keep-and-undo.tsx";

const HOUR_MS = 3_600_000;
/** No flight of these aircraft is longer; a longer one is a slip in the date. */
const LONGEST_MS = 24 * HOUR_MS;

/** The flight as it was made: it counts for the pilot's recency, and says that the aircraft has flown. */
export function FlightForm({ open }: { readonly open: OpenAircraft }) {
  const { registration, flight, person, state } = open;
  const kept = useKeptHere(registration);
  const [opened_ms] = useState(() => Date.now());
  const [from, setFrom] = useState(flight?.from ?? state.flightsMade.at(-1)?.to ?? "");
  const [to, setTo] = useState(flight?.to ?? "");
  const [off, setOff] = useState(() => fieldTime(opened_ms - HOUR_MS));
  const [on, setOn] = useState(() => fieldTime(opened_ms));
  const [counts, setCounts] = useState({ day: 1, night: 0, nightFullStop: 0, approaches: 0 });
  const [words, setWords] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const off_ms = momentOfField(off);
  const on_ms = momentOfField(on);
  const faultOf = (): string | null => {
    if (from.trim() === "" || to.trim() === "") return "Say from where it went, and to where.";
    if (off_ms === null || on_ms === null) return "Say when it took off and when it landed.";
    if (on_ms <= off_ms) return "It landed before it took off: look at the day and the time.";
    if (on_ms - off_ms > LONGEST_MS) return "That is longer than a day: look at the day of each.";
    if (on_ms > Date.now() + 60_000) return "The landing is still to come.";
    if (counts.day + counts.night === 0) return "A flight has one landing at least.";
    if (counts.nightFullStop > counts.night)
      return "More full stops at night than landings at night: look at the figures.";
    return null;
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const wrong = faultOf();
    setFault(wrong);
    if (wrong !== null || off_ms === null || on_ms === null) return;
    const { approaches, ...landings } = counts;
    await kept.keepAll(
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
            pilot: person.id,
            ...(words.trim() === "" ? {} : { words: words.trim() }),
          },
        },
        { type: "happening.recorded", body: { happening: "flown", at: isoWithOffset(on_ms) } },
      ],
      `Kept: ${from.trim()} to ${to.trim()}, landed ${clockTime(on_ms)}, ${lasting(on_ms - off_ms)}.`,
    );
  };
  const many = (name: keyof typeof counts, label: string) => (
    <label className="field">
      <span>{label}</span>
      <input
        type="number"
        inputMode="numeric"
        min={0}
        max={99}
        step={1}
        value={counts[name]}
        onChange={(event) => setCounts({ ...counts, [name]: whole(event.target.value) })}
      />
    </label>
  );
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
        <div className="after-pair">
          {many("day", "Landings by day")}
          {many("night", "Landings at night")}
          {many("nightFullStop", "Of those at night, to a full stop")}
          {many("approaches", "Instrument approaches")}
        </div>
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

const whole = (text: string): number => Math.min(99, Math.max(0, Math.trunc(Number(text) || 0)));
