import { type Medical, medicalUntil } from "@witnessmark/assess";
import { isLocalDate } from "@witnessmark/engine";
import { useState } from "react";
import { dayOfDate } from "../../words/dates.ts";
import "./timed.css";

interface MedicalDayProps {
  readonly rule: "14 CFR 61.23(d)" | "MED.A.045";
  /** The day of the examination; empty while it is not said. */
  readonly on: string;
  readonly onUntil: (date: string) => void;
}

type Grade = 1 | 2 | 3;

const US: readonly { readonly value: Medical; readonly words: string }[] = [
  { value: "us-private", words: "Private flight" },
  { value: "us-commercial", words: "Commercial flight" },
  { value: "us-airline", words: "Airline transport, in command" },
];
const EU: readonly { readonly value: Medical; readonly words: string }[] = [
  { value: "eu-class-2", words: "Class 2" },
  { value: "eu-light-aircraft", words: "Light aircraft licence" },
];

/** The last day of a medical from its class and the age at the examination. The day of birth is used here and not kept. */
export function MedicalDay({ rule, on, onUntil }: MedicalDayProps) {
  const isUs = rule === "14 CFR 61.23(d)";
  const kinds = isUs ? US : EU;
  const [kind, setKind] = useState<Medical>(isUs ? "us-private" : "eu-class-2");
  const [grade, setGrade] = useState<Grade>(3);
  const [born, setBorn] = useState("");
  const canTell = isLocalDate(on) && isLocalDate(born) && born < on;
  const until = canTell ? medicalUntil(kind, { on, born, class: grade }) : undefined;
  return (
    <fieldset className="medical-day">
      <legend>How long it lasts</legend>
      <label className="field">
        <span>{isUs ? "Flown on it" : "Which one"}</span>
        <select
          value={kind}
          onChange={({ target }) => setKind(kinds.find(({ value }) => value === target.value)?.value ?? kind)}
        >
          {kinds.map(({ value, words }) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </label>
      {isUs ? (
        <label className="field">
          <span>Class</span>
          <select
            value={grade}
            onChange={({ target }) => setGrade(target.value === "1" ? 1 : target.value === "2" ? 2 : 3)}
          >
            <option value="1">First</option>
            <option value="2">Second</option>
            <option value="3">Third</option>
          </select>
        </label>
      ) : null}
      <label className="field">
        <span>Born on: used here, and not kept</span>
        <input type="date" value={born} onChange={({ target }) => setBorn(target.value)} />
      </label>
      <p className="record-small" role="status">
        {on === "" || born === ""
          ? "With the day of the examination and of birth, its last day is worked out."
          : !canTell
            ? "Look at the two days: the birth comes before the examination."
            : until === undefined
              ? "This class does not serve for that."
              : `Good until ${dayOfDate(until)}, by ${rule}. What is printed on it comes first.`}
      </p>
      {until === undefined ? null : (
        <button type="button" className="button" onClick={() => onUntil(until)}>
          Take {dayOfDate(until)}
        </button>
      )}
    </fieldset>
  );
}
