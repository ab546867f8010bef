import { gathered, type Scale, spread } from "../frame/chart-frame.ts";
import { monotoneCurve } from "./monotone-curve.ts";
import type { ReadCurve } from "./traced-curve.ts";

/** The curves of one panel of a chart: one for each value of a parameter. */
export interface Family {
  /** Ascending. */
  readonly curves: readonly ReadCurve[];
  /** How the answers are spread; between two curves they are read as they are printed. */
  readonly scale: Scale;
}

/** Two curves for one value are a slip. */
export function familyOf(
  curves: readonly ReadCurve[],
  scale: Scale,
): { readonly ok: true; readonly family: Family } | { readonly ok: false; readonly says: string } {
  const sorted = curves.toSorted((one, other) => one.parameter - other.parameter);
  if (sorted.length === 0) return { ok: false, says: "No curve is traced yet." };
  const twice = sorted.find((curve, i) => i > 0 && curve.parameter === sorted[i - 1]?.parameter);
  if (twice !== undefined) {
    return {
      ok: false,
      says: `Two curves are traced for ${twice.parameter}. Give one of them its own value.`,
    };
  }
  return { ok: true, family: { curves: sorted, scale } };
}

/**
 * What the chart says at a place: on a curve, or between two by the smooth line through all that reach there.
 *
 * @returns `undefined` beyond the ends of a curve or the outermost curves: nothing is extrapolated
 */
export function readFamily(
  { curves, scale }: Family,
  parameter: number,
  entered: number,
): number | undefined {
  const on = curves.find((curve) => curve.parameter === parameter);
  if (on !== undefined) return on.at(entered);
  const above = curves.findIndex((curve) => curve.parameter > parameter);
  if (above <= 0) return undefined;
  // both neighbours must reach there; those further away only bend the line between them
  const known = (index: number): readonly [number, number] | undefined => {
    const curve = curves[index];
    const value = curve?.at(entered);
    return curve === undefined || value === undefined ? undefined : [curve.parameter, spread(scale, value)];
  };
  const pair = [known(above - 1), known(above)];
  if (pair.some((knot) => knot === undefined)) return undefined;
  const knots = [known(above - 2), ...pair, known(above + 1)].filter((knot) => knot !== undefined);
  const value = monotoneCurve(knots).at(parameter);
  return value === undefined ? undefined : gathered(scale, value);
}

/**
 * Panels read one after another, as on a chart that hands a line on from panel to panel: what one gives is the parameter
 * that the next is entered with.
 *
 * @param panels in the order of reading; the curves of every panel but the first are its guide lines, each with its own
 *   height at the panel's reference line as its parameter
 * @param entered what each panel is entered by
 * @returns `undefined` where any panel has no answer
 */
export function readChain(
  panels: readonly Family[],
  parameter: number,
  entered: readonly number[],
): number | undefined {
  let value: number | undefined = parameter;
  for (const [i, panel] of panels.entries()) {
    const enter: number | undefined = entered[i];
    if (value === undefined || enter === undefined) return undefined;
    value = readFamily(panel, value, enter);
  }
  return value;
}

/** The guide lines of a later panel, each named by its own height at the reference line. */
export function guideLines(
  curves: readonly ReadCurve[],
  reference: number,
):
  | { readonly ok: true; readonly curves: readonly ReadCurve[] }
  | { readonly ok: false; readonly says: string } {
  const named: ReadCurve[] = [];
  for (const curve of curves) {
    const height = curve.at(reference);
    if (height === undefined) {
      return {
        ok: false,
        says: `A guide line does not reach the reference line at ${reference}: it is traced from ${curve.from} to ${curve.to}. Trace it up to there.`,
      };
    }
    named.push({ ...curve, parameter: height });
  }
  return { ok: true, curves: named };
}
