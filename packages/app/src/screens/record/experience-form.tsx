import { CLASS_WORDS, classOfBook } from "@witnessmark/assess";
import { AIRCRAFT_CLASSES, type AircraftClass } from "@witnessmark/book";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { capital } from "../../words/capital.ts";
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

/** As the rules of recency read it: `single-engine piston, land, Skerry 460T`. */
const kindWords = (kind: AircraftClass, engine: "piston" | "turboprop", type: string): string =>
  [
    kind === "glider" || kind === "touring-motor-glider"
      ? CLASS_WORDS[kind]
      : CLASS_WORDS[kind].replace("-engine,", `-engine ${engine},`),
    ...(type.trim() === "" ? [] : [type.trim()]),
  ].join(", ");

/** What the pilot did on other aircraft that counts for their recency: this ledger cannot know it. */
export function ExperienceForm({ open }: { readonly open: OpenAircraft }) {
  const { registration, person } = open;
  const kept = useKeptHere(registration);
  const { today } = useTimed(open);
  const [on, setOn] = useState("");
  const [kind, setKind] = useState<AircraftClass>(() => classOfBook(open.book));
  const [engine, setEngine] = useState<"piston" | "turboprop">(() =>
    open.book.aircraft.engine === "turboprop" ? "turboprop" : "piston",
  );
  const [type, setType] = useState("");
  const [tailwheel, setTailwheel] = useState(false);
  const [counts, setCounts] = useState(NO_COUNTS);
  const [fault, setFault] = useState<string | null>(null);
  const faultOf = (): string | null => {
    if (on === "" || on > today) return "Say on which day it was; it cannot be still to come.";
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
    const words = kindWords(kind, engine, type);
    const body = { person: person.id, on, ...counts, tailwheel, class: words };
    const done = await kept.keepAll(
      [{ type: "experience.recorded", body }],
      `Kept for ${person.name}: ${words} on ${on}.`,
    );
    if (done) setCounts(NO_COUNTS); // a second tap is no second day
  };
  return (
    <section className="one-section">
      <h3>Flown on another aircraft</h3>
      <form className="done-form" onSubmit={(event) => void send(event)} noValidate>
        <p className="record-small">
          It counts for {person.name} where the rule asks for the same category and class, and its type where
          a rating is asked; what is not the same is kept and not counted here.
        </p>
        <label className="field">
          <span>On</span>
          <input type="date" value={on} max={today} onChange={(event) => setOn(event.target.value)} />
        </label>
        <label className="field">
          <span>Category and class</span>
          <select
            value={kind}
            onChange={(event) =>
              setKind(AIRCRAFT_CLASSES.find((each) => each === event.target.value) ?? kind)
            }
          >
            {AIRCRAFT_CLASSES.map((each) => (
              <option key={each} value={each}>
                {capital(CLASS_WORDS[each])}
              </option>
            ))}
          </select>
        </label>
        {kind === "glider" || kind === "touring-motor-glider" ? null : (
          <label className="field">
            <span>Engine</span>
            <select
              value={engine}
              onChange={(event) => setEngine(event.target.value === "turboprop" ? "turboprop" : "piston")}
            >
              <option value="piston">Piston</option>
              <option value="turboprop">Turboprop</option>
            </select>
          </label>
        )}
        <label className="field">
          <span>Type, where a rating is asked for it</span>
          <input
            value={type}
            onChange={(event) => setType(event.target.value)}
            maxLength={80}
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
