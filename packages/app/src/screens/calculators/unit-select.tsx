import { isUnitId, UNITS, type UnitId, unitsOf } from "@witnessmark/engine";
import { unitName } from "./unit-choice.ts";

interface UnitSelectProps {
  /** What it is the unit of, for a name that can be read aloud. */
  readonly of: string;
  readonly unit: UnitId;
  readonly onChoose: (unit: UnitId) => void;
}

/** The units of one dimension; nothing where there is no choice. */
export function UnitSelect({ of, unit, onChoose }: UnitSelectProps) {
  const units = unitsOf(UNITS[unit].dimension);
  if (units.length < 2) return null;
  return (
    <select
      className="unit-select"
      aria-label={`Unit of ${of}`}
      value={unit}
      onChange={({ target }) => {
        if (isUnitId(target.value)) onChoose(target.value);
      }}
    >
      {units.map((id) => (
        <option key={id} value={id}>
          {unitName(id)}
        </option>
      ))}
    </select>
  );
}
