import {
  type Dimension,
  differenceFromSI,
  roundStep,
  UNITS,
  type UnitId,
  unitFromText,
} from "@witnessmark/engine";

/** To how much a common gauge is true, in SI: common practice, on the coarse side. */
const COMMON: Readonly<Partial<Record<Dimension, number>>> = {
  pressure: 6_894, // a tyre gauge: 1 psi, or 0.1 bar
  temperature: 2,
  length: 0.002,
  volume: 1e-3, // a tank's dipstick: 1 L
  voltage: 0.2,
  current: 2,
  mass: 1,
  frequency: 50 / 60, // 50 rpm
};

/** A dipstick for oil is read in quarts. */
const QUARTS: readonly UnitId[] = ["USqt", "impqt"];
const OIL_m3 = 0.25e-3;

/** What a new gauge starts from, until its own figures are put in: as texts in its unit. */
export interface GaugeProposal {
  readonly accuracy: string;
  readonly resolution: string;
}

/** By what it reads in; none for a unit that is not known, or of which no gauge is common. */
export function gaugeProposal(unitText: string): GaugeProposal | undefined {
  const unit = unitFromText(unitText);
  if (unit === undefined) return undefined;
  const { dimension, symbol } = UNITS[unit];
  const trueTo = QUARTS.includes(unit) ? OIL_m3 : COMMON[dimension];
  if (trueTo === undefined) return undefined;
  const accuracy = roundStep(differenceFromSI(trueTo, unit), "up");
  return { accuracy: `${accuracy} ${symbol}`, resolution: `${roundStep(accuracy / 2, "down")} ${symbol}` };
}
