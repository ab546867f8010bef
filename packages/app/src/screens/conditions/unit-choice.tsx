import { isUnitId, UNITS } from "@witnessmark/engine";
import { CHOICES, type Choice, conditionsUnits } from "./conditions-units.ts";

/** What one quantity is read in on this sheet. */
export function UnitChoice({ choice }: { readonly choice: Choice }) {
  const chosen = conditionsUnits.use();
  return (
    <label className="field">
      <span>{CHOICES[choice].name}</span>
      <select
        value={chosen[choice]}
        onChange={({ target }) => {
          if (isUnitId(target.value)) conditionsUnits.set({ ...chosen, [choice]: target.value });
        }}
      >
        {CHOICES[choice].units.map((unit) => (
          <option key={unit} value={unit}>
            {UNITS[unit].symbol}
          </option>
        ))}
      </select>
    </label>
  );
}
