import { judge } from "@witnessmark/assess";
import type { Book, Check, Gauge, Limit, Reading } from "@witnessmark/book";
import { fromSI, type Measure } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";

/** The band at the temperature that the book gives it for, and that temperature. */
interface BandAt {
  readonly low?: Measure;
  readonly high?: Measure;
  readonly at?: Measure;
}

/** A tyre is well filled between its service pressure and a twentieth above. */
const WELL_FILLED_1 = 1.025;

function bandOf(limit: Limit): BandAt {
  switch (limit.by) {
    case "fixed":
      return limit;
    case "gas-law":
    case "cylinder":
      return limit;
    case "tyre": {
      const valueSI = limit.service.valueSI * WELL_FILLED_1;
      const filled = { ...limit.service, valueSI };
      return { low: filled, high: filled, at: limit.at };
    }
    case "table":
      return limit.rows[Math.floor(limit.rows.length / 2)] ?? {};
    default:
      return limit satisfies never;
  }
}

/** Where in the band a healthy aircraft could be: in the middle rather than at an end. */
const PLACES_1 = [0.5, 0.2, 0.8, 0, 1] as const;

/** So far from the low end of what is allowed to its high end; the end of the scale stands for a limit that is not there. */
function withinSI(band: BandAt, scale: Reading["scale"], place_1: number): number {
  const low = band.low?.valueSI ?? scale[0].valueSI;
  const high = band.high?.valueSI ?? scale[1].valueSI;
  return low + (high - low) * place_1;
}

/** As the gauge would show it: in its unit, in whole steps. */
function asShown(valueSI: number, gauge: Gauge): Read {
  const value = fromSI(valueSI, gauge.unit);
  const step = gauge.resolution.unit === gauge.unit ? gauge.resolution.value : 0;
  const shown = step === 0 ? value : Math.round(value / step) * step;
  return { value: Number(shown.toPrecision(12)), unit: gauge.unit };
}

/** An invented reading of a check that a healthy aircraft could give; `null` when it asks for none. */
export function demoReading(
  check: Check,
  book: Book,
): { readonly gauge: string; readonly read: Read; readonly temperature?: Read } | null {
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) return null;
  const band = bandOf(reading.limit);
  const temperature =
    band.at === undefined || reading.temperatureOf === undefined
      ? {}
      : { temperature: { value: band.at.value, unit: band.at.unit } };
  const candidates = PLACES_1.map((place_1) => ({
    gauge: gauge.id,
    read: asShown(withinSI(band, reading.scale, place_1), gauge),
    ...temperature,
  }));
  return candidates.find((given) => judge(check, book, given).status === "clear") ?? candidates[0] ?? null;
}
