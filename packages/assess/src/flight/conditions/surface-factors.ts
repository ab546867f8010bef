import type { Performance, PerformanceFactor, PerformanceQuantity, Runway } from "@witnessmark/book";
import { type DistanceFactor, slopeFactor } from "@witnessmark/engine";
import type { RunwayCondition } from "@witnessmark/ledger";
import type { Missing } from "./figure.ts";

type Found =
  | { readonly ok: true; readonly factors: readonly DistanceFactor[] }
  | { readonly ok: false; readonly missing: Missing };

const chained = ({ id, factor_1, of, source, when }: PerformanceFactor): DistanceFactor => ({
  stage: "surface",
  id,
  title: [when.condition, when.surface].filter((word) => word !== undefined).join(" "),
  factor_1,
  of: of === "ground-roll" ? "ground-roll" : "each",
  source,
});

/**
 * The book's factors for a runway as it is. Its tables are for a paved and dry one: whatever else it is, a factor must
 * speak of it, or there is no figure.
 */
export function surfaceFactorsOf(
  { factors }: Performance,
  quantities: readonly PerformanceQuantity[],
  { surface }: Runway,
  condition: RunwayCondition,
): Found {
  const fitting = factors.filter(
    ({ when, quantities: of }) =>
      quantities.some((quantity) => of.includes(quantity)) &&
      (when.surface === undefined || when.surface === surface) &&
      (when.condition === undefined || when.condition === condition),
  );
  const coversSurface = surface === "paved" || fitting.some(({ when }) => when.surface === surface);
  const coversCondition = condition === "dry" || fitting.some(({ when }) => when.condition === condition);
  if (coversSurface && coversCondition) return { ok: true, factors: fitting.map(chained) };
  const of = quantities.some((quantity) => quantity.startsWith("landing")) ? "landing" : "take-off";
  const what = `a surface factor of the book for ${of} on ${condition} ${surface}`;
  return { ok: false, missing: { what } };
}

const percent = (slope_1: number): string => `${Number((slope_1 * 100).toPrecision(3))} %`;

/** What the slope of a runway adds; nothing where the table itself has an axis of slope. */
export function slopeFactorsOf(
  { slope }: Performance,
  hasAxis: boolean,
  { slope_1 }: Runway,
  phase: "take-off" | "landing",
): Found {
  const against_1 = phase === "take-off" ? slope_1 : -slope_1;
  if (hasAxis || slope_1 === 0) return { ok: true, factors: [] };
  if (slope === undefined)
    return against_1 <= 0
      ? { ok: true, factors: [] }
      : { ok: false, missing: { what: `what a slope of ${percent(slope_1)} adds, in the book` } };
  const refused: Found = {
    ok: false,
    missing: {
      what: `a figure for a slope of ${percent(slope_1)}: the book has it to ${percent(slope.max_1)}`,
    },
  };
  if (Math.abs(slope_1) > slope.max_1 * (1 + 1e-9)) return refused;
  const perSlope_1 = phase === "take-off" ? slope.takeOffUp_1 : slope.landingDown_1;
  const answer = slopeFactor(slope_1, phase, { perSlope_1, most_1: slope.max_1 });
  if (!answer.ok) return refused;
  if (answer.factor_1 === 1) return { ok: true, factors: [] };
  const title = `${percent(against_1)} ${phase === "take-off" ? "up" : "down"}`;
  return {
    ok: true,
    factors: [
      {
        stage: "slope",
        id: "slope",
        title,
        factor_1: answer.factor_1,
        of: "each",
        source: "the book's rule of slope",
      },
    ],
  };
}
