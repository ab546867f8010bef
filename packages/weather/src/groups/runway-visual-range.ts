import { type Measure, measure } from "@witnessmark/engine";
import { doubtful, impossible, notObserved } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";

export interface RangeValue {
  readonly range_m: number;
  readonly bound?: "less than" | "more than";
  readonly coded: Measure;
}

/** The visual range on one runway: one value, or the lowest and the highest of the last minutes. */
export interface RunwayVisualRange {
  readonly runway: string;
  readonly lowest: RangeValue;
  /** Only when it varies. */
  readonly highest?: RangeValue;
  readonly tendency?: "rising" | "falling" | "no distinct change";
}

const RANGE = /^R(\d{2}(?:LL|RR|[LCR])?)\/([PM]?)(\d{4})(?:V([PM]?)(\d{4}))?(FT)?\/?([UDN])?$/u;
const TENDENCY = { U: "rising", D: "falling", N: "no distinct change" } as const;

export const isRunway = (name: string): boolean => {
  const number = Number(name.slice(0, 2));
  return /^\d{2}(?:LL|RR|[LCR])?$/u.test(name) && number >= 1 && number <= 36;
};

const rangeValue = (sign: string | undefined, digits: string, unit: "ft" | "m"): RangeValue => {
  const coded = measure(Number(digits), unit);
  return {
    range_m: coded.valueSI,
    ...(sign === "P" ? { bound: "more than" as const } : sign === "M" ? { bound: "less than" as const } : {}),
    coded,
  };
};

/** R17L/2600FT, R01L/0600V1000FT, R27R/M0050V0300D: each bound belongs to the value that it stands before. */
export const readRunwayVisualRange: Reader = (place) => {
  const token = tokenAt(place);
  if (/^R\d{2}[LCR]?\/\/{4}(?:FT)?$/u.test(token))
    return faulty(notObserved("runway visual range missing", "runway"));
  const found = RANGE.exec(token);
  if (found === null) return undefined;
  const [, runway = "", lowSign, low = "", highSign, high, feet, tendency] = found;
  if (!isRunway(runway)) return faulty(impossible("no runway has that number; expected 01 to 36", "runway"));
  const unit = feet === "FT" ? "ft" : "m";
  const lowest = rangeValue(lowSign, low, unit);
  const highest = high === undefined ? undefined : rangeValue(highSign, high, unit);
  if (highest !== undefined && highest.range_m <= lowest.range_m)
    return faulty(doubtful("the highest value is not above the lowest; not used", "runway"));
  const range: RunwayVisualRange = {
    runway,
    lowest,
    ...(highest === undefined ? {} : { highest }),
    ...(tendency === "U" || tendency === "D" || tendency === "N" ? { tendency: TENDENCY[tendency] } : {}),
  };
  return used({ is: "runway visual range", range });
};
