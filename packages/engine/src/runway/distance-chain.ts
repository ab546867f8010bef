import { InputError } from "../input-error.ts";

/** The two figures of a take-off or landing: on the ground, and in all (over 50 ft). One may be missing. */
export interface DistanceFigures {
  readonly groundRoll_m?: number;
  readonly total_m?: number;
}

/**
 * What a factor is a share of. `each`: each figure is multiplied by itself. `ground-roll`, `total`: the share of that
 * one figure is added to both, as the notes of some tables have it.
 */
export type FactorBase = "each" | "ground-roll" | "total";

/** The order in which factors are applied, after the table's cell. */
export const CHAIN_STAGES = ["wind", "surface", "slope", "safety"] as const;
export type ChainStage = (typeof CHAIN_STAGES)[number];

export interface DistanceFactor {
  readonly stage: ChainStage;
  readonly id: string;
  readonly title: string;
  readonly factor_1: number;
  readonly of: FactorBase;
  readonly source?: string;
}

/** One factor applied: what went in, what came out. */
export interface ChainStep {
  readonly factor: DistanceFactor;
  readonly before: DistanceFigures;
  readonly after: DistanceFigures;
}

export type DistanceChain =
  | {
      readonly ok: true;
      readonly start: DistanceFigures;
      readonly steps: readonly ChainStep[];
      /** Not rounded; round up on the way out. */
      readonly end: DistanceFigures;
    }
  | {
      readonly ok: false;
      readonly factor: DistanceFactor;
      readonly missing: "ground-roll" | "total";
      readonly steps: readonly ChainStep[];
    };

function requireFactor({ id, factor_1 }: DistanceFactor): void {
  if (factor_1 > 0 && factor_1 <= 10) return;
  throw new InputError(Number.isFinite(factor_1) ? "out-of-range" : "not-a-number", "factor_1", {
    expected: "a factor above 0, at most 10",
    received: `${factor_1} (${id})`,
    remedy: "a factor is 1.2 for 20 % more",
  });
}

function requireFigure(name: string, value: number | undefined): void {
  if (value === undefined || (Number.isFinite(value) && value >= 0)) return;
  throw new InputError(Number.isFinite(value) ? "out-of-range" : "not-a-number", name, {
    expected: "a distance of zero or more",
    received: `${value} m`,
  });
}

const figures = (groundRoll_m: number | undefined, total_m: number | undefined): DistanceFigures => ({
  ...(groundRoll_m === undefined ? {} : { groundRoll_m }),
  ...(total_m === undefined ? {} : { total_m }),
});

function applied(before: DistanceFigures, { factor_1, of }: DistanceFactor): DistanceFigures | undefined {
  const { groundRoll_m, total_m } = before;
  if (of === "each") {
    return figures(
      groundRoll_m === undefined ? undefined : groundRoll_m * factor_1,
      total_m === undefined ? undefined : total_m * factor_1,
    );
  }
  const base_m = of === "ground-roll" ? groundRoll_m : total_m;
  if (base_m === undefined) return undefined;
  const added_m = base_m * (factor_1 - 1);
  return figures(
    groundRoll_m === undefined ? undefined : groundRoll_m + added_m,
    total_m === undefined ? undefined : total_m + added_m,
  );
}

/**
 * Applies factors to a table's figures, one by one: wind, surface, slope, safety; within a stage in the order given.
 * They multiply, and are never added up. Each step is kept, to be drawn.
 *
 * @returns the steps and the end, or the factor whose base is missing
 * @throws {InputError} `missing` (neither figure), `out-of-range`, `not-a-number`
 * @source order and multiplication: common practice; FAA-H-8083-25C chapter 11 adds in one example and is 64 ft short
 */
export function distanceChain(start: DistanceFigures, factors: readonly DistanceFactor[]): DistanceChain {
  requireFigure("groundRoll_m", start.groundRoll_m);
  requireFigure("total_m", start.total_m);
  if (start.groundRoll_m === undefined && start.total_m === undefined) {
    throw new InputError("missing", "groundRoll_m, total_m", {
      expected: "at least one figure of the table",
      received: "none",
    });
  }
  const ordered = CHAIN_STAGES.flatMap((stage) => factors.filter((factor) => factor.stage === stage));
  const steps: ChainStep[] = [];
  let now = start;
  for (const factor of ordered) {
    requireFactor(factor);
    const after = applied(now, factor);
    if (after === undefined) {
      return { ok: false, factor, missing: factor.of === "total" ? "total" : "ground-roll", steps };
    }
    steps.push({ factor, before: now, after });
    now = after;
  }
  return { ok: true, start, steps, end: now };
}
