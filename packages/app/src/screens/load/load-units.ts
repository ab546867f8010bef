import { fromSI, roundToSafeSide, UNITS, type UnitId } from "@witnessmark/engine";
import { useMemo } from "react";
import { preferences } from "../../preferences/preferences.ts";
import { figure } from "../../words/figures.ts";

/** The units that a load is shown in: those the person chose, as far as loads are ever told in them. */
export interface LoadUnits {
  readonly mass: UnitId;
  readonly volume: UnitId;
  /** Of arms, from the datum. */
  readonly arm: UnitId;
  /** Of what is left to an edge. */
  readonly margin: UnitId;
  readonly temperature: UnitId;
}

const IN_INCHES: readonly UnitId[] = ["in", "ft"];
const IN_US_GALLONS: readonly UnitId[] = ["USgal", "USqt", "USpt"];
const IN_IMPERIAL: readonly UnitId[] = ["impgal", "impqt"];

function loadUnits(chosen: ReturnType<typeof preferences.get>["units"]): LoadUnits {
  const { mass, volume, length, temperature } = chosen;
  const inches = length !== undefined && IN_INCHES.includes(length);
  return {
    mass: mass === "lb" ? "lb" : "kg",
    volume:
      volume !== undefined && IN_US_GALLONS.includes(volume)
        ? "USgal"
        : volume !== undefined && IN_IMPERIAL.includes(volume)
          ? "impgal"
          : "L",
    arm: inches ? "in" : "m",
    margin: inches ? "in" : "mm",
    temperature: temperature ?? "degC",
  };
}

/** The same object until another unit is chosen. */
export function useLoadUnits(): LoadUnits {
  const { units } = preferences.use();
  return useMemo(() => loadUnits(units), [units]);
}

const STEP: Readonly<Partial<Record<UnitId, number>>> = { in: 0.01, USgal: 0.1, impgal: 0.1 };
const DECIMALS: Readonly<Partial<Record<UnitId, number>>> = { in: 2, USgal: 1, impgal: 1 };

export const symbolOf = (unit: UnitId): string => UNITS[unit].symbol;

/** To the nearest whole kilogram, pound or litre: what one would say. */
export const plain = (valueSI: number, unit: UnitId): string =>
  figure(fromSI(valueSI, unit), DECIMALS[unit] ?? 0);

/** Rounded so that it never flatters: what is there up, what is left down. */
export const safe = (valueSI: number, unit: UnitId, way: "up" | "down"): string =>
  figure(roundToSafeSide(fromSI(valueSI, unit), STEP[unit] ?? 1, way), DECIMALS[unit] ?? 0);

/** "164 kg", "−12 kg": what is left, with its unit. */
export const leftText = (valueSI: number, unit: UnitId): string =>
  `${safe(valueSI, unit, "down")} ${symbolOf(unit)}`;

/** "164 kg left", "12 kg over", "on the limit". */
export function marginWords(leftSI: number, unit: UnitId): string {
  if (leftSI < 0) return `${safe(-leftSI, unit, "up")} ${symbolOf(unit)} over`;
  return `${leftText(leftSI, unit)} left`;
}

type Edge = "forward" | "aft";

const ARM_STEP: Readonly<Partial<Record<UnitId, number>>> = { in: 0.01 };
const ARM_DECIMALS: Readonly<Partial<Record<UnitId, number>>> = { in: 2 };

const armRounded = (arm_m: number, unit: UnitId, way: "up" | "down"): string =>
  figure(roundToSafeSide(fromSI(arm_m, unit), ARM_STEP[unit] ?? 0.001, way), ARM_DECIMALS[unit] ?? 3);

/** An arm: 4.169 m, 164.13 in. */
export const armText = (arm_m: number, unit: UnitId): string =>
  figure(fromSI(arm_m, unit), ARM_DECIMALS[unit] ?? 3);

/** An arm of the book, without the zeros that it does not need: 3.62 m. */
export const shortArm = (arm_m: number, unit: UnitId): string =>
  armText(arm_m, unit).replace(/(\.\d\d)0$/, "$1");

/** An arm beside the edge that it is held to, rounded towards that: what is past it never reads as on it. */
export const armBeside = (arm_m: number, edge: Edge | undefined, unit: UnitId): string =>
  edge === undefined ? armText(arm_m, unit) : armRounded(arm_m, unit, edge === "aft" ? "up" : "down");

/** The arm of an edge, narrowed by the rounding. */
export const limitText = (arm_m: number, edge: Edge, unit: UnitId): string =>
  armRounded(arm_m, unit, edge === "aft" ? "down" : "up");

/** The arms that are allowed, narrowed by the rounding: "4.083 to 4.360". */
export const rangeText = ([forward_m, aft_m]: readonly [number, number], unit: UnitId): string =>
  `${limitText(forward_m, "forward", unit)} to ${limitText(aft_m, "aft", unit)}`;

/** "30 mm to aft", "12 mm behind", "54 mm ahead": what is left to the edge that is nearest, or how far past it. */
export function edgeWords(
  { edge, left_m }: { readonly edge: Edge; readonly left_m: number },
  { margin }: Pick<LoadUnits, "margin">,
): string {
  if (left_m >= 0) return `${leftText(left_m, margin)} to ${edge === "aft" ? "aft" : "fwd"}`;
  return `${safe(-left_m, margin, "up")} ${symbolOf(margin)} ${edge === "aft" ? "behind" : "ahead"}`;
}
