import { band } from "@witnessmark/assess";
import type { Book, Check, Gauge, Reading } from "@witnessmark/book";
import {
  cylinderPressureAtTemperature,
  decimalsOf,
  differenceFromSI,
  differenceToSI,
  formatMeasure,
  fromSI,
  gaugePressureAtTemperature,
  InputError,
  roundStep,
  roundToSafeSide,
  toSI,
  type UnitId,
  withSymbol,
} from "@witnessmark/engine";
import type { Read, RecordedReading } from "@witnessmark/ledger";
import type { RuleTexts, RuleValues } from "../instruments/rule-layout.ts";
import { roundTo } from "../instruments/scale.ts";
import { dayMonth } from "../words/dates.ts";
import { figure } from "../words/figures.ts";

/** In what unit a reading is entered here, and in what steps. */
export interface EntryUnit {
  readonly unit: UnitId;
  /** One press of − or +, in `unit`. */
  readonly step: number;
  readonly decimals: number;
}

/** The gauge's own unit and the book's step; in another unit, the nearest round step that is not coarser. */
export function entryUnit(reading: Reading, gauge: Gauge, chosen: UnitId | undefined): EntryUnit {
  const unit = chosen ?? gauge.unit;
  const stepSI = differenceToSI(reading.step.value, reading.step.unit);
  const exact = differenceFromSI(stepSI, unit);
  const step = unit === reading.step.unit ? reading.step.value : roundStep(exact, "down");
  const resolution =
    unit === gauge.resolution.unit
      ? Math.min(step, gauge.resolution.value)
      : roundStep(
          differenceFromSI(differenceToSI(gauge.resolution.value, gauge.resolution.unit), unit),
          "down",
        );
  return { unit, step, decimals: Math.max(decimalsOf(step), decimalsOf(resolution)) };
}

/** Everything that the rule and the entry below it show. */
export interface ReadingView {
  readonly values: RuleValues;
  readonly texts: RuleTexts;
  readonly entry: EntryUnit;
  readonly doubtText: string;
}

interface ReadingGiven {
  readonly book: Book;
  readonly check: Check;
  readonly reading: Reading;
  readonly gauge: Gauge;
  readonly entry: EntryUnit;
  readonly now: number | null;
  readonly temperature: Read | undefined;
  readonly last: RecordedReading | undefined;
}

export function readingView(given: ReadingGiven): ReadingView {
  const { book, check, reading, gauge, entry, now, temperature, last } = given;
  const { unit, decimals } = entry;
  const [from, to] = reading.scale;
  const limits = band(check, book, temperature);
  const low = limits?.low === undefined ? undefined : fromSI(limits.low, unit);
  const high = limits?.high === undefined ? undefined : fromSI(limits.high, unit);
  const carried = last === undefined ? undefined : carriedValue(reading, last, temperature);
  const lastValue = carried === undefined ? undefined : fromSI(carried, unit);
  const fine = 10 ** -decimals;
  const ends: Ends = { from: fromSI(from.valueSI, unit), to: fromSI(to.valueSI, unit) };
  const window = windowOf(ends, { low, high, last: lastValue, now }, entry.step);
  return {
    entry,
    doubtText: figure(
      differenceFromSI(differenceToSI(gauge.accuracy.value, gauge.accuracy.unit), unit),
      decimals,
    ),
    values: {
      min: roundTo(window.from, fine),
      max: roundTo(window.to, fine),
      now,
      doubt: differenceFromSI(differenceToSI(gauge.accuracy.value, gauge.accuracy.unit), unit),
      ...(low === undefined ? {} : { low }),
      ...(high === undefined ? {} : { high }),
      ...(lastValue === undefined ? {} : { last: lastValue }),
    },
    texts: {
      ...(low === undefined ? {} : { low: figure(roundToSafeSide(low, fine, "up"), decimals) }),
      ...(high === undefined ? {} : { high: figure(roundToSafeSide(high, fine, "down"), decimals) }),
      ...(last === undefined ? {} : { last: dayMonth(Date.parse(last.recordedAt)) }),
      band:
        reading.limit.by === "fixed"
          ? "allowed"
          : temperature === undefined
            ? "the band waits for its temperature"
            : low === undefined && high === undefined
              ? `no band at ${temperatureText(temperature)}`
              : `band at ${temperatureText(temperature)}`,
    },
  };
}

interface Ends {
  readonly from: number;
  readonly to: number;
}

interface Landmarks {
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly last: number | undefined;
  readonly now: number | null;
}

/** So much room is left beside the band, as a share of its width. */
const BESIDE_1 = 0.75;

/**
 * The part of the book's scale that is drawn: close round the band, so that a step can be seen and dragged, and wide
 * enough for last time's value and today's.
 */
function windowOf(scale: Ends, { low, high, last, now }: Landmarks, step: number): Ends {
  if (low === undefined || high === undefined) {
    return { from: Math.min(scale.from, now ?? scale.from), to: Math.max(scale.to, now ?? scale.to) };
  }
  const beside = Math.max((high - low) * BESIDE_1, 3 * step);
  const from = Math.max(scale.from, Math.min(low - beside, (last ?? low) - beside / 2));
  const to = Math.min(scale.to, Math.max(high + beside, (last ?? high) + beside / 2));
  return {
    from: Math.floor((now === null ? from : Math.min(from, now - 2 * step)) / step) * step,
    to: Math.ceil((now === null ? to : Math.max(to, now + 2 * step)) / step) * step,
  };
}

/**
 * Last time's value at today's temperature, in SI: only so can the two stripes be compared.
 *
 * @returns undefined when the two cannot be compared: a temperature is missing, or outside what the formula covers
 */
export function carriedValue(
  reading: Reading,
  last: Pick<RecordedReading, "read" | "temperature">,
  temperature: Read | undefined,
): number | undefined {
  const valueSI = toSI(last.read.value, last.read.unit);
  const { limit } = reading;
  const formula =
    limit.by === "cylinder"
      ? cylinderPressureAtTemperature[limit.gas]
      : limit.by === "gas-law" || limit.by === "tyre"
        ? gaugePressureAtTemperature
        : undefined;
  if (formula === undefined) return valueSI;
  if (last.temperature === undefined || temperature === undefined) return undefined;
  try {
    return formula.compute({
      gaugePressure_Pa: valueSI,
      temperature_K: toSI(last.temperature.value, last.temperature.unit),
      newTemperature_K: toSI(temperature.value, temperature.unit),
      ambientPressure_Pa: 101_325,
    });
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** "4 °C". */
export const temperatureText = ({ value, unit }: Read): string =>
  withSymbol(figure(value, Number.isInteger(value) ? 0 : 1), unit);

/** "5.20 bar at 11 °C": a reading as it was kept, in the unit that is used now. */
export function readingText(kept: Pick<RecordedReading, "read" | "temperature">, entry: EntryUnit): string {
  const text = formatMeasure(toSI(kept.read.value, kept.read.unit), entry.unit, 10 ** -entry.decimals);
  return kept.temperature === undefined ? text : `${text} at ${temperatureText(kept.temperature)}`;
}
