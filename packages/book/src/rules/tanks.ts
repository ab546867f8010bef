import { type Measure, UNITS } from "@witnessmark/engine";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { LoadingSource } from "../schema/loading.ts";
import { firstById } from "../shape/first-by-id.ts";
import { mustBeAbove0, mustNotBeBelow0 } from "./amounts.ts";
import { type ArmRule, armsInside } from "./arms.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";
import { isOnItsSide } from "./stations.ts";

type Tank = LoadingSource["tanks"][number];

/** A litre written twice in different units may differ by rounding. */
const SAME_VOLUME_1 = 1e-9;

/** Every tank holds what it says, from empty to full, where it is drawn. */
export const tanksHoldFuel: Rule = (draft, report) => {
  const { loading } = draft;
  if (loading === undefined) return;
  const { aircraft } = draft;
  if (loading.tanks.length === 0 && aircraft !== undefined && aircraft.engine !== "none") {
    report(["loading", "tanks"], {
      expected: "a tank or more, as it has an engine",
      found: "none",
      remedy: "add the tank, or say `engine: none` of a glider",
    });
  }
  const gauges = firstById(draft.gauges);
  const { along, across } = armsInside(draft, report);
  for (const [i, tank] of loading.tanks.entries()) {
    const path: Path = ["loading", "tanks", i];
    mustBeAbove0("a capacity", tank.capacity, [...path, "capacity"], report);
    mustNotBeBelow0("a volume", tank.unusable, [...path, "unusable"], report);
    if (tank.unusable.valueSI >= tank.capacity.valueSI) {
      report([...path, "unusable"], {
        expected: `less than the capacity, ${measureText(tank.capacity)}`,
        found: measureText(tank.unusable),
      });
    }
    if (tank.lateralArm !== undefined) across(tank.lateralArm, [...path, "lateralArm"]);
    isOnItsSide(tank.side, tank.name, tank.lateralArm?.valueSI ?? tank.place[1], path, report);
    for (const [j, { arm }] of tank.arms.entries()) along(arm, [...path, "arms", j, "arm"]);
    armsCoverTheTank(tank, [...path, "arms"], along, report);
    const gauge = tank.gauge === undefined ? undefined : gauges.get(tank.gauge);
    if (gauge !== undefined && gauge.dimension !== "volume" && gauge.dimension !== "mass") {
      report([...path, "gauge"], {
        expected: "a gauge of volume or mass",
        found: `\`${gauge.id}\`, a gauge of ${gauge.dimension}`,
      });
    }
  }
};

/** Volumes ascend from 0 to the capacity, and what each step adds lies in the aircraft too. */
function armsCoverTheTank({ arms, capacity }: Tank, path: Path, along: ArmRule, report: Report): void {
  const last = arms.length - 1;
  let ascend = true;
  for (const [j, row] of arms.entries()) {
    const before = arms[j - 1];
    if (before === undefined) {
      if (row.volume.valueSI !== 0) {
        report([...path, j, "volume"], {
          expected: "0 in the first row: the arm of the last drop",
          found: measureText(row.volume),
          remedy: "add a row for the empty tank; nothing is made up below the first",
        });
      }
      continue;
    }
    if (row.volume.valueSI <= before.volume.valueSI) {
      ascend = false;
      report([...path, j, "volume"], {
        expected: `a volume above that of the row before, ${measureText(before.volume)}`,
        found: measureText(row.volume),
        remedy: "put the rows in order, emptiest first",
      });
      continue;
    }
    along(addedArm(before, row), [...path, j, "arm"]);
  }
  const full = arms[last];
  if (full === undefined || !ascend) return;
  const short_m3 = Math.abs(full.volume.valueSI - capacity.valueSI);
  if (short_m3 <= SAME_VOLUME_1 * capacity.valueSI) return;
  report([...path, last, "volume"], {
    expected: `the capacity in the last row, ${measureText(capacity)}`,
    found: measureText(full.volume),
    remedy: "add a row for the full tank; nothing is made up beyond the last",
  });
}

/** Where that lies which is added from one row to the next. */
function addedArm(before: Tank["arms"][number], row: Tank["arms"][number]): Measure {
  const added_m3 = row.volume.valueSI - before.volume.valueSI;
  const moment = row.volume.valueSI * row.arm.valueSI - before.volume.valueSI * before.arm.valueSI;
  const { unit } = row.arm;
  const arm_m = moment / added_m3;
  return { value: Number((arm_m / UNITS[unit].factor).toFixed(3)), unit, valueSI: arm_m };
}
