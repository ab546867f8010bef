import { isUnitId, UNITS, type UnitId } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { useId, useState } from "react";
import { readTyped } from "../calculators/read-typed.ts";
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
}

/** One value with its unit; it counts when the field is left, or on Enter. Empty takes it away. */
export function MeasureField(props: MeasureFieldProps) {
  const { read } = props;
  // another value in the plan (Undo, another device) begins the field anew
  return <Entry key={read === undefined ? "" : `${read.value} ${read.unit}`} {...props} />;
}

function Entry({ label, read, units, example, fault, onSet }: MeasureFieldProps) {
  const id = useId();
  const [text, setText] = useState(read === undefined ? "" : String(read.value).replace("-", "−"));
  const [unit, setUnit] = useState<UnitId>(read?.unit ?? units[0]);
  const [wrong, setWrong] = useState<string | null>(null);
  const offered = units.includes(unit) ? units : [unit, ...units];
  const take = (given: string, inUnit: UnitId) => {
    if (given.trim() === "") {
      setWrong(null);
      if (read !== undefined) onSet(undefined);
      return;
    }
    const typed = readTyped(given, example);
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
        {offered.length > 1 ? (
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
