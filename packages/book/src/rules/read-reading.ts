import { InputError, type Measure, parseMeasure, UNITS } from "@witnessmark/engine";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import { asDifference, type Gauge } from "../schema/gauge.ts";
import type { Limit, Reading, ReadingSource } from "../schema/reading.ts";
import { measureText } from "./measure-text.ts";
import { scaleAround } from "./reading-scale.ts";

type Band = { readonly low?: Measure; readonly high?: Measure };

/** A common gauge is true to a hundredth of what it shows, or worse. */
const COMMON_ACCURACY_1 = 0.01;

/**
 * Turns the texts of a reading into measures of its gauge's dimension, and holds them against each other and the gauge.
 *
 * @returns `undefined` when anything was reported
 */
export function readReading(
  source: ReadingSource,
  gauge: Gauge,
  path: Path,
  report: Report,
): Reading | undefined {
  let sound = true;
  const tell: Report = (where, fault) => {
    sound = false;
    report(where, fault);
  };
  const reader = new ReadingReader(gauge, path, tell);
  const limit = reader.limit(source);
  const scale = reader.scale(source.scale, limit === undefined ? [] : endsOf(limit));
  if (limit !== undefined) reader.commonGauge(endsOf(limit));
  const step = source.step === undefined ? gauge.resolution : reader.step(source.step);
  if (!sound || limit === undefined || scale === undefined || step === undefined) return undefined;
  return {
    gauge: source.gauge,
    quantity: source.quantity,
    dimension: gauge.dimension,
    ...(source.temperatureOf === undefined ? {} : { temperatureOf: source.temperatureOf }),
    limit,
    outside: {
      status: source.outside.status,
      ...(source.outside.advice === undefined ? {} : { advice: source.outside.advice }),
    },
    scale,
    step,
  };
}

/** Every value that a limit names, as written: the band at its own temperature. */
function endsOf(limit: Limit): readonly Measure[] {
  const ends = ({ low, high }: Band) => [low, high].filter((end) => end !== undefined);
  switch (limit.by) {
    case "tyre":
      return [limit.service];
    case "table":
      return limit.rows.flatMap(ends);
    case "fixed":
    case "gas-law":
    case "cylinder":
      return ends(limit);
    default:
      return limit satisfies never;
  }
}

class ReadingReader {
  readonly #gauge: Gauge;
  readonly #path: Path;
  readonly #report: Report;

  constructor(gauge: Gauge, path: Path, report: Report) {
    this.#gauge = gauge;
    this.#path = path;
    this.#report = report;
  }

