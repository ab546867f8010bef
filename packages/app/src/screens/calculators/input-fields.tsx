import type { InputSpec, UnitId } from "@witnessmark/engine";
import { useId } from "react";
import { capital } from "../../words/capital.ts";
import { type FieldSpec, placeOf, rangeIn } from "./calculate.ts";
import { UnitSelect } from "./unit-select.tsx";

interface Entry {
  readonly faults: ReadonlyMap<string, string>;
  readonly texts: Readonly<Record<string, readonly string[]>>;
  readonly unitOf: (spec: FieldSpec) => UnitId;
  readonly onText: (name: string, row: number, text: string) => void;
  readonly onUnit: (name: string, unit: UnitId) => void;
}

/** One figure: what it means, where it is typed, in which unit, and what it may be. */
export function ScalarField({
  spec,
  faults,
  texts,
  unitOf,
  onText,
  onUnit,
}: Entry & { readonly spec: FieldSpec }) {
  const id = useId();
  const unit = unitOf(spec);
  const fault = faults.get(placeOf(spec.name));
  return (
    <div className="calc-field">
      <label htmlFor={id}>{capital(spec.meaning)}</label>
      <div className="calc-entry">
        <input
          id={id}
          inputMode="text"
          autoComplete="off"
          value={texts[spec.name]?.[0] ?? ""}
          aria-invalid={fault !== undefined}
          aria-describedby={`${id}-says`}
          onChange={({ target }) => onText(spec.name, 0, target.value)}
        />
        <UnitSelect of={spec.meaning} unit={unit} onChoose={(next) => onUnit(spec.name, next)} />
      </div>
      <p id={`${id}-says`} className={fault === undefined ? "calc-range" : "calc-fault"}>
        {fault ?? rangeIn(spec, unit)}
      </p>
    </div>
  );
}

interface ListFieldsProps extends Entry {
  readonly specs: readonly InputSpec[];
  readonly rows: number;
  readonly onMore: () => void;
  readonly onLess: (row: number) => void;
}

/** Lists that belong together, a row for each thing: its mass, its arm. */
export function ListFields({ specs, rows, onMore, onLess, ...entry }: ListFieldsProps) {
  const { faults, texts, unitOf, onText, onUnit } = entry;
  const id = useId();
  const all = Array.from({ length: rows }, (_, row) => row);
  return (
    <div className="calc-list">
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span className="out-of-sight">Row</span>
            </th>
            {specs.map((spec) => (
              <th key={spec.name} scope="col">
                <span>{capital(spec.meaning)}</span>
                <UnitSelect
                  of={spec.meaning}
                  unit={unitOf(spec)}
                  onChoose={(unit) => onUnit(spec.name, unit)}
                />
                <span className="calc-range">each {rangeIn(spec, unitOf(spec))}</span>
              </th>
            ))}
            <th scope="col">
              <span className="out-of-sight">Take away</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {all.map((row) => (
            <tr key={row}>
              <th scope="row">{row + 1}</th>
              {specs.map((spec) => (
                <td key={spec.name}>
                  <input
                    autoComplete="off"
                    aria-label={`${capital(spec.meaning)}, row ${row + 1}`}
                    value={texts[spec.name]?.[row] ?? ""}
                    aria-invalid={faults.has(placeOf(spec.name, row))}
                    aria-describedby={faults.has(placeOf(spec.name, row)) ? `${id}-${row}-says` : undefined}
                    onChange={({ target }) => onText(spec.name, row, target.value)}
                  />
                </td>
              ))}
              <td>
                <button type="button" className="calc-less" onClick={() => onLess(row)} disabled={rows < 2}>
                  <span aria-hidden="true">×</span>
                  <span className="out-of-sight">Take row {row + 1} away</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {all.flatMap((row) => {
        const says = specs.flatMap((spec) => faults.get(placeOf(spec.name, row)) ?? []);
        return says.length === 0
          ? []
          : [
              <p key={row} id={`${id}-${row}-says`} className="calc-fault">
                Row {row + 1}: {says.join(" ")}
              </p>,
            ];
      })}
      <button type="button" className="button" onClick={onMore}>
        Add a row
      </button>
    </div>
  );
}
