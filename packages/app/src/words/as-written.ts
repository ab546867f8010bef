import { withSymbol } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { figure } from "./figures.ts";

/** More figures than this no gauge shows. */
const DECIMALS_MOST = 3;

/** "5.23 bar": a figure with the decimals that it was written with. */
export function asWritten({ value, unit }: Read): string {
  const decimals = `${value}`.split(".")[1]?.length ?? 0;
  return withSymbol(figure(value, Math.min(DECIMALS_MOST, decimals)), unit);
}
