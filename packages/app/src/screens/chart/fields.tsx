import { type Dimension, UNITS, type UnitId, unitsOf } from "@witnessmark/engine";
import { useId } from "react";

interface TextInProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly isNumber?: boolean;
  readonly wrong?: string | undefined;
}

/** One line that is typed; what is wrong with it stands under it. */
export function TextIn({ label, value, onChange, isNumber = false, wrong }: TextInProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode={isNumber ? "text" : undefined}
        autoComplete="off"
        value={value}
        aria-invalid={wrong === undefined ? undefined : true}
        aria-describedby={wrong === undefined ? undefined : `${id}-wrong`}
        onChange={(event) => onChange(event.currentTarget.value)}
      />
      {wrong === undefined ? null : (
        <span id={`${id}-wrong`} className="chart-wrong">
          {wrong}
        </span>
      )}
    </div>
  );
}

interface ChooseProps<Key extends string> {
  readonly label: string;
  readonly value: Key;
  readonly options: readonly (readonly [key: Key, name: string])[];
  readonly onChange: (key: Key) => void;
}

/** One of several, in a native list. */
export function Choose<Key extends string>({ label, value, options, onChange }: ChooseProps<Key>) {
  return (
    <label className="field">
      <span>{label}</span>
      <select
        value={value}
        onChange={(event) => {
          const found = options.find(([key]) => key === event.currentTarget.value);
          if (found !== undefined) onChange(found[0]);
        }}
      >
        {options.map(([key, name]) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

interface ChooseUnitProps {
  readonly label: string;
  readonly dimension: Dimension;
  readonly value: UnitId;
  readonly onChange: (unit: UnitId) => void;
}

export function ChooseUnit({ label, dimension, value, onChange }: ChooseUnitProps) {
  const options = unitsOf(dimension).map((unit) => [unit, UNITS[unit].symbol || "plain number"] as const);
  return <Choose label={label} value={value} options={options} onChange={onChange} />;
}

interface SwitchProps {
  readonly label: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

export function Switch({ label, on, onChange }: SwitchProps) {
  return (
    <button type="button" className="button full" aria-pressed={on} onClick={() => onChange(!on)}>
      {label}
    </button>
  );
}
