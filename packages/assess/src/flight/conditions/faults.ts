import { type Dimension, formatMeasure, toSI, UNITS, type UnitId, unitsOf } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import type { FieldRole } from "./role.ts";

/** Something in a plan that cannot be, and where it stands. */
export interface ConditionFault {
  readonly where: {
    readonly kind: "field" | "runway" | "approach" | "typed" | "metar" | "taf" | "own" | "route";
    readonly role?: FieldRole;
    /** The name of the value in the plan: `windSpeed`. */
    readonly part?: string;
  };
  /** One plain sentence without full stop. */
  readonly says: string;
}

/** What a typed value must be. */
export interface Wanted {
  readonly dimension: Dimension;
  /** As a person calls it: "wind speed". */
  readonly name: string;
  /** Lowest and highest in SI that can be. */
  readonly range: readonly [low: number, high: number];
  /** The unit and step in which the range is told. */
  readonly unit: UnitId;
  readonly step: number;
}

const shownRange = ({ range: [low, high], unit, step }: Wanted): string =>
  `${formatMeasure(low, unit, step)} to ${formatMeasure(high, unit, step)}`;

/** Another unit of the dimension in which the figure could be. */
function meant(read: Read, { dimension, range: [low, high] }: Wanted): UnitId | undefined {
  return unitsOf(dimension).find((unit) => {
    const value = toSI(read.value, unit);
    return unit !== read.unit && value >= low && value <= high;
  });
}

/**
 * A value that a person typed, in SI.
 *
 * @returns the value, or a sentence that says what was expected, what came and what was perhaps meant
 */
export function typedSI(read: Read, wanted: Wanted): { readonly value: number } | { readonly says: string } {
  const { dimension, name, range } = wanted;
  const shown = `${read.value} ${UNITS[read.unit].symbol}`.trim();
  if (!Number.isFinite(read.value)) return { says: `${name}: expected a number, received ${read.value}` };
  if (UNITS[read.unit].dimension !== dimension) {
    return { says: `${name}: expected a ${dimension}, received ${shown}, a ${UNITS[read.unit].dimension}` };
  }
  const value = toSI(read.value, read.unit);
  if (value >= range[0] && value <= range[1]) return { value };
  const unit = meant(read, wanted);
  const hint = unit === undefined ? "" : `; was that ${read.value} ${UNITS[unit].symbol}?`;
  return { says: `${name}: expected ${shownRange(wanted)}, received ${shown}${hint}` };
}
