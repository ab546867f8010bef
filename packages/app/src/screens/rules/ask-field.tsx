import type { NamedAsk } from "./read-answers.ts";

interface AskFieldProps {
  readonly ask: Exclude<NamedAsk, { readonly kind: "figure" }>;
  readonly text: string;
  readonly onText: (text: string) => void;
}

const YES_NO = [
  ["yes", "Yes"],
  ["no", "No"],
  ["", "Not known"],
] as const;

/** One thing that a rule wants to know, by yes or no, out of a list, or as a day; each can be not known. */
export function AskField({ ask, text, onText }: AskFieldProps) {
  switch (ask.kind) {
    case "yes-no":
      return (
        <fieldset className="choices rule-yes-no">
          <legend>{ask.words}</legend>
          {YES_NO.map(([value, label]) => (
            <button key={label} type="button" aria-pressed={text === value} onClick={() => onText(value)}>
              {label}
            </button>
          ))}
        </fieldset>
      );
    case "choice":
      return (
        <label className="field rule-field">
          <span>{ask.words}</span>
          <select value={text} onChange={({ target }) => onText(target.value)}>
            <option value="">Not known</option>
            {ask.options.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </label>
      );
    case "date":
      return (
        <label className="field rule-field">
          <span>{ask.words}</span>
          <input
            type="date"
            value={text}
            min="1900-01-01"
            max="2199-12-31"
            onChange={({ target }) => onText(target.value)}
          />
        </label>
      );
    default:
      return ask satisfies never;
  }
}
