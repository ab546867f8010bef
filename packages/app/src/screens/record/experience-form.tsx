import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { CountFields, fullStopFault, nightFault } from "../after/count-fields.tsx";
import { KeepRow, useKeptHere } from "../after/keep-and-undo.tsx";
import { useTimed } from "./timed-now.ts";
import "../after/after.css";

const COUNTED = {
  dayLandings: "Landings by day",
  dayFullStop: "Of those by day, to a full stop",
  nightLandings: "Landings at night",
  nightFullStop: "Of those at night, to a full stop",
  approaches: "Instrument approaches",
} as const;
const NO_COUNTS = { dayLandings: 0, dayFullStop: 0, nightLandings: 0, nightFullStop: 0, approaches: 0 };

/** What the pilot did on other aircraft that counts for their recency: this ledger cannot know it. */
export function ExperienceForm({ open }: { readonly open: OpenAircraft }) {
  const { registration, person } = open;
  const kept = useKeptHere(registration);
  const { today } = useTimed(open);
  const [on, setOn] = useState("");
  const [kind, setKind] = useState("");
  const [tailwheel, setTailwheel] = useState(false);
  const [counts, setCounts] = useState(NO_COUNTS);
  const [fault, setFault] = useState<string | null>(null);
  const faultOf = (): string | null => {
    if (on === "" || on > today) return "Say on which day it was; it cannot be still to come.";
    if (kind.trim() === "")
      return "Say on what: the category and class, and the type where the rule asks for it.";
    if (Object.values(counts).every((count) => count === 0)) return "Say how many of at least one of them.";
    return (
      nightFault(counts.nightLandings, counts.nightFullStop) ??
      fullStopFault(counts.dayLandings, counts.dayFullStop)
    );
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const wrong = faultOf();
    setFault(wrong);
    if (wrong !== null) return;
    const body = { person: person.id, on, ...counts, tailwheel, class: kind.trim() };
    const done = await kept.keepAll(
      [{ type: "experience.recorded", body }],
      `Kept for ${person.name}: ${kind.trim()} on ${on}.`,
    );
    if (done) setCounts(NO_COUNTS); // a second tap is no second day
  };
  return (
    <section className="one-section">
      <h3>Flown on another aircraft</h3>
      <form className="done-form" onSubmit={(event) => void send(event)} noValidate>
        <p className="record-small">
          Only what the rule counts: its category and class, its type where it asks for that. It counts for{" "}
          {person.name}.
        </p>
        <label className="field">
          <span>On</span>
          <input type="date" value={on} max={today} onChange={(event) => setOn(event.target.value)} />
        </label>
        <label className="field">
          <span>Category and class, and type if need be</span>
          <input
            value={kind}
            onChange={(event) => setKind(event.target.value)}
            maxLength={120}
            autoComplete="off"
          />
        </label>
        <label className="after-replaced">
          <input
            type="checkbox"
            checked={tailwheel}
            onChange={(event) => setTailwheel(event.target.checked)}
          />
          <span>It has a tail-wheel</span>
        </label>
        <CountFields names={COUNTED} counts={counts} onCounts={setCounts} />
        <KeepRow kept={kept} act="Keep it" fault={fault} />
      </form>
    </section>
  );
}
