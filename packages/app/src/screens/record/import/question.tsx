import type { ImportQuestion } from "@witnessmark/record";
import { type FormEvent, useState } from "react";

interface QuestionProps {
  readonly question: ImportQuestion;
  /** How many are open, this one among them. */
  readonly left: number;
  readonly onAnswer: (value: string) => void;
}

/** More than this are chosen from a list. */
const MOST_BUTTONS = 4;

/** Something that the file leaves open. */
export function Question({ question, left, onAnswer }: QuestionProps) {
  const [value, setValue] = useState("");
  const [asked, setAsked] = useState(false);
  const { words, because, options } = question;
  const send = (event: FormEvent) => {
    event.preventDefault();
    if (value === "") setAsked(true);
    else onAnswer(value);
  };
  return (
    <section className="one-section import-question" aria-live="polite" aria-label="Question">
      <h3>{words}</h3>
      <p className="record-small">{because}</p>
      {options.length <= MOST_BUTTONS ? (
        <div className="import-options">
          {options.map((option) => (
            <button
              key={option.value}
              type="button"
              className="button full"
              onClick={() => onAnswer(option.value)}
            >
              {option.label}
            </button>
          ))}
        </div>
      ) : (
        <form onSubmit={send} noValidate>
          <label className="field">
            <span>Answer</span>
            <select value={value} onChange={(event) => setValue(event.target.value)}>
              <option value="">Choose one</option>
              {options.map((option) => (
                <option key={option.value} value={option.value}>
                  {option.label}
                </option>
              ))}
            </select>
          </label>
          {asked && value === "" ? (
            <p className="trouble" role="alert">
              Choose one of the list first.
            </p>
          ) : null}
          <button type="submit" className="button filled full">
            Take it
          </button>
        </form>
      )}
      {left > 1 ? <p className="record-small">{left - 1} more to settle after this.</p> : null}
    </section>
  );
}
