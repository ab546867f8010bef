import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { PerformanceQuantity, PerformanceSource } from "../schema/performance.ts";
import { mustBeAbove0, mustNotBeBelow0 } from "./amounts.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";
import { quantitiesOf, ROLL_OF } from "./tables-of.ts";

/** Below 1.1 the wing may stall in a gust; above 2 the table of landings means nothing. */
const APPROACH_FACTOR_1 = { least: 1.1, most: 2 } as const;
/** Nothing leaves the ground or comes down slower than it stalls; the rolls would be for another speed above this. */
const GROUND_FACTOR_1 = { least: 1, most: 1.5 } as const;
const STEEPEST_1 = 0.1;
const CLIMBS: readonly PerformanceQuantity[] = ["climb-gradient", "go-around-gradient"];
/** More than this for 1 % of slope is a percentage written without its point. */
const MOST_FOR_1_PERCENT = 0.5;

/** Factors never flatter, wind is counted once, and no table stands twice. */
export const performanceNeverFlatters: Rule = ({ performance }, report) => {
  if (performance === undefined) return;
  const { tables, crosswind, tailwindMax } = performance;
  for (const [i, { quantity, flaps }] of tables.entries()) {
    const first = tables.findIndex((other) => other.quantity === quantity && other.flaps === flaps);
    if (first === i) continue;
    report(["performance", "tables", i, "quantity"], {
      expected: "one table for each quantity and flap setting",
      found: `\`${quantity}\` a second time, as in \`${tables[first]?.id}\``,
      remedy: "take one of the two out, or say with `flaps:` how they differ",
    });
  }
  tablesSayWhatTheyAreFor(performance, report);
  factorsAddSomething(performance, report);
  windIsCountedOnce(performance, report);
  slopeIsAdverse(performance.slope, report);
  mustBeAbove0("a wind", crosswind.value, ["performance", "crosswind", "value"], report);
  mustNotBeBelow0("a wind", tailwindMax ?? undefined, ["performance", "tailwindMax"], report);
  speedsAreOfTheStall(performance, report);
  for (const [i, { speed }] of tables.entries())
    mustBeAbove0("an airspeed", speed, ["performance", "tables", i, "speed"], report);
};

function speedsAreOfTheStall(performance: PerformanceSource, report: Report): void {
  const factors = [
    ["approachFactor", APPROACH_FACTOR_1],
    ["liftOffFactor", GROUND_FACTOR_1],
    ["touchdownFactor", GROUND_FACTOR_1],
  ] as const;
  for (const [key, { least, most }] of factors) {
    const factor = performance[key];
    if (factor === undefined || (factor >= least && factor <= most)) continue;
    report(["performance", key], {
      expected: `a multiple of the stall speed, ${least} to ${most}`,
      found: String(factor),
    });
  }
}

function tablesSayWhatTheyAreFor({ tables }: PerformanceSource, report: Report): void {
  for (const [i, { id, quantity, flaps, axes, upToMass, groundRoll }] of tables.entries()) {
    const path: Path = ["performance", "tables", i];
    mustBeAbove0("a mass", upToMass, [...path, "upToMass"], report);
    if (upToMass !== undefined && axes.some(({ name }) => name === "mass")) {
      report([...path, "upToMass"], {
        expected: "nothing here, where the table has an axis of mass",
        found: measureText(upToMass),
        remedy: "take one of the two out",
      });
    }
    if (groundRoll === undefined) continue;
    const roll = ROLL_OF[quantity];
    if (roll === undefined) {
      report([...path, "groundRoll"], {
        expected: "a table over 50 ft, of which the ground roll is a share",
        found: `one of \`${quantity}\``,
        remedy: "take it out",
      });
    } else if (!(groundRoll > 0 && groundRoll < 1)) {
      report([...path, "groundRoll"], {
        expected: "a share above 0 and below 1: it is shorter than over 50 ft",
        found: String(groundRoll),
        remedy: "58 % is 0.58",
      });
    }
    const other = tables.find((table) => table.quantity === roll && table.flaps === flaps);
    if (roll !== undefined && other !== undefined) {
      report([...path, "groundRoll"], {
        expected: "the ground roll told once",
        found: `a share of \`${id}\`, and the table \`${other.id}\``,
        remedy: "take one of the two out",
      });
    }
  }
}

