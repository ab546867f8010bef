import { toSI } from "../units/convert.ts";
import { oxygenMeanFlow } from "./duration.ts";
import { type FlowFound, type FlowRow, flowAt } from "./flow-table.ts";

/** The cabin altitudes at which the flow of a climb or descent is looked up: every thousand feet. */
const STEP_M = toSI(1000, "ft");

/** What a conversion from feet may leave over. */
const ROUNDING_M = 1e-6;

const MOST_STEPS = 100;

/**
 * The cabin altitudes from one end of a climb or descent to the other, every 1,000 ft from the start, both ends
 * included. Empty when an end is no number or they are more than 100,000 ft apart.
 */
export function everyThousandFeet_m(from_m: number, to_m: number): readonly number[] {
  const span_m = Math.abs(to_m - from_m);
  if (!Number.isFinite(span_m) || span_m > MOST_STEPS * STEP_M) return [];
  const steps = Math.ceil((span_m - ROUNDING_M) / STEP_M);
  const direction = Math.sign(to_m - from_m);
  const within = Array.from({ length: Math.max(0, steps) }, (_, at) => from_m + direction * at * STEP_M);
  return [...within, to_m];
}

export type MeanFlow =
  | { readonly ok: true; readonly meanFlow_m3PerS: number; readonly flows: readonly FlowRow[] }
  | Exclude<FlowFound, { readonly ok: true }>;

/**
 * The mean flow of one outlet in a steady climb or descent: the mean of its flows at every 1,000 ft.
 *
 * Not the mean of the two ends: a mask that changes its setting on the way makes that too small. A table that does
 * not cover the whole way gives no mean.
 *
 * @source US Army TM 1-1510-225-10, table 2-5
 */
export function meanFlowBetween(table: readonly FlowRow[], from_m: number, to_m: number): MeanFlow {
  const altitudes = everyThousandFeet_m(from_m, to_m);
  if (altitudes.length === 0) return { ok: false, why: "not-a-number" };
  const flows: FlowRow[] = [];
  for (const cabinAltitude_m of altitudes) {
    const found = flowAt(table, cabinAltitude_m);
    if (!found.ok) return found;
    flows.push({ cabinAltitude_m, flow_m3PerS: found.flow_m3PerS });
  }
  const meanFlow_m3PerS = oxygenMeanFlow.compute({ flows_m3PerS: flows.map((row) => row.flow_m3PerS) });
  return { ok: true, meanFlow_m3PerS, flows };
}

/** An emergency descent after the cabin has let go: the cabin is at the level flown from the first moment on. */
export interface EmergencyDescent {
  readonly from_m: number;
  readonly to_m: number;
  /** Positive, downward. */
  readonly rate_mPerS: number;
  /** Time at the level flown before the descent begins; 17 s in AMC1 CAT.IDE.A.235(e). */
  readonly recognition_s: number;
}

export type DescentSupply =
  | {
      readonly ok: true;
      readonly time_s: number;
      readonly meanFlow_m3PerS: number;
      readonly supply_m3: number;
    }
  | Exclude<FlowFound, { readonly ok: true }>
  | { readonly ok: false; readonly why: "no-descent" };

/**
 * What one outlet uses from the loss of cabin pressure to the end of the descent.
 *
 * @param table the outlet's flows by cabin altitude, NTPD
 */
export function descentSupply(table: readonly FlowRow[], descent: EmergencyDescent): DescentSupply {
  const { from_m, to_m, rate_mPerS, recognition_s } = descent;
  const sound = rate_mPerS > 0 && recognition_s >= 0 && from_m >= to_m;
  if (!sound || !Number.isFinite(rate_mPerS) || !Number.isFinite(recognition_s))
    return { ok: false, why: "no-descent" };
  const mean = meanFlowBetween(table, from_m, to_m);
  if (!mean.ok) return mean;
  const atTop = flowAt(table, from_m);
  if (!atTop.ok) return atTop;
  const descending_s = (from_m - to_m) / rate_mPerS;
  return {
    ok: true,
    time_s: recognition_s + descending_s,
    meanFlow_m3PerS: mean.meanFlow_m3PerS,
    supply_m3: recognition_s * atTop.flow_m3PerS + descending_s * mean.meanFlow_m3PerS,
  };
}
