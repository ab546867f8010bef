import { type FieldFigures, type FieldWind, type Origin, windText } from "@witnessmark/assess";
import type { UnitId } from "@witnessmark/engine";
import { safeText } from "./conditions-units.ts";

type RunwayWind = NonNullable<FieldFigures["wind"]["value"]>;

/** Where a figure is said, as short as it can be: the group where it is one that comes and goes, else the report. */
export const saidBriefly = ({ kind, group }: Origin): string =>
  kind === "typed" ? "typed" : kind === "METAR" && group !== undefined ? `METAR, ${group}` : (group ?? kind);

const across = (speed_mPerS: number, from: RunwayWind["crosswindFrom"], unit: UnitId): string => {
  const speed = safeText(speed_mPerS, unit, "up");
  return from === "none"
    ? `${speed} across`
    : `${speed} from ${from === "either side" ? from : `the ${from}`}`;
};

const spoken = ({ wind, origin }: FieldWind, unit: UnitId): string =>
  `${windText(wind, unit)} (${saidBriefly(origin)})`;

/** Whose crosswind is judged, and a stronger wind that blows across less, each with where it is said. */
export function windsWords(on: RunwayWind, unit: UnitId): string {
  const { worst, strongest } = on;
  const judged = `${across(on.crosswind_mPerS, on.crosswindFrom, unit)}: ${spoken(worst, unit)}.`;
  if (strongest.is.wind === worst.wind) return judged;
  const other = across(strongest.crosswind_mPerS, strongest.crosswindFrom, unit);
  return `${judged} Strongest: ${spoken(strongest.is, unit)}, ${other}.`;
}
