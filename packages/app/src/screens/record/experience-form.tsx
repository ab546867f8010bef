import { localDayOf } from "@witnessmark/assess";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { KeepRow, useKeptHere } from "../after/keep-and-undo.tsx";
import "../after/after.css";

/** What the pilot did on other aircraft that counts for their recency: this ledger cannot know it. */
export function ExperienceForm({ open }: { readonly open: OpenAircraft }) {
  const { registration, person, book } = open;
  const kept = useKeptHere(registration);
  const today = localDayOf(Date.now(), -new Date().getTimezoneOffset());
  const [on, setOn] = useState(today);
  const [counts, setCounts] = useState({ dayLandings: 0, nightLandings: 0, nightFullStop: 0, approaches: 0 });
  const [fault, setFault] = useState<string | null>(null);
  const faultOf = (): string | null => {
    if (on === "" || on > today) return "Say on which day it was; it cannot be still to come.";
    if (Object.values(counts).every((count) => count === 0)) return "Say how many of at least one of them.";
    if (counts.nightFullStop > counts.nightLandings)
      return "More full stops at night than landings at night: look at the figures.";
    return null;
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const wrong = faultOf();
    setFault(wrong);
    if (wrong !== null) return;
    const body = { person: person.id, on, ...counts, tailwheel: false, class: book.aircraft.type };
    await kept.keepAll([{ type: "experience.recorded", body }], `Kept for ${person.name}: ${on}.`);
  };
  const many = (name: keyof typeof counts, label: string) => (
    <label className="field">
      <span>{label}</span>
      <input
        type="number"
        inputMode="numeric"
        min={0}
        max={99}
        value={counts[name]}
        onChange={(event) =>
          setCounts({
            ...counts,
            [name]: Math.min(99, Math.max(0, Math.trunc(Number(event.target.value) || 0))),
          })
        }
      />
    </label>
  );
  return (
    <section className="one-section">
      <h3>Flown on another aircraft</h3>
      <form className="done-form" onSubmit={(event) => void send(event)} noValidate>
        <p className="record-small">
          Only what counts for this category, class and, where the rule asks for it, type. It counts for{" "}
          {person.name}.
        </p>
        <label className="field">
          <span>On</span>
          <input type="date" value={on} max={today} onChange={(event) => setOn(event.target.value)} />
        </label>
        <div className="after-pair">
          {many("dayLandings", "Landings by day")}
          {many("nightLandings", "Landings at night")}
          {many("nightFullStop", "Of those at night, to a full stop")}
          {many("approaches", "Instrument approaches")}
        </div>
        <KeepRow kept={kept} act="Keep it" fault={fault} />
      </form>
    </section>
  );
}
