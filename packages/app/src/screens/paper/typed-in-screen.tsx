import { UNITS } from "@witnessmark/engine";
import { useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { preferences } from "../../preferences/preferences.ts";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { useWalkPlan } from "../../walk/order/use-walk-plan.ts";
import { tally } from "../../words/figures.ts";
import { FieldWrong } from "./field-wrong.tsx";
import { type TypedFault, type TypedStep, type TypedWalk, typedIn } from "./typed-in.ts";
import { TypedRow } from "./typed-row.tsx";
import { EMPTY_WALK, typedWalks } from "./typed-store.ts";
import { WalkKindField } from "./walk-kind-field.tsx";
import "../walk/left.css";
import "./paper.css";

/** A walk that was made on paper, typed in on one screen and kept all at once. */
export function TypedInScreen({ open }: { readonly open: OpenAircraft }) {
  const { registration, book } = open;
  const keep = useKeep();
  const keeping = useKeeping();
  const typed = typedWalks.use()[registration] ?? EMPTY_WALK;
  const [faults, setFaults] = useState<readonly TypedFault[]>([]);
  const plan = useWalkPlan(open, typed.kind);
  const unit = preferences.get().units.temperature ?? "degC";
  const change = (next: Partial<TypedWalk>) =>
    typedWalks.set({ ...typedWalks.get(), [registration]: { ...typed, ...next } });
  const changeStep = (id: string, step: TypedStep) => {
    setFaults((before) => before.filter(({ at }) => at !== id));
    change({ steps: { ...typed.steps, [id]: step } });
  };
  const faultAt = (at: string) => faults.find((fault) => fault.at === at)?.says;
  const answered = Object.values(typed.steps).filter(({ answer }) => answer !== undefined).length;
  const send = async () => {
    const result = typedIn(typed, book, plan, { now_ms: Date.now(), temperatureUnit: unit });
    setFaults(result.ok ? [] : result.faults);
    if (!result.ok) {
      document.getElementById(`typed-${result.faults[0]?.at}`)?.scrollIntoView({ block: "center" });
      return;
    }
    if (await keeping.keep(() => keep.append(registration, result.drafts))) {
      const { [registration]: _kept, ...others } = typedWalks.get();
      typedWalks.set(others);
      go({ at: "decide", registration });
    }
  };
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="From paper">
      <main className="left-list typed-in">
        <a className="back-row" href={href({ at: "paper", registration })}>
          Back to the walk on paper
        </a>
        <section className="typed-head">
          <p>
            What was seen counts from when the paper was begun: what has happened since then, or what has
            grown too old, asks for another look. What is left out stays open. Litres written beside a look
            that asks for no reading are said on Load.
          </p>
          <WalkKindField kind={typed.kind} onKind={(kind) => change({ kind, steps: {} })} />
          <TimeField
            name="begun"
            label="Begun, local"
            typed={typed}
            fault={faultAt("begun")}
            onChange={change}
          />
          <TimeField
            name="ended"
            label="Ended, local"
            typed={typed}
            fault={faultAt("ended")}
            onChange={change}
          />
          <label className="field" id="typed-temperature">
            <span>Temperature of what stood outside, {UNITS[unit].symbol}</span>
            <input
              value={typed.temperature}
              placeholder="as written on the paper"
              maxLength={20}
              autoComplete="off"
              aria-invalid={faultAt("temperature") !== undefined}
              onChange={(event) => change({ temperature: event.target.value })}
            />
            <FieldWrong says={faultAt("temperature")} />
          </label>
        </section>
        {plan.stops.map((stop) => {
          const unanswered = stop.steps.filter(
            (step) =>
              step.kind === "check" &&
              step.check.reading === undefined &&
              typed.steps[step.id]?.answer === undefined,
          );
          return (
            <section key={stop.stance.id} className="typed-stop">
              <h2>
                <b>{stop.number}</b> {stop.stance.name}
              </h2>
              {stop.steps.map((step) => (
                <TypedRow
                  key={step.id}
                  step={step}
                  book={book}
                  kind={typed.kind}
                  typed={typed.steps[step.id] ?? {}}
                  fault={faultAt(step.id)}
                  onChange={(next) => changeStep(step.id, next)}
                />
              ))}
              {unanswered.length < 2 ? null : (
                <button
                  type="button"
                  className="button full"
                  onClick={() =>
                    change({
                      steps: {
                        ...typed.steps,
                        ...Object.fromEntries(
                          unanswered.map(({ id }) => [id, { answer: "as-it-should-be" as const }]),
                        ),
                      },
                    })
                  }
                >
                  The other {unanswered.length} at stance {stop.number}: as they should be
                </button>
              )}
            </section>
          );
        })}
        <section className="left-finish" id="typed-steps">
          <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
          {faults.length === 0 ? null : (
            <p className="trouble" role="alert">
              {faultAt("steps") ??
                `Not kept yet. ${tally(faults.length, "place")} to mend, the first is shown.`}
            </p>
          )}
          <button
            type="button"
            className="button filled tall full"
            aria-busy={keeping.busy}
            onClick={() => void send()}
          >
            Keep it: {answered} of {plan.stepCount} answered
          </button>
          {answered === 0 ? null : (
            <button type="button" className="button full" onClick={() => change(EMPTY_WALK)}>
              Begin anew
            </button>
          )}
        </section>
      </main>
    </AircraftFrame>
  );
}

interface TimeFieldProps {
  readonly name: "begun" | "ended";
  readonly label: string;
  readonly typed: TypedWalk;
  readonly fault: string | undefined;
  readonly onChange: (next: Partial<TypedWalk>) => void;
}

function TimeField({ name, label, typed, fault, onChange }: TimeFieldProps) {
  return (
    <label className="field" id={`typed-${name}`}>
      <span>{label}</span>
      <input
        type="datetime-local"
        value={typed[name]}
        aria-invalid={fault !== undefined}
        onChange={(event) => onChange({ [name]: event.target.value })}
      />
      <FieldWrong says={fault} />
    </label>
  );
}
