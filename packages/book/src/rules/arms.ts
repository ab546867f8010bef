import type { Measure } from "@witnessmark/engine";
import { type Extent, extent } from "../drawing/extent.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { Draft } from "../shape/draft.ts";
import { measureText } from "./measure-text.ts";

/** The arm of something in the aircraft lies between its two ends. */
export type ArmRule = (measure: Measure, path: Path) => void;

const noRule: ArmRule = () => undefined; // without a sound geometry nobody knows the ends

export function armsInside({ geometry }: Draft, report: Report): { along: ArmRule; across: ArmRule } {
  if (geometry === undefined) return { along: noRule, across: noRule };
  const box = extent(geometry);
  return { along: alongRule(box, report), across: acrossRule(box, report) };
}

const alongRule =
  ({ fore_m, aft_m }: Extent, report: Report): ArmRule =>
  (arm, path) => {
    if (arm.valueSI >= fore_m && arm.valueSI <= aft_m) return;
    report(path, {
      expected: `an arm inside the aircraft, ${fore_m.toFixed(2)} to ${aft_m.toFixed(2)} m aft of the datum`,
      found: measureText(arm),
      remedy: "the datum is that of the drawing: x = 0",
    });
  };

const acrossRule =
  ({ left_m, right_m }: Extent, report: Report): ArmRule =>
  (arm, path) => {
    if (arm.valueSI >= left_m && arm.valueSI <= right_m) return;
    report(path, {
      expected: `an arm inside the aircraft, ${left_m.toFixed(2)} to ${right_m.toFixed(2)} m to the right`,
      found: measureText(arm),
      remedy: "the left has a minus",
    });
  };
