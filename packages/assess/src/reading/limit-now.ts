import type { Gauge, Limit, Reading } from "@witnessmark/book";
import {
  cylinderPressureAtTemperature,
  decimalsOf,
  formatMeasure,
  fromSI,
  gaugePressureAtTemperature,
  InputError,
  type Measure,
  type QuantitySource,
  roundToSafeSide,
  toSI,
  tyreAction,
  UNITS,
  type UnitId,
} from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import type { Source, Working, WorkingLine } from "../assessment.ts";

/** Low and high in SI; an end that is absent has no limit. */
export interface Band {
  readonly low?: number;
  readonly high?: number;
}

/** The limit as it is at this temperature, or why it cannot be known. */
export type LimitNow =
  | {
      readonly known: true;
      readonly band: Band;
      /** What the book says, and what the limit was moved by. */
      readonly lines: readonly WorkingLine[];
      readonly formula?: NonNullable<Working["formula"]>;
      readonly sources: readonly Source[];
    }
  | { readonly known: false; readonly says: string; readonly missing: string };

/**
 * The air outside is taken at its standard pressure at sea level: the flight does not say the elevation yet.
 *
 * @source ISO 2533:1975, standard pressure at sea level
 */
const AMBIENT_PA = 101_325;
const AMBIENT_LINE: WorkingLine = { label: "Air outside, taken as", value: "1013\u00A0hPa" };

/** A tyre may have up to this much of its service pressure: the upper edge of the band in which nothing is done. */
export const TYRE_HIGH_1 = 1.05;

const unknown = (says: string, missing: string): LimitNow => ({ known: false, says, missing });

/** A value as the book writes it. */
export const asWritten = ({ value, unit, valueSI }: Measure, step?: number): string =>
  formatMeasure(valueSI, unit, step ?? stepOf(value));

const stepOf = (value: number): number => 10 ** -(String(value).split(".")[1]?.length ?? 0);

/** `4 °C`, `39.2 °F`; finer than a tenth nobody reads it. */
export const temperatureText = ({ value, unit }: Read): string =>
  formatMeasure(toSI(value, unit), unit, Math.max(0.1, stepOf(value)));

/** The book's own band in words: `4.20 bar to 5.00 bar`, `5.20 bar or more`, `at most 6 bar`. */
function bookBand({ low, high }: { readonly low?: Measure; readonly high?: Measure }, step?: number): string {
  if (low !== undefined && high !== undefined) return `${asWritten(low, step)} to ${asWritten(high, step)}`;
  if (low !== undefined) return `${asWritten(low, step)} or more`;
  return high === undefined ? "no limit" : `at most ${asWritten(high, step)}`;
}

const bandSI = (low: number | undefined, high: number | undefined): Band => ({
  ...(low === undefined ? {} : { low }),
  ...(high === undefined ? {} : { high }),
});

export const sourceOf = ({ title, edition, locator, status }: QuantitySource): Source => {
  const where = [edition, locator, status === "published" ? undefined : status].filter(Boolean).join("; ");
  return where === "" ? { title } : { title, locator: where };
};

/** What the engine refused about a temperature, in words, with the nearest temperature that it covers. */
function refused(error: unknown, temperature: Read): LimitNow {
  if (!(error instanceof InputError)) throw error;
  const { range } = error.detail;
  const here = temperatureText(temperature);
  if (range === undefined || !error.field.startsWith("newTemperature")) {
    return unknown(`No limit at ${here}: ${error.message}`, `a limit at ${here}`);
  }
  const nearest_K = Math.min(Math.max(toSI(temperature.value, temperature.unit), range[0]), range[1]);
  return outsideOf(temperature, nearest_K, "the formula");
}

function outsideOf(temperature: Read, nearest_K: number, what: string): LimitNow {
  const here = temperatureText(temperature);
  const { unit } = temperature;
  const inward = nearest_K > toSI(temperature.value, unit) ? "up" : "down";
  const there = formatMeasure(toSI(roundToSafeSide(fromSI(nearest_K, unit), 1, inward), unit), unit, 1);
  return unknown(
    `No limit at ${here}: ${what} ends at ${there}`,
    `a limit at ${here} (nearest covered: ${there})`,
  );
}

interface Moved {
  readonly low?: Measure;
  readonly high?: Measure;
  readonly at: Measure;
}

/** A limit that a gas moves: each end from the book's temperature to that of now. */
function moved(
  limit: Moved,
  temperature: Read,
  quantity: Pick<typeof gaugePressureAtTemperature, "compute" | "formula" | "sources"> & {
    readonly id: string;
  },
  step?: number,
): LimitNow {
  const at = (end: Measure | undefined): number | undefined =>
    end === undefined
      ? undefined
      : quantity.compute({
          gaugePressure_Pa: end.valueSI,
          temperature_K: limit.at.valueSI,
          newTemperature_K: toSI(temperature.value, temperature.unit),
          ambientPressure_Pa: AMBIENT_PA,
        });
  try {
    return {
      known: true,
      band: bandSI(at(limit.low), at(limit.high)),
      lines: [{ label: `Book, at ${asWritten(limit.at)}`, value: bookBand(limit, step) }, AMBIENT_LINE],
      formula: { quantity: quantity.id, text: quantity.formula },
      sources: quantity.sources.map(sourceOf),
    };
  } catch (error) {
    return refused(error, temperature);
  }
}

