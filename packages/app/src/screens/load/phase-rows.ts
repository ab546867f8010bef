import type { LoadFigures, LoadMoment, LoadState, WorstPoint } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";
import { MOMENT_NAMES } from "./envelope-layout.ts";
import { edgeArm_m } from "./envelope-words.ts";
import {
  armBeside,
  edgeWords,
  type LoadUnits,
  leftText,
  limitText,
  marginWords,
  rangeText,
  safe,
  symbolOf,
} from "./load-units.ts";

/** What a row of the table is of: a moment of the flight, or the point between them that is nearest to an edge. */
export type RowKey = LoadMoment | "worst";

/** One row of the table in words. */
export interface PhaseRow {
  readonly name: string;
  /** Under the name, where there is more to say. */
  readonly under: string;
  readonly mass: string;
  readonly limit: string;
  readonly arm: string;
  readonly range: string;
  /** What is left to the mass limit, and to the nearest edge. */
  readonly massLeft: string;
  readonly massStatus: Status;
  readonly edgeLeft: string;
  readonly edgeStatus: Status;
  readonly status: Status;
}

/** The worst point where the table has no moment for it: between two, or with the gear up. */
export function worstBetween({ envelope }: Pick<LoadFigures, "envelope">): WorstPoint | undefined {
  const worst = envelope?.worst;
  return worst !== undefined && (worst.gearUp || worst.at === undefined) ? worst : undefined;
}

/** Every point of the flight that the picture shows, by its row. */
export function pointsOf(
  figures: Pick<LoadFigures, "envelope" | "states">,
): readonly { readonly at: RowKey; readonly arm_m: number; readonly mass_kg: number }[] {
  const worst = worstBetween(figures);
  return [
    ...figures.states,
    ...(worst === undefined ? [] : [{ at: "worst" as const, arm_m: worst.arm_m, mass_kg: worst.mass_kg }]),
  ];
}

/** The rows in the order of the flight. */
export function rowKeys(figures: LoadFigures): readonly RowKey[] {
  const worst = worstBetween(figures);
  const keys = figures.states.map(({ at }): RowKey => at);
  if (worst === undefined) return keys;
  // the lighter it is, the later; with the gear up at a moment, after that
  const later = figures.states.findIndex(
    ({ at, mass_kg }) => at !== "zero-fuel" && mass_kg < worst.mass_kg - SAME_kg,
  );
  return later < 0 ? [...keys, "worst"] : keys.toSpliced(later, 0, "worst");
}

const SAME_kg = 1e-6;

/** The row of a key; `null` where there is no such moment. */
export function phaseRow(key: RowKey, figures: LoadFigures, units: LoadUnits): PhaseRow | null {
  if (key === "worst") {
    const worst = worstBetween(figures);
    return worst === undefined ? null : worstRow(worst, units);
  }
  const state = figures.states.find(({ at }) => at === key);
  return state === undefined ? null : momentRow(state, units);
}

function momentRow(state: LoadState, units: LoadUnits): PhaseRow {
  const { at, mass_kg, arm_m, armRange_m, mass, nearest, edges, status } = state;
  // on the ramp the edges do not hold yet: take-off, a few kilograms later, is what counts
  const isHeld = at !== "ramp";
  return {
    name: MOMENT_NAMES[at],
    under: at === "zero-fuel" && !state.inEnvelope ? "only if flown dry" : "",
    mass: safe(mass_kg, units.mass, "up"),
    limit: mass === undefined ? "none" : safe(mass.limit, units.mass, "down"),
    arm: armBeside(arm_m, isHeld ? nearest?.edge : undefined, units.arm),
    range: !isHeld ? "from take-off" : armRange_m === undefined ? "none" : rangeText(armRange_m, units.arm),
    massLeft: mass === undefined ? "" : massLeft(mass.left, units),
    massStatus: mass?.status ?? "clear",
    edgeLeft: !isHeld ? "" : nearest === undefined ? "outside" : edgeWords(nearest, units),
    edgeStatus: edges,
    status,
  };
}

function worstRow(worst: WorstPoint, units: LoadUnits): PhaseRow {
  const { at, mass_kg, arm_m, burnt_kg, edge, left, gearUp, status } = worst;
  const isAcross = edge === "forward" || edge === "aft";
  const when =
    at === undefined
      ? `${safe(burnt_kg, units.mass, "up")} ${symbolOf(units.mass)} burnt`
      : MOMENT_NAMES[at].toLowerCase();
  return {
    name: "Worst",
    under: gearUp ? `gear up, ${when}` : when,
    mass: safe(mass_kg, units.mass, "up"),
    limit: "",
    arm: armBeside(arm_m, isAcross ? edge : undefined, units.arm),
    range: isAcross ? oneEdge(worst, units) : "none",
    massLeft: isAcross ? "" : marginWords(left, units.mass),
    massStatus: status,
    edgeLeft: isAcross ? edgeWords({ edge, left_m: left }, units) : "",
    edgeStatus: status,
    status,
  };
}

/** "to 4.360", "from 4.083": the edge that the worst point is measured from. */
const oneEdge = (worst: WorstPoint, { arm }: LoadUnits): string =>
  worst.edge === "aft"
    ? `to ${limitText(edgeArm_m(worst), "aft", arm)}`
    : `from ${limitText(edgeArm_m(worst), "forward", arm)}`;

/** "71 kg", "14 kg over". */
const massLeft = (left_kg: number, { mass }: LoadUnits): string =>
  left_kg < 0 ? marginWords(left_kg, mass) : leftText(left_kg, mass);