  limit(source: ReadingSource): Limit | undefined {
    const { limit } = source;
    if (limit.by === "gas-law" || limit.by === "cylinder" || limit.by === "tyre")
      this.#mustBePressure(limit.by);
    this.#temperature(source);
    switch (limit.by) {
      case "fixed": {
        const band = this.#band(limit, ["limit"]);
        return band && { by: limit.by, ...band };
      }
      case "gas-law": {
        const band = this.#band(limit, ["limit"]);
        return band && { by: limit.by, at: limit.at, ...band };
      }
      case "cylinder": {
        const band = this.#band(limit, ["limit"]);
        return band && { by: limit.by, gas: limit.gas, at: limit.at, ...band };
      }
      case "tyre": {
        const service = this.#measure(limit.service, ["limit", "service"]);
        if (service !== undefined && service.valueSI <= 0) {
          this.#report([...this.#path, "limit", "service"], {
            expected: "a service pressure above 0, as the gauge reads it",
            found: measureText(service),
          });
        }
        return service && { by: limit.by, service, at: limit.at };
      }
      case "table": {
        const rows = this.#rows(limit.rows);
        return rows && { by: limit.by, rows };
      }
      default:
        return limit satisfies never;
    }
  }

  /** The drawn scale holds the band, and the gauge can show it. */
  scale(
    written: readonly [string, string] | undefined,
    ends: readonly Measure[],
  ): Reading["scale"] | undefined {
    if (written === undefined) return ends.length === 0 ? undefined : scaleAround(ends, this.#gauge);
    const low = this.#measure(written[0], ["scale", 0]);
    const high = this.#measure(written[1], ["scale", 1]);
    if (low === undefined || high === undefined) return undefined;
    if (low.valueSI >= high.valueSI) {
      this.#report([...this.#path, "scale", 0], {
        expected: `a low end below the high end, ${measureText(high)}`,
        found: measureText(low),
        remedy: "write the lower value first",
      });
      return undefined;
    }
    const inOrder = ends.toSorted((a, b) => a.valueSI - b.valueSI);
    const [lowest, highest] = [inOrder.at(0), inOrder.at(-1)];
    if (lowest !== undefined && lowest.valueSI < low.valueSI) {
      this.#report([...this.#path, "scale", 0], {
        expected: `a scale that holds the limit, which begins at ${measureText(lowest)}`,
        found: `one that begins at ${measureText(low)}`,
        remedy: "begin it lower, so that a reading outside still shows",
      });
    }
    if (highest !== undefined && highest.valueSI > high.valueSI) {
      this.#report([...this.#path, "scale", 1], {
        expected: `a scale that holds the limit, which ends at ${measureText(highest)}`,
        found: `one that ends at ${measureText(high)}`,
        remedy: "end it higher, so that a reading outside still shows",
      });
    }
    return [low, high];
  }

  /** What a common gauge of tyres is true to says nothing of one that shows the pressure of a cylinder. */
  commonGauge(ends: readonly Measure[]): void {
    const { assumed, dimension, accuracy, name } = this.#gauge;
    if (assumed !== true || dimension !== "pressure") return;
    const highest = ends.toSorted((a, b) => b.valueSI - a.valueSI)[0];
    if (highest === undefined || accuracy.valueSI >= COMMON_ACCURACY_1 * highest.valueSI) return;
    this.#report([...this.#path, "gauge"], {
      expected: `a gauge whose own accuracy is in the book, for a limit of ${measureText(highest)}`,
      found: `“${name}”, with ±${measureText(accuracy)} by common practice`,
      remedy: "put in what its maker states",
    });
  }

  step(written: string): Measure | undefined {
    const step = this.#measure(written, ["step"], "of any size");
    if (step === undefined) return undefined;
    if (step.value <= 0) {
      this.#report([...this.#path, "step"], { expected: "a step above 0", found: measureText(step) });
    }
    return asDifference(step);
  }

  #mustBePressure(by: string): void {
    if (this.#gauge.dimension === "pressure") return;
    this.#report([...this.#path, "gauge"], {
      expected: `a gauge of pressure, for a limit by ${by}`,
      found: `\`${this.#gauge.id}\`, a gauge of ${this.#gauge.dimension}`,
    });
  }

  #temperature({ limit, temperatureOf }: ReadingSource): void {
    if (limit.by !== "fixed" && temperatureOf === undefined) {
      this.#report([...this.#path, "temperatureOf"], {
        expected: "whose temperature moves the limit",
        found: "nothing",
        remedy: "add `temperatureOf:`, as tyre, cylinder or oil",
      });
    }
    if (limit.by === "fixed" && temperatureOf !== undefined) {
      this.#report([...this.#path, "temperatureOf"], {
        expected: "no temperature where the limit is the same at all of them",
        found: `"${temperatureOf}"`,
        remedy: "take it out, or give the limit by gas-law, cylinder, tyre or table",
      });
    }
  }

  #band(
    written: { readonly low?: string | undefined; readonly high?: string | undefined },
    where: Path,
  ): Band | undefined {
    const low = written.low === undefined ? undefined : this.#measure(written.low, [...where, "low"]);
    const high = written.high === undefined ? undefined : this.#measure(written.high, [...where, "high"]);
    if (written.low === undefined && written.high === undefined) {
      this.#report([...this.#path, ...where], {
        expected: "a low end, a high end or both",
        found: "neither",
        remedy: "add `low:` or `high:`; a limit that limits nothing would pass anything",
      });
      return undefined;
    }
    if (low !== undefined && high !== undefined && low.valueSI > high.valueSI) {
      this.#report([...this.#path, ...where, "low"], {
        expected: `a low end not above the high end, ${measureText(high)}`,
        found: measureText(low),
        remedy: "are the two the wrong way round?",
      });
    }
    return { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
  }

  #rows(
    rows: readonly {
      readonly at: Measure;
      readonly low?: string | undefined;
      readonly high?: string | undefined;
    }[],
  ): readonly ({ readonly at: Measure } & Band)[] | undefined {
    const read: ({ readonly at: Measure } & Band)[] = [];
    const wants = (["low", "high"] as const).filter((end) => rows.some((row) => row[end] !== undefined));
    for (const [i, row] of rows.entries()) {
      const before = rows[i - 1];
      if (before !== undefined && row.at.valueSI <= before.at.valueSI) {
        this.#report([...this.#path, "limit", "rows", i, "at"], {
          expected: `a temperature above that of the row before, ${measureText(before.at)}`,
          found: measureText(row.at),
          remedy: "put the rows in order, coldest first, each temperature once",
        });
      }
      for (const end of wants) {
        if (row[end] !== undefined || (row.low === undefined && row.high === undefined)) continue;
        this.#report([...this.#path, "limit", "rows", i, end], {
          expected: `a ${end} end in every row, as in the others`,
          found: "a hole",
          remedy: `add \`${end}:\`; nothing is made up between rows`,
        });
      }
      const band = this.#band(row, ["limit", "rows", i]);
      if (band !== undefined) read.push({ at: row.at, ...band });
    }
    return read.length === rows.length ? read : undefined;
  }

  /** A measure of the gauge's dimension, and one that the gauge can show unless it may be of any size. */
  #measure(text: string, where: Path, size: "shown" | "of any size" = "shown"): Measure | undefined {
    const gauge = this.#gauge;
    try {
      const measure = parseMeasure(text, gauge.dimension, "reading");
      const [low, high] = gauge.range ?? [];
      // else it shows anything, or the gauge itself is at fault, and says so
      const isGauge = low !== undefined && high !== undefined && low.valueSI < high.valueSI;
      if (isGauge && size === "shown" && (measure.valueSI < low.valueSI || measure.valueSI > high.valueSI)) {
        this.#report([...this.#path, ...where], {
          expected: `a value that the gauge \`${gauge.id}\` can show, ${measureText(low)} to ${measureText(high)}`,
          found: measureText(measure),
        });
      }
      return measure;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.#report([...this.#path, ...where], {
        expected: error.detail.expected,
        found: error.detail.received,
        remedy: `the gauge \`${gauge.id}\` reads in ${UNITS[gauge.unit].symbol || "plain numbers"}`,
      });
      return undefined;
    }
  }
}
