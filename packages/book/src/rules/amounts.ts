import type { Measure } from "@witnessmark/engine";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import { measureText } from "./measure-text.ts";

/** Nothing weighs, holds or lasts less than nothing. */
export function mustBeAbove0(what: string, measure: Measure | undefined, path: Path, report: Report): void {
  if (measure === undefined || measure.valueSI > 0) return;
  report(path, { expected: `${what} above 0`, found: measureText(measure) });
}

/** As `mustBeAbove0`, where none at all is possible. */
export function mustNotBeBelow0(
  what: string,
  measure: Measure | undefined,
  path: Path,
  report: Report,
): void {
  if (measure === undefined || measure.valueSI >= 0) return;
  report(path, { expected: `${what} not below 0`, found: measureText(measure) });
}
