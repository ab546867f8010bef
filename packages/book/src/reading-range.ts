import type { Measure } from "@witnessmark/engine";
import type { Gauge } from "./schema/gauge.ts";
import type { Reading } from "./schema/reading.ts";

type Ends = readonly [lowSI: number, highSI: number];

/**
 * Between what values a reading can be one, in SI: what its gauge can show or, where the book does not say, the rule of
 * the check with its length once more at each end. Zero is always among them: a flat tyre, a dead battery. What is
 * outside is a slip of the finger.
 */
export function rangeShown(gauge: Gauge, { scale }: Pick<Reading, "scale">): Ends {
  if (gauge.range !== undefined) return inSI(gauge.range);
  const [low, high] = inSI(scale);
  const length = high - low;
  if (gauge.dimension === "temperature") return [low - length, high + length];
  return [low < 0 ? low - length : 0, Math.max(0, high + length)];
}

const inSI = ([low, high]: readonly [Measure, Measure]): Ends => [low.valueSI, high.valueSI];
