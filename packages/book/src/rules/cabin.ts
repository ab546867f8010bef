import { type Measure, standardPressure } from "@witnessmark/engine";
import type { Path } from "../faults/path.ts";
import { mustBeAbove0 } from "./amounts.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";

/** The standard atmosphere that the engine knows, geopotential metres. */
const ATMOSPHERE_m = { lowest: -5000, highest: 20_000 } as const;

/** Half of the last figure that a differential of two decimals in psi is written with. */
const ROUNDING_Pa = 100;

/** The cabin is never above the aircraft, never pressed harder than its hull bears, and can be brought down. */
export const cabinHoldsItsAir: Rule = ({ cabin }, report) => {
  if (cabin?.pressurised !== true) return;
  const { altitudes, maxDifferential, emergencyDescent } = cabin;
  mustBeAbove0("a pressure", maxDifferential, ["cabin", "maxDifferential"], report);
  for (const [i, { level, cabin: inside }] of altitudes.entries()) {
    const path: Path = ["cabin", "altitudes", i];
    const before = altitudes[i - 1];
    if (before !== undefined && level.valueSI <= before.level.valueSI) {
      report([...path, "level"], {
        expected: `a level above that of the row before, ${measureText(before.level)}`,
        found: measureText(level),
        remedy: "put the rows in order, lowest first",
      });
      continue;
    }
    if (before !== undefined && inside.valueSI < before.cabin.valueSI) {
      report([...path, "cabin"], {
        expected: `a cabin altitude not below that of the row before, ${measureText(before.cabin)}`,
        found: measureText(inside),
      });
      continue;
    }
    if (inside.valueSI > level.valueSI) {
      report([...path, "cabin"], {
        expected: `a cabin altitude not above the level, ${measureText(level)}`,
        found: measureText(inside),
        remedy: "are the two the wrong way round?",
      });
      continue;
    }
    const differential_Pa = differenceOf_Pa(inside, level);
    if (differential_Pa === undefined || differential_Pa <= maxDifferential.valueSI + ROUNDING_Pa) continue;
    report([...path, "cabin"], {
      expected: `a cabin that the hull bears at ${measureText(level)}, with at most ${measureText(maxDifferential)}`,
      found: `${measureText(inside)}, which takes ${(differential_Pa / 1000).toFixed(1)} kPa`,
      remedy: "mend the row, or `maxDifferential`",
    });
  }
  mustBeAbove0("a rate", emergencyDescent.rate, ["cabin", "emergencyDescent", "rate"], report);
  const highest = altitudes.at(-1)?.level;
  if (highest === undefined || emergencyDescent.to.valueSI < highest.valueSI) return;
  report(["cabin", "emergencyDescent", "to"], {
    expected: `a level below the highest of the cabin's, ${measureText(highest)}`,
    found: measureText(emergencyDescent.to),
  });
};

/** By how much the pressure in the cabin is above that outside, in the standard atmosphere. */
function differenceOf_Pa(inside: Measure, outside: Measure): number | undefined {
  const known = [inside, outside].every(
    ({ valueSI }) => valueSI >= ATMOSPHERE_m.lowest && valueSI <= ATMOSPHERE_m.highest,
  );
  if (!known) return undefined;
  const at_Pa = ({ valueSI }: Measure) => standardPressure.compute({ geopotentialAltitude_m: valueSI });
  return at_Pa(inside) - at_Pa(outside);
}
