import { type Plain, valueAt } from "@witnessmark/book";
import { siOf } from "./measure-in.ts";

/** A corner as far as it can be read, with its figures as they were typed. */
export interface DrawnCorner {
  readonly arm_m: number;
  readonly mass_kg: number;
  readonly armText: string;
  readonly massText: string;
}

/** The corners of an envelope that can be drawn, and whether those are all of them. */
export function cornersOf(envelope: Plain | undefined): {
  readonly corners: readonly DrawnCorner[];
  readonly isWhole: boolean;
} {
  const points = valueAt(envelope, ["points"]);
  const rows: readonly Plain[] = Array.isArray(points) ? points : [];
  const corners = rows.flatMap((row): readonly DrawnCorner[] => {
    const [arm, mass] = [valueAt(row, ["arm"]), valueAt(row, ["mass"])];
    const arm_m = siOf(arm, "length");
    const mass_kg = siOf(mass, "mass");
    if (arm_m === undefined || mass_kg === undefined) return [];
    return [{ arm_m, mass_kg, armText: String(arm), massText: String(mass) }];
  });
  return { corners, isWhole: corners.length === rows.length && corners.length >= 3 };
}

export interface AxisLabel {
  readonly at_px: number;
  readonly text: string;
}

/**
 * The figures of an axis that have room beside each other: the two ends first, then each other that is far enough from
 * what stands already.
 *
 * @param apart_px the room that one needs
 */
export function axisLabels(all: readonly AxisLabel[], apart_px: number): readonly AxisLabel[] {
  const inOrder = all.toSorted((a, b) => a.at_px - b.at_px);
  const [first, last] = [inOrder[0], inOrder.at(-1)];
  const kept: AxisLabel[] = [];
  for (const label of [first, last, ...inOrder]) {
    if (label === undefined) continue;
    if (kept.every(({ at_px }) => Math.abs(at_px - label.at_px) >= apart_px)) kept.push(label);
  }
  return kept.toSorted((a, b) => a.at_px - b.at_px);
}
