import type { FuelKind } from "../schema/fuel.ts";
import { mustBeAbove0, mustNotBeBelow0 } from "./amounts.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";

/**
 * Densities at 15 °C in which a fuel of the kind is sold, kg/m³.
 *
 * @source jet fuel: ASTM D1655, table 1 (Jet A, Jet A-1: 775 to 840); petrol: EN 228 (720 to 775); avgas has no limit
 * in ASTM D910: common practice 690 to 730, widened
 */
const DENSITIES_kgPerM3: Readonly<Record<FuelKind, readonly [low: number, high: number]>> = {
  "jet-a1": [775, 840],
  "jet-a": [775, 840],
  "avgas-100ll": [680, 740],
  mogas: [720, 775],
};

/** The fuel can be that fuel, and every tank of it is burnt once. */
export const fuelCanBeBurnt: Rule = ({ fuel, loading, aircraft }, report) => {
  if (fuel === undefined) return;
  const { kind, density15, burn, freezingPoint, minimumFuelTemperature, order, totaliser } = fuel;
  const [low, high] = DENSITIES_kgPerM3[kind];
  if (!(density15.valueSI >= low && density15.valueSI <= high)) {
    report(["fuel", "density15"], {
      expected: `a density of ${kind} at 15 °C, ${low} to ${high} kg/m³`,
      found: measureText(density15),
      remedy: "mend the density, or the kind",
    });
  }
  if (aircraft?.engine === "turboprop" && !kind.startsWith("jet")) {
    report(["fuel", "kind"], {
      expected: "a jet fuel, for a turboprop",
      found: kind,
      remedy: "mend the kind, or `aircraft.engine`",
    });
  }
  mustNotBeBelow0("a mass", burn.taxi, ["fuel", "burn", "taxi"], report);
  for (const phase of ["climb", "cruise", "hold", "descent", "maxContinuous"] as const) {
    mustBeAbove0("a flow", burn[phase], ["fuel", "burn", phase], report);
  }
  if (totaliser !== undefined && !(totaliser.accuracy.valueSI > 0 && totaliser.accuracy.valueSI <= 0.2)) {
    report(["fuel", "totaliser", "accuracy"], {
      expected: "a share of what it counts, above 0 and at most 20 %",
      found: measureText(totaliser.accuracy),
    });
  }
  if (
    freezingPoint !== undefined &&
    minimumFuelTemperature !== undefined &&
    minimumFuelTemperature.valueSI < freezingPoint.valueSI
  ) {
    report(["fuel", "minimumFuelTemperature"], {
      expected: `a temperature not below the freezing point, ${measureText(freezingPoint)}`,
      found: measureText(minimumFuelTemperature),
    });
  }
  const seen = new Set<string>();
  for (const [i, together] of order.entries()) {
    for (const [j, id] of together.entries()) {
      if (seen.has(id)) {
        report(["fuel", "order", i, j], {
          expected: "each tank once",
          found: `\`${id}\` a second time`,
          remedy: "take it out",
        });
      }
      seen.add(id);
    }
  }
  for (const { id } of loading?.tanks ?? []) {
    if (seen.has(id)) continue;
    report(["fuel", "order"], {
      expected: "every tank of the book, in the order in which they are burnt",
      found: `none named \`${id}\``,
      remedy: "add it; fuel that is never burnt is ballast",
    });
  }
};