type Table = Extract<Limit, { by: "table" }>;

/** Between two rows in a straight line; never beyond the first or last row, never across an empty cell. */
function fromTable({ rows }: Table, temperature: Read, step?: number): LimitNow {
  const now_K = toSI(temperature.value, temperature.unit);
  const sorted = rows.toSorted((a, b) => a.at.valueSI - b.at.valueSI);
  const above = sorted.find((row) => row.at.valueSI >= now_K);
  const below = sorted.findLast((row) => row.at.valueSI <= now_K);
  if (above === undefined || below === undefined) {
    const edge = above ?? below;
    return edge === undefined
      ? unknown("The book's table has no rows", "a table of limits")
      : outsideOf(temperature, edge.at.valueSI, "the book's table");
  }
  const span_K = above.at.valueSI - below.at.valueSI;
  const share_1 = span_K === 0 ? 0 : (now_K - below.at.valueSI) / span_K;
  const between = (end: "low" | "high"): number | undefined | "empty" => {
    const from = below[end];
    const to = above[end];
    if (from === undefined && to === undefined) return undefined;
    if (from === undefined || to === undefined) return "empty";
    return from.valueSI + (to.valueSI - from.valueSI) * share_1;
  };
  const low = between("low");
  const high = between("high");
  if (low === "empty" || high === "empty") {
    const here = temperatureText(temperature);
    return unknown(`No limit at ${here}: a cell of the book's table is empty`, `a limit at ${here}`);
  }
  const used = below === above ? [below] : [below, above];
  return {
    known: true,
    band: bandSI(low, high),
    lines: used.map((row) => ({ label: `Book, at ${asWritten(row.at)}`, value: bookBand(row, step) })),
    sources: [],
  };
}

/** Whether a limit moves with temperature. */
export const needsTemperature = ({ limit }: Pick<Reading, "limit">): boolean => limit.by !== "fixed";

/** `Tyre temperature`, or `Temperature` when the book does not say whose. */
export const temperatureName = ({ temperatureOf }: Pick<Reading, "temperatureOf">): string =>
  temperatureOf === undefined
    ? "Temperature"
    : `${temperatureOf.charAt(0).toUpperCase()}${temperatureOf.slice(1)} temperature`;

const isTemperature = (unit: UnitId): boolean => UNITS[unit].dimension === "temperature";

/** The limit of a reading at a temperature. Nothing is extended, and what is missing is named. */
export function limitNow(
  reading: Reading,
  gauge: Gauge | undefined,
  temperature: Read | undefined,
): LimitNow {
  const { limit } = reading;
  const step = gauge === undefined ? undefined : stepIfSameUnit(gauge, limit);
  if (limit.by === "fixed") {
    return limited({
      known: true,
      band: bandSI(limit.low?.valueSI, limit.high?.valueSI),
      lines: [{ label: "Book", value: bookBand(limit, step) }],
      sources: [],
    });
  }
  const name = temperatureName(reading);
  if (temperature === undefined) {
    return unknown(`${name} not given: the limit moves with it`, name.toLowerCase());
  }
  if (!isTemperature(temperature.unit) || !Number.isFinite(temperature.value)) {
    return unknown(`${name} cannot be read as a temperature`, name.toLowerCase());
  }
  switch (limit.by) {
    case "gas-law":
      return limited(moved(limit, temperature, gaugePressureAtTemperature, step));
    case "cylinder":
      return limited(moved(limit, temperature, cylinderPressureAtTemperature[limit.gas], step));
    case "tyre": {
      const service = moved(
        { low: limit.service, at: limit.at },
        temperature,
        gaugePressureAtTemperature,
        step,
      );
      if (!service.known || service.band.low === undefined) return service;
      if (!(service.band.low > 0)) {
        return unknown("The service pressure at this temperature is none", "a service pressure above zero");
      }
      return {
        ...service,
        band: { low: service.band.low, high: service.band.low * TYRE_HIGH_1 },
        lines: [
          { label: `Book, at ${asWritten(limit.at)}`, value: asWritten(limit.service, step) },
          AMBIENT_LINE,
        ],
        sources: [...service.sources, sourceOf(tyreAction(100).source)],
      };
    }
    case "table":
      return limited(fromTable(limit, temperature, step));
    default:
      return limit satisfies never;
  }
}

/** A limit without an end is no limit. */
const limited = (now: LimitNow): LimitNow =>
  now.known && now.band.low === undefined && now.band.high === undefined
    ? unknown("The book gives no limit", "a limit in the book")
    : now;

/** The book's values are shown to the step of the gauge when both are in one unit. */
function stepIfSameUnit(gauge: Gauge, limit: Limit): number | undefined {
  if (gauge.resolution.unit !== gauge.unit) return undefined;
  const written =
    limit.by === "tyre"
      ? [limit.service]
      : limit.by === "table"
        ? limit.rows.flatMap((row) => [row.low, row.high])
        : [limit.low, limit.high];
  const step = gauge.resolution.value;
  const fits = written.every(
    (end) =>
      end === undefined || (end.unit === gauge.unit && decimalsOf(stepOf(end.value)) <= decimalsOf(step)),
  );
  return fits ? step : undefined;
}

/** The band in SI without its working; undefined when it cannot be known. */
export function bandOf(reading: Reading, temperature: Read | undefined): Band | undefined {
  const now = limitNow(reading, undefined, temperature);
  return now.known ? now.band : undefined;
}
