import { formatMeasure, roundToSafeSide } from "@witnessmark/engine";
import { kg, marginKg, marginMm, metres3 } from "../words.ts";
import type { LoadMoment, WorstPoint } from "./figures.ts";

export const WHERE: Readonly<Record<LoadMoment, string>> = {
  "zero-fuel": "with the tanks dry",
  ramp: "on the ramp",
  "take-off": "at take-off",
  landing: "at landing",
  alternate: "at the alternate",
};

export const EDGES: Readonly<Record<WorstPoint["edge"], string>> = {
  forward: "forward of the envelope",
  aft: "aft of the envelope",
  upper: "above the envelope",
  lower: "below the envelope",
};

export const worstMargin = ({ edge, left }: WorstPoint) =>
  edge === "forward" || edge === "aft"
    ? marginMm(left, edge === "aft" ? "too far aft" : "too far forward")
    : marginKg(left, edge === "upper" ? "over" : "under");

export const worstWhere = ({ at, burnt_kg }: WorstPoint): string =>
  at === undefined ? `after ${kg(burnt_kg, "up")} burnt` : WHERE[at];

/** An arm beside an edge, rounded towards it: what is past it never reads as on it. */
export const towards = (arm_m: number, edge: WorstPoint["edge"], step_m: number): string => {
  if (edge !== "forward" && edge !== "aft") return metres3(arm_m);
  return formatMeasure(roundToSafeSide(arm_m, step_m, edge === "aft" ? "up" : "down"), "m", step_m);
};

export const worstPlace = (worst: WorstPoint, step_m = 0.001): string =>
  `${towards(worst.arm_m, worst.edge, step_m)} ${worstWhere(worst)}${worst.gearUp ? ", gear up" : ""}`;

/** A working is told apart to a tenth of a millimetre. */
export const FINE_m = 0.0001;

/** The arms that are allowed, narrowed by the rounding. */
export const allowed = ([forward_m, aft_m]: readonly [number, number]): string =>
  `${roundToSafeSide(forward_m, FINE_m, "up").toFixed(4)} to ${formatMeasure(roundToSafeSide(aft_m, FINE_m, "down"), "m", FINE_m)} allowed`;
