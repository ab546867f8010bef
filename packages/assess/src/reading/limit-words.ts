import type { Gauge, Reading } from "@witnessmark/book";
import { withSymbol } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { type Figures, figuresOf, limitDigits } from "./figures.ts";
import { type Band, limitNow, temperatureText } from "./limit-now.ts";

/**
 * `4.97 or more`, `at most 6.0`, `4.97 to 5.21`: each end rounded to the side that flatters nobody.
 *
 * @param named puts the unit to the last figure, where nothing before it has named one
 */
export function bandText(now: Band, figures: Figures, named = (digits: string) => digits): string {
  const low = now.low === undefined ? undefined : limitDigits(now.low, "low", figures);
  const high = now.high === undefined ? "" : limitDigits(now.high, "high", figures);
  if (low === undefined) return `at most ${named(high)}`;
  return high === "" ? `${named(low)} or more` : `${low} to ${named(high)}`;
}

/** What a reading must be, said before it is read. */
export type LimitWords =
  | { readonly known: true; readonly words: string }
  | { readonly known: false; readonly says: string };

/**
 * The limit of a reading in the gauge's own unit: `4.97 bar or more at 4 °C`.
 *
 * @param temperature of what is measured; needless where the limit is the same at every temperature
 */
export function limitWords(reading: Reading, gauge: Gauge, temperature: Read | undefined): LimitWords {
  const limit = limitNow(reading, gauge, temperature);
  if (!limit.known) return { known: false, says: limit.says };
  const figures = figuresOf(gauge);
  const at =
    temperature === undefined || reading.limit.by === "fixed" ? "" : ` at ${temperatureText(temperature)}`;
  return {
    known: true,
    words: `${bandText(limit.band, figures, (digits) => withSymbol(digits, figures.unit))}${at}`,
  };
}