function factorsAddSomething({ factors, tables }: PerformanceSource, report: Report): void {
  const given = quantitiesOf(tables);
  for (const [i, { quantities, when, factor, of }] of factors.entries()) {
    const path: Path = ["performance", "factors", i];
    if (when.surface === undefined && when.condition === undefined) {
      report([...path, "when"], {
        expected: "a surface, a condition or both",
        found: "neither",
        remedy: "a factor that always holds belongs in the table",
      });
    }
    const isClimb = quantities.every((quantity) => CLIMBS.includes(quantity));
    if (isClimb ? !(factor > 0 && factor <= 1) : factor < 1) {
      report([...path, "factor"], {
        expected: isClimb
          ? "more than 0 and at most 1: it never climbs better"
          : "at least 1: it never shortens",
        found: String(factor),
        remedy: isClimb ? undefined : "15 % more is 1.15",
      });
    }
    for (const [j, quantity] of quantities.entries()) {
      if (!given.has(quantity)) {
        report([...path, "quantities", j], {
          expected: "a quantity that a table of this book gives",
          found: `\`${quantity}\``,
          remedy: "add the table, or take it out here",
        });
      }
      const roll = ROLL_OF[quantity];
      if (of === "total" || roll === undefined || given.has(roll)) continue;
      report([...path, "of"], {
        expected: `a table of \`${roll}\`, to take the factor of`,
        found: "none",
        remedy: "add the table, or write `of: total`",
      });
    }
  }
}

function windIsCountedOnce(performance: PerformanceSource, report: Report): void {
  const { windInTable, headwindCredit, tailwindCharge, tables } = performance;
  const hasWind = tables.some(({ axes }) => axes.some(({ name }) => name === "headwind"));
  if (windInTable && !hasWind) {
    report(["performance", "windInTable"], {
      expected: "a table with an axis of headwind, which counts it",
      found: "none",
      remedy: "add the axis, or take `windInTable` out",
    });
  }
  const shares = [
    ["headwindCredit", headwindCredit, 0, 1, "0.5 counts half of a headwind"],
    ["tailwindCharge", tailwindCharge, 1, 5, "1.5 counts half as much again of a tailwind"],
  ] as const;
  for (const [key, share, least, most, remedy] of shares) {
    if (share === undefined) continue;
    if (windInTable) {
      report(["performance", key], {
        expected: "nothing here, where the tables count the wind",
        found: String(share),
        remedy: "take it out, or `windInTable`",
      });
    }
    if (share >= least && share <= most) continue;
    report(["performance", key], { expected: `${least} to ${most}`, found: String(share), remedy });
  }
}

function slopeIsAdverse(slope: PerformanceSource["slope"], report: Report): void {
  if (slope === undefined) return;
  if (!(slope.max.valueSI > 0 && slope.max.valueSI <= STEEPEST_1)) {
    report(["performance", "slope", "max"], {
      expected: `a slope above 0, at most ${STEEPEST_1 * 100} %`,
      found: measureText(slope.max),
      remedy: "2 m in 100 m is 2 %",
    });
  }
  for (const key of ["takeOffUp", "landingDown"] as const) {
    if (slope[key] >= 0 && slope[key] <= MOST_FOR_1_PERCENT) continue;
    report(["performance", "slope", key], {
      expected: `an added share for 1 % of slope, 0 to ${MOST_FOR_1_PERCENT}`,
      found: String(slope[key]),
      remedy: "5 % more is 0.05",
    });
  }
}
