import type { MassAndArm } from "@witnessmark/engine";
import type { Interval } from "./interval-set.ts";

/** constant + linear × x + square × x². */
export interface Quadratic {
  readonly constant: number;
  readonly linear: number;
  readonly square: number;
}

export const valueAt = ({ constant, linear, square }: Quadratic, x: number): number =>
  constant + x * (linear + x * square);

/** The real roots, without loss where the linear part is great; none where it is the same everywhere. */
export function rootsOf({ constant: c, linear: b, square: a }: Quadratic): readonly number[] {
  if (a === 0) return b === 0 ? [] : [-c / b];
  const discriminant = b * b - 4 * a * c;
  if (!(discriminant >= 0)) return [];
  const half = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  return half === 0 ? [0] : [half / a, c / half].filter(Number.isFinite);
}

/** The least and the greatest value between two ends: at one of them, or where it turns. */
export function rangeOn(quadratic: Quadratic, from: number, to: number): Interval {
  const values = [valueAt(quadratic, from), valueAt(quadratic, to)];
  const turn = -quadratic.linear / (2 * quadratic.square);
  if (quadratic.square !== 0 && turn > from && turn < to) values.push(valueAt(quadratic, turn));
  return { low: Math.min(...values), high: Math.max(...values) };
}

/** An edge of an envelope that is at more than one mass: its arm is start + slope × mass. */
export interface EdgeLine {
  readonly start_m: number;
  readonly slope_mPerKg: number;
  readonly low_kg: number;
  readonly high_kg: number;
}

const joined = (points: readonly MassAndArm[]): readonly (readonly [MassAndArm, MassAndArm])[] =>
  points.map((to, index) => [points.at(index - 1) ?? to, to]);

/** The edges of an envelope that are at more than one mass. */
export const edgeLines = ({ points }: { readonly points: readonly MassAndArm[] }): readonly EdgeLine[] =>
  joined(points).flatMap(([a, b]) => {
    if (a.mass_kg === b.mass_kg) return [];
    const slope_mPerKg = (b.arm_m - a.arm_m) / (b.mass_kg - a.mass_kg);
    return [
      {
        start_m: a.arm_m - slope_mPerKg * a.mass_kg,
        slope_mPerKg,
        low_kg: Math.min(a.mass_kg, b.mass_kg),
        high_kg: Math.max(a.mass_kg, b.mass_kg),
      },
    ];
  });

/** The edges of an envelope that are at one mass. */
export const levelEdges = ({
  points,
}: {
  readonly points: readonly MassAndArm[];
}): readonly { readonly mass_kg: number; readonly low_m: number; readonly high_m: number }[] =>
  joined(points).flatMap(([a, b]) =>
    a.mass_kg === b.mass_kg
      ? [{ mass_kg: a.mass_kg, low_m: Math.min(a.arm_m, b.arm_m), high_m: Math.max(a.arm_m, b.arm_m) }]
      : [],
  );
