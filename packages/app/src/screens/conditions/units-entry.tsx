import { CHOICES, type Choice } from "./conditions-units.ts";
import { Fold } from "./fold.tsx";
import { UnitChoice } from "./unit-choice.tsx";

const ALL = Object.keys(CHOICES) as Choice[]; // keys of a const object

/** What this screen is read in, quantity by quantity. */
export function UnitsEntry() {
  return (
    <Fold title="Units of this screen" opens={false}>
      <div className="cond-fields">
        {ALL.map((choice) => (
          <UnitChoice key={choice} choice={choice} />
        ))}
      </div>
    </Fold>
  );
}
