import type { Book, WalkKind } from "@witnessmark/book";
import { UNITS } from "@witnessmark/engine";
import type { Answer } from "@witnessmark/ledger";
import type { Step } from "@witnessmark/planner";
import { stepName } from "../../walk/walk-view.ts";
import { REASON_WORDS, REASONS } from "../../words/answers.ts";
import { capital } from "../../words/capital.ts";
import { FieldWrong } from "./field-wrong.tsx";
import type { TypedStep } from "./typed-in.ts";

interface TypedRowProps {
  readonly step: Step;
  readonly book: Book;
  readonly kind: WalkKind;
  readonly typed: TypedStep;
  readonly fault: string | undefined;
  readonly onChange: (next: TypedStep) => void;
}

/** One step of the paper: its boxes, the figure on its line, and what a "no" needs besides. */
export function TypedRow(props: TypedRowProps) {
  const { step, book, fault } = props;
  const name = stepName(step, book.points);
  const title = step.kind === "check" ? step.check.title : "Ground gear";
  return (
    <fieldset className="typed-row" id={`typed-${step.id}`}>
      <legend>
        <b>{name}</b> <span>{title}</span>
      </legend>
      {step.kind === "check" ? (
        <CheckBoxes {...props} check={step.check} />
      ) : (
        <GearBox {...props} item={step.item} />
      )}
      <FieldWrong says={fault} />
    </fieldset>
  );
}

const BOXES: readonly (readonly [Answer, string])[] = [
  ["as-it-should-be", "As it should be"],
  ["not-right", "Not right"],
  ["could-not-check", "Could not"],
];

type Check = Extract<Step, { readonly kind: "check" }>["check"];
type Item = Extract<Step, { readonly kind: "ground-gear" }>["item"];

function CheckBoxes({ check, book, typed, onChange }: TypedRowProps & { readonly check: Check }) {
  const gauge = check.reading === undefined ? undefined : book.gauges.get(check.reading.gauge);
  return (
    <>
      {check.reading === undefined || gauge === undefined ? null : (
        <label className="field">
          <span>
            {capital(check.reading.quantity)}
            {UNITS[gauge.unit].symbol === "" ? "" : `, ${UNITS[gauge.unit].symbol}`}
          </span>
          <input
            value={typed.figure ?? ""}
            maxLength={20}
            autoComplete="off"
            onChange={(event) => onChange({ ...typed, figure: event.target.value })}
          />
        </label>
      )}
      <div className="choices typed-boxes">
        {BOXES.map(([answer, words]) => (
          <button
            key={answer}
            type="button"
            aria-pressed={typed.answer === answer}
            onClick={() => {
              const { answer: before, ...rest } = typed;
              onChange(before === answer ? rest : { ...rest, answer });
            }}
          >
            {words}
          </button>
        ))}
      </div>
      {typed.answer === "not-right" ? <WhatIsWrong check={check} typed={typed} onChange={onChange} /> : null}
      {typed.answer === "could-not-check" ? (
        <label className="field">
          <span>Why not</span>
          <select
            value={typed.reason ?? ""}
            onChange={(event) => {
              const { reason: _before, ...rest } = typed;
              const reason = REASONS.find((each) => each === event.target.value);
              onChange(reason === undefined ? rest : { ...rest, reason });
            }}
          >
            <option value="">Choose a reason</option>
            {REASONS.map((reason) => (
              <option key={reason} value={reason}>
                {REASON_WORDS[reason]}
              </option>
            ))}
          </select>
        </label>
      ) : null}
    </>
  );
}

function WhatIsWrong({
  check,
  typed,
  onChange,
}: Pick<TypedRowProps, "typed" | "onChange"> & { readonly check: Check }) {
  return (
    <>
      {check.faults.length === 0 ? null : (
        <label className="field">
          <span>What is not right</span>
          <select
            value={typed.fault ?? ""}
            onChange={(event) => {
              const { fault: _before, ...rest } = typed;
              onChange(event.target.value === "" ? rest : { ...rest, fault: event.target.value });
            }}
          >
            <option value="">Something else</option>
            {check.faults.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      <label className="field">
        <span>In the words of the paper</span>
        <textarea
          rows={1}
          maxLength={400}
          value={typed.words ?? ""}
          onChange={(event) => onChange({ ...typed, words: event.target.value })}
        />
      </label>
    </>
  );
}

function GearBox({ item, kind, typed, onChange }: TypedRowProps & { readonly item: Item }) {
  const isDone = typed.answer === "as-it-should-be";
  if (kind === "after-flight") {
    return (
      <div className="choices typed-boxes">
        <button
          type="button"
          aria-pressed={isDone}
          onClick={() => onChange(isDone ? {} : { answer: "as-it-should-be" })}
        >
          Fitted
        </button>
      </div>
    );
  }
  return (
    <div className="choices typed-boxes">
      {item.stowedIn.map((place) => (
        <button
          key={place}
          type="button"
          aria-pressed={isDone && typed.stowedIn === place}
          onClick={() =>
            onChange(isDone && typed.stowedIn === place ? {} : { answer: "as-it-should-be", stowedIn: place })
          }
        >
          Off, in {place}
        </button>
      ))}
    </div>
  );
}
