import { type Dimension, UNITS, type UnitId } from "@witnessmark/engine";
import type { Author } from "@witnessmark/ledger";
import { useState } from "react";
import { PlainTitle } from "../../frame/title-block.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { type Preferences, preferences } from "../../preferences/preferences.ts";
import { href } from "../../routes/route.ts";
import { clockTime, whenShort } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { keptOfAll } from "../../words/keeping.ts";
import { personText } from "../../words/people.ts";
import { PersonForm } from "../first-run/first-run.tsx";
import "./settings.css";

/** Theme, hand, units, who holds the phone, and what is kept where. */
export function Settings({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const chosen = preferences.use();
  const change = (part: Partial<Preferences>) => preferences.set({ ...chosen, ...part });
  return (
    <div className="frame">
      <PlainTitle title="Units and theme" kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      <main className="page settings">
        <section>
          <h2>Theme</h2>
          <Choices
            label="Theme"
            options={[
              ["day", "Day"],
              ["night", "Night"],
              ["auto", "As the device"],
            ]}
            chosen={chosen.theme}
            onChoose={(theme) => change({ theme })}
          />
        </section>
        <section>
          <h2>Hand that answers</h2>
          <Choices
            label="Hand"
            options={[
              ["right", "Right"],
              ["left", "Left, row mirrored"],
            ]}
            chosen={chosen.hand}
            onChoose={(hand) => change({ hand })}
          />
        </section>
        <Units chosen={chosen.units} onChange={(units) => change({ units })} />
        <section>
          <h2>Calculators</h2>
          <p>Every figure that is worked out here, by itself, with its working and its sources.</p>
          <a className="button" href={href({ at: "calculators" })}>
            All calculators
          </a>
        </section>
        <section>
          <h2>What the rules say</h2>
          <p>
            Papers, work on the aircraft, what does not work, ice and water: a rule's own questions, its steps
            and its text.
          </p>
          <a className="button" href={href({ at: "rules" })}>
            All questions
          </a>
        </section>
        <People people={snapshot.people} person={snapshot.person} />
        <Storage snapshot={snapshot} />
        <section>
          <h2>Witnessmark</h2>
          <p>
            It advises; the pilot in command decides. The approved flight manual, the rules where you fly and
            licensed mechanics come first.
          </p>
        </section>
      </main>
      <footer className="plain-foot">
        <a className="button full tall" href={href({ at: "apron" })}>
          Back to the Apron
        </a>
      </footer>
    </div>
  );
}

interface ChoicesProps<T extends string> {
  readonly label: string;
  readonly options: readonly (readonly [T, string])[];
  readonly chosen: T;
  readonly onChoose: (value: T) => void;
}

function Choices<T extends string>({ label, options, chosen, onChoose }: ChoicesProps<T>) {
  return (
    <fieldset className={`choices of-${options.length}`}>
      <legend className="out-of-sight">{label}</legend>
      {options.map(([value, name]) => (
        <button key={value} type="button" aria-pressed={value === chosen} onClick={() => onChoose(value)}>
          {name}
        </button>
      ))}
    </fieldset>
  );
}

/** The quantities that are read on a walk, and the units that their gauges come in. */
const READ_IN: readonly {
  readonly dimension: Dimension;
  readonly name: string;
  readonly units: readonly UnitId[];
}[] = [
  { dimension: "pressure", name: "Pressure", units: ["bar", "psi", "kPa", "hPa", "MPa", "inHg"] },
  { dimension: "temperature", name: "Temperature", units: ["degC", "degF", "K"] },
  { dimension: "length", name: "Length", units: ["mm", "cm", "in", "m", "ft"] },
  { dimension: "volume", name: "Volume", units: ["L", "USgal", "USqt", "impgal", "mL"] },
  { dimension: "mass", name: "Mass", units: ["kg", "lb"] },
];

function Units({
  chosen,
  onChange,
}: {
  readonly chosen: Preferences["units"];
  readonly onChange: (units: Preferences["units"]) => void;
}) {
  const choose = (dimension: Dimension, text: string) => {
    const rest = Object.fromEntries(Object.entries(chosen).filter(([key]) => key !== dimension));
    const unit = READ_IN.flatMap((row) => row.units).find((id) => id === text);
    onChange(unit === undefined ? rest : { ...rest, [dimension]: unit });
  };
  return (
    <section>
      <h2>Units</h2>
      <p>What you read off a gauge is kept in the unit you read it in. Limits are turned into it.</p>
      <div className="unit-rows">
        {READ_IN.map(({ dimension, name, units }) => (
          <label key={dimension} className="field">
            <span>{name}</span>
            <select
              value={chosen[dimension] ?? ""}
              onChange={(event) => choose(dimension, event.target.value)}
            >
              <option value="">As each gauge</option>
              {units.map((unit) => (
                <option key={unit} value={unit}>
                  {UNITS[unit].symbol}
                </option>
              ))}
            </select>
          </label>
        ))}
      </div>
    </section>
  );
}

function People({ people, person }: { readonly people: readonly Author[]; readonly person: Author | null }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [adding, setAdding] = useState(false);
  return (
    <section>
      <h2>Who holds this</h2>
      <ul className="people">
        {people.map((each) => (
          <li key={each.id}>
            <button
              type="button"
              aria-pressed={each.id === person?.id}
              onClick={() => void keeping.keep(() => keep.choosePerson(each.id))}
            >
              <b>{each.name}</b>
              <span>{personText(each).slice(each.name.length + 2)}</span>
            </button>
          </li>
        ))}
      </ul>
      <Trouble words={keeping.trouble} />
      {adding ? (
        <PersonForm submit="Add and hand over" onDone={() => setAdding(false)} />
      ) : (
        <button type="button" className="button" onClick={() => setAdding(true)}>
          Someone else
        </button>
      )}
    </section>
  );
}

function Storage({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [refused, setRefused] = useState(false);
  const { status } = snapshot;
  const waiting = [...snapshot.aircraft.values()].filter((entry) => entry.toSend > 0);
  const ask = () => void keeping.keep(async () => setRefused(!(await keep.askToPersist())));
  return (
    <section>
      <h2>What is kept where</h2>
      <dl className="parts">
        <dt>Here</dt>
        <dd>
          {status.persisted === true
            ? "Everything is kept. The browser promised not to clear it."
            : "Everything is kept. The browser may clear it when the device runs out of room."}
        </dd>
        <dt>Server</dt>
        <dd>{serverText(snapshot)}</dd>
        <dt>To send</dt>
        <dd>
          {waiting.length === 0
            ? "Nothing. All of it is on the server."
            : waiting
                .map((entry) => `${entry.registration}: ${tally(entry.toSend, "entry", "entries")}`)
                .join(", ")}
          {status.photosToSend > 0 ? `. ${tally(status.photosToSend, "photo")} wait too.` : ""}
        </dd>
        {status.clockOffset_ms !== null && Math.abs(status.clockOffset_ms) > 120_000 ? (
          <>
            <dt>Clock</dt>
            <dd>
              This clock is {tally(Math.round(Math.abs(status.clockOffset_ms) / 60_000), "minute")}{" "}
              {status.clockOffset_ms > 0 ? "ahead of" : "behind"} the server. Set it; every entry carries its
              time.
            </dd>
          </>
        ) : null}
      </dl>
      {refused ? <p>The browser did not promise it. Adding the app to the home screen helps.</p> : null}
      <Trouble words={keeping.trouble ?? status.trouble} />
      <div className="row-of-buttons">
        {status.persisted === true ? null : (
          <button type="button" className="button" onClick={ask}>
            Ask it to keep all
          </button>
        )}
        <button
          type="button"
          className="button"
          aria-busy={keeping.busy}
          onClick={() => void keeping.keep(() => keep.exchange())}
        >
          Send and fetch now
        </button>
      </div>
    </section>
  );
}

function serverText({ status }: KeepSnapshot): string {
  if (status.server === "never-reached" || status.lastReachedAt_ms === null)
    return "Not reached from here yet.";
  const when = whenShort(status.lastReachedAt_ms, Date.now());
  return status.server === "reached"
    ? `Reached at ${clockTime(status.lastReachedAt_ms)}.`
    : `Out of reach. Last reached ${when}.`;
}
