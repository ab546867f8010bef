import type { Book, Gauge, Reading } from "@witnessmark/book";
import {
  cylinderPressureAtTemperature,
  differenceFromSI,
  differenceToSI,
  formatMeasure,
  fromSI,
  gaugePressureAtTemperature,
  InputError,
  standardUncertainty,
  toSI,
  UNITS,
  withSymbol,
} from "@witnessmark/engine";
import type { Read, RecordedReading } from "@witnessmark/ledger";
import { figuresOf } from "../reading/figures.ts";
import { type Band, bandOf } from "../reading/limit-now.ts";

/** How the values of a series are shown: `shown = valueSI × perSI + offset`, to a step. */
export interface Shown {
  readonly perSI: number;
  readonly offset: number;
  /** The smallest step, as shown. */
  readonly step: number;
  /** `bar`, `L in 10 h` */
  readonly symbol: string;
}

/** A reading as it would have been under the conditions of the whole series. */
export interface Referred {
  readonly valueSI: number;
  /** Standard uncertainty, accuracy of the gauge included, SI. */
  readonly uncertaintySI: number;
  /** The part of it that is another one each time: the step of the gauge and of the thermometer, SI. */
  readonly scatterSI: number;
}

/** The same as the limits take it. @source ISO 2533:1975, standard pressure at sea level */
const AMBIENT_PA = 101_325;

/** Where a book's table has no temperature of its own to refer to. @source ISO 2533:1975, sea level */
const STANDARD_K = 288.15;

/** A thermometer is read to a whole degree: that step alone, evenly spread. @source JCGM 100:2008, F.2.2.1 */
const TEMPERATURE_STEP_K = 1;
const OF_A_STEP_1 = 1 / Math.sqrt(12);

/** The temperature that a series is referred to; undefined where none moves its limit. */
export function referenceOf({ limit }: Reading): Read | undefined {
  switch (limit.by) {
    case "fixed":
      return undefined;
    case "gas-law":
    case "cylinder":
    case "tyre":
      return { value: limit.at.value, unit: limit.at.unit };
    case "table": {
      const nearest = limit.rows.reduce((best, row) =>
        Math.abs(row.at.valueSI - STANDARD_K) < Math.abs(best.at.valueSI - STANDARD_K) ? row : best,
      );
      return { value: nearest.at.value, unit: nearest.at.unit };
    }
    default:
      return limit satisfies never;
  }
}

/** The limits under the conditions of the series, SI. */
export const limitsOf = (reading: Reading): Band => bandOf(reading, referenceOf(reading)) ?? {};

/** How the values of a check are shown: in the unit of its gauge, `bar at 15 °C`. */
export function shownOf(reading: Reading, gauge: Gauge): Shown {
  const { unit, step } = figuresOf(gauge);
  const at = referenceOf(reading);
  const symbol = UNITS[unit].symbol;
  return {
    perSI: differenceFromSI(1, unit),
    offset: fromSI(0, unit),
    step,
    symbol: at === undefined ? symbol : `${symbol} at ${formatMeasure(toSI(at.value, at.unit), at.unit, 1)}`,
  };
}

const moved = (valueSI: number, temperature_K: number, reading: Reading): number => {
  const { limit } = reading;
  const quantity =
    limit.by === "cylinder" ? cylinderPressureAtTemperature[limit.gas] : gaugePressureAtTemperature;
  const reference = referenceOf(reading);
  return quantity.compute({
    gaugePressure_Pa: valueSI,
    temperature_K,
    newTemperature_K: reference === undefined ? temperature_K : toSI(reference.value, reference.unit),
    ambientPressure_Pa: AMBIENT_PA,
  });
};

/** A value that stands in the band at the reference where it stood in the band at its own temperature. */
function byTable(valueSI: number, reading: Reading, temperature: Read): number | undefined {
  const then = bandOf(reading, temperature);
  const there = limitsOf(reading);
  if (then === undefined) return undefined;
  const shift = (end: "low" | "high"): number | undefined => {
    const from = then[end];
    const to = there[end];
    return from === undefined || to === undefined ? undefined : to - from;
  };
  const low = shift("low");
  const high = shift("high");
  if (low === undefined || high === undefined || then.low === undefined || then.high === undefined) {
    const only = low ?? high;
    return only === undefined ? undefined : valueSI + only;
  }
  const width = then.high - then.low;
  const share_1 = width > 0 ? Math.min(1, Math.max(0, (valueSI - then.low) / width)) : 0;
  return valueSI + low + (high - low) * share_1;
}

function valueAtReference(valueSI: number, reading: Reading, temperature: Read | undefined) {
  if (reading.limit.by === "fixed") return { valueSI, perKelvin: 0 };
  if (temperature === undefined || UNITS[temperature.unit].dimension !== "temperature") return undefined;
  if (reading.limit.by === "table") {
    const referred = byTable(valueSI, reading, temperature);
    return referred === undefined ? undefined : { valueSI: referred, perKelvin: 0 };
  }
  const temperature_K = toSI(temperature.value, temperature.unit);
  try {
    // a degree more or less in a gas: p / T, which is near enough for a doubt
    return {
      valueSI: moved(valueSI, temperature_K, reading),
      perKelvin: (valueSI + AMBIENT_PA) / temperature_K,
    };
  } catch (error) {
    if (error instanceof InputError) return undefined; // outside what the formula covers
    throw error;
  }
}

/**
 * A reading referred to the conditions of its series.
 *
 * @returns undefined where it cannot be: no temperature, or one that the formula does not cover, or another dimension
 */
export function refer(
  reading: Reading,
  gauges: Book["gauges"],
  { read, temperature, gauge: gaugeId }: Pick<RecordedReading, "read" | "temperature" | "gauge">,
): Referred | undefined {
  const gauge = gauges.get(gaugeId) ?? gauges.get(reading.gauge);
  if (gauge === undefined || UNITS[read.unit].dimension !== reading.dimension) return undefined;
  const found = valueAtReference(toSI(read.value, read.unit), reading, temperature);
  if (found === undefined || !Number.isFinite(found.valueSI)) return undefined;
  const ofTemperature = found.perKelvin * TEMPERATURE_STEP_K * OF_A_STEP_1;
  const resolution = differenceToSI(gauge.resolution.value, gauge.resolution.unit);
  return {
    valueSI: found.valueSI,
    uncertaintySI: Math.hypot(
      standardUncertainty({
        accuracy: differenceToSI(gauge.accuracy.value, gauge.accuracy.unit),
        resolution,
        coverage: gauge.coverage,
      }),
      ofTemperature,
    ),
    scatterSI: Math.hypot(resolution * OF_A_STEP_1, ofTemperature),
  };
}

const plain = ({ value, unit }: Read): string =>
  withSymbol(String(Number(value.toPrecision(6))).replace("-", "−"), unit);

/** `5.30 bar at 4 °C`: as it was read, before it was referred to anything; to the gauge's step in the gauge's unit. */
export function asRead(
  { read, temperature }: Pick<RecordedReading, "read" | "temperature">,
  gauge?: Gauge,
): string {
  const figures = gauge === undefined ? undefined : figuresOf(gauge);
  const text =
    figures?.unit === read.unit
      ? formatMeasure(toSI(read.value, read.unit), read.unit, figures.step)
      : plain(read);
  return temperature === undefined ? text : `${text} at ${plain(temperature)}`;
}
