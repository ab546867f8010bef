import { isUnitId, UNITS } from "@witnessmark/engine";
import { CHOICES, type Choice, conditionsUnits } from "./conditions-units.ts";
import { Fold } from "./fold.tsx";

const ALL = Object.keys(CHOICES) as Choice[]; // keys of a const object

/** What this sheet is read in, quantity by quantity. */
export function UnitsEntry() {
  const chosen = conditionsUnits.use();
  return (
    <Fold title="Units of this sheet" opens={false}>
      <div className="cond-fields">
        {ALL.map((choice) => (
          <label key={choice} className="field">
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
        ))}
      </div>
    </Fold>
  );
}
