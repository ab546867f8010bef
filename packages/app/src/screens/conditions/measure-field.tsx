import { isUnitId, UNITS, type UnitId } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { useId, useState } from "react";
import { readFigure } from "../../words/figures.ts";
import { sentence } from "./sentence.ts";

interface MeasureFieldProps {
  readonly label: string;
  readonly read: Read | undefined;
  /** Those offered; the first is where one begins. */
  readonly units: readonly [UnitId, ...UnitId[]];
  /** A value that would be right. */
  readonly example: string;
  /** What the figures say of the value that stands there. */
  readonly fault?: string | undefined;
  readonly onSet: (read: Read | undefined) => void;
  /** A word that may stand there in place of a figure. */
  readonly word?: MeasureWord | undefined;
}

export interface MeasureWord {
  /** As it is shown; typed in any case. */
  readonly text: string;
  /** What else is typed for it. */
  readonly also: readonly string[];
  readonly isSet: boolean;
  readonly onSet: () => void;
}

/** One value with its unit; it counts when the field is left, or on Enter. Empty takes it away. */
export function MeasureField(props: MeasureFieldProps) {
  const { read, word } = props;
  const stands = word?.isSet === true ? word.text : read === undefined ? "" : `${read.value} ${read.unit}`;
  // another value in the plan (Undo, another device) begins the field anew
  return <Entry key={stands} {...props} />;
}

const isWord = (given: string, { text, also }: MeasureWord): boolean =>
  [text, ...also].some((each) => each.toLowerCase() === given.trim().toLowerCase());

function Entry({ label, read, units, example, fault, onSet, word }: MeasureFieldProps) {
  const isWordSet = word?.isSet === true;
  const id = useId();
  const [text, setText] = useState(
    isWordSet ? word.text : read === undefined ? "" : String(read.value).replace("-", "−"),
  );
  const [unit, setUnit] = useState<UnitId>(read?.unit ?? units[0]);
  const [wrong, setWrong] = useState<string | null>(null);
  const offered = units.includes(unit) ? units : [unit, ...units];
  const take = (given: string, inUnit: UnitId) => {
    if (given.trim() === "") {
      setWrong(null);
      if (read !== undefined || isWordSet) onSet(undefined);
      return;
    }
    if (word !== undefined && isWord(given, word)) {
      setWrong(null);
      if (!isWordSet) word.onSet();
      return;
    }
    const typed = readFigure(given, example);
    if (!typed.ok) return setWrong(typed.why);
    const meant = typed.unit ?? inUnit;
    if (UNITS[meant].dimension !== UNITS[inUnit].dimension) {
      return setWrong(`${UNITS[meant].symbol} does not measure this. Give it in ${UNITS[inUnit].symbol}.`);
    }
    setWrong(null);
    if (read?.value !== typed.value || read.unit !== meant) onSet({ value: typed.value, unit: meant });
  };
  const says = wrong ?? fault;
  return (
    <div className="cond-field">
      <label htmlFor={id}>{label}</label>
      <div className={offered.length > 1 ? "cond-entry" : "cond-entry cond-one"}>
        <input
          id={id}
          value={text}
          autoComplete="off"
          enterKeyHint="done"
          aria-invalid={says !== undefined}
          aria-describedby={says === undefined ? undefined : `${id}-says`}
          onChange={({ target }) => setText(target.value)}
          onBlur={() => take(text, unit)}
          onKeyDown={({ key }) => {
            if (key === "Enter") take(text, unit);
          }}
        />
        {isWordSet ? null : offered.length > 1 ? (
          <select
            aria-label={`Unit of ${label}`}
            value={unit}
            onChange={({ target }) => {
              if (!isUnitId(target.value)) return;
              setUnit(target.value);
              take(text, target.value);
            }}
          >
            {offered.map((each) => (
              <option key={each} value={each}>
                {UNITS[each].symbol}
              </option>
            ))}
          </select>
        ) : UNITS[unit].symbol === "" ? null : (
          <span className="cond-unit" aria-hidden="true">
            {UNITS[unit].symbol}
          </span>
        )}
      </div>
      {says === undefined ? null : (
        <p id={`${id}-says`} className="cond-fault">
          {sentence(says)}
        </p>
      )}
    </div>
  );
}
