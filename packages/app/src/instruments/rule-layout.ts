import { decimalsOf } from "@witnessmark/engine";
import { multiples, type Scale, straightScale, tickIntervals } from "./scale.ts";

/** What a two-part rule shows, all in one unit, as numbers on its scale. */
export interface RuleValues {
  readonly min: number;
  readonly max: number;
  readonly low?: number;
  readonly high?: number;
  /** Half width of the gauge's doubt. */
  readonly doubt?: number;
  /** Last time's value, carried to today's conditions. */
  readonly last?: number;
  /** Today's value; `null` until it is read. */
  readonly now: number | null;
}

export interface RuleTexts {
  readonly low?: string;
  readonly high?: string;
  readonly band?: string;
  readonly last?: string;
}

interface Label {
  readonly text: string;
  readonly x_px: number;
  readonly anchor: "start" | "middle" | "end";
}

export interface RuleLayout {
  readonly scale: Scale;
  readonly lowX_px: number | null;
  readonly highX_px: number | null;
  readonly nutX_px: number;
  readonly lowLabel: Label | null;
  readonly highLabel: Label | null;
  /** The band's name between two arrows; `null` when there is no room for it. */
  readonly bandLabel: (Label & { readonly gap_px: number }) | null;
  readonly lastLabel: Label | null;
  readonly lastX_px: number | null;
  readonly doubt_px: readonly [number, number] | null;
  readonly minorX_px: readonly number[];
  /** Decimals that the numbers under the joint need. */
  readonly majorDecimals: number;
  readonly majors: readonly { readonly value: number; readonly x_px: number; readonly numbered: boolean }[];
}

/** Widths are reckoned, not measured: a figure of this type is a little over half as wide as it is high. */
const widthOf = (text: string, size_px: number) => text.length * size_px * 0.58;

/** Places everything on a two-part rule `width_px` wide, so that no two labels cover each other. */
export function layoutRule(
  values: RuleValues,
  texts: RuleTexts,
  width_px: number,
  nut_px: number,
): RuleLayout {
  const scale = straightScale(values.min, values.max, width_px);
  const place = (value: number | undefined) =>
    value === undefined || value <= values.min || value >= values.max ? null : scale.at(value);
  const lowX_px = place(values.low);
  const highX_px = place(values.high);
  const rest = values.last ?? middle(values);
  const nutX_px = scale.at(values.now ?? rest);
  const lastX_px = values.last === undefined ? null : scale.at(values.last);
  const ticks = tickIntervals(values.max - values.min, width_px);
  const nutReach_px = nut_px + 13;
  return {
    scale,
    lowX_px,
    highX_px,
    nutX_px,
    ...limitLabels(lowX_px, highX_px, texts, width_px),
    lastX_px,
    lastLabel: lastX_px === null ? null : lastLabelAt(lastX_px, texts.last, width_px, highX_px),
    doubt_px:
      values.now === null || values.doubt === undefined || !(values.doubt > 0)
        ? null
        : [scale.at(values.now - values.doubt), scale.at(values.now + values.doubt)],
    minorX_px: multiples(values.min, values.max, ticks.minor).map((value) => scale.at(value)),
    majorDecimals: decimalsOf(ticks.major),
    majors: multiples(values.min, values.max, ticks.major).map((value) => {
      const x_px = scale.at(value);
      const clearOfNut = Math.abs(x_px - nutX_px) > nutReach_px;
      return { value, x_px, numbered: clearOfNut && x_px > 8 && x_px < width_px - 8 };
    }),
  };
}

/** Where the nut waits before anything is read: in the middle of the band, or of the rule. */
function middle({ min, max, low = min, high = max }: RuleValues): number {
  return (Math.max(min, low) + Math.min(max, high)) / 2;
}

function limitLabels(
  lowX_px: number | null,
  highX_px: number | null,
  texts: RuleTexts,
  width_px: number,
): Pick<RuleLayout, "lowLabel" | "highLabel" | "bandLabel"> {
  const lowLabel =
    lowX_px === null || texts.low === undefined ? null : besideLine(lowX_px, texts.low, "end", width_px);
  const highLabel =
    highX_px === null || texts.high === undefined
      ? null
      : besideLine(highX_px, texts.high, "start", width_px);
  const inside = lowLabel?.anchor === "start" || highLabel?.anchor === "end";
  if (lowX_px === null && highX_px === null && texts.band !== undefined) {
    // no band is known: what it waits for stands in its place
    return {
      lowLabel,
      highLabel,
      bandLabel: { text: texts.band, x_px: width_px / 2, anchor: "middle", gap_px: 0 },
    };
  }
  if (lowX_px === null || highX_px === null || texts.band === undefined || inside) {
    return { lowLabel, highLabel, bandLabel: null };
  }
  const gap_px = widthOf(texts.band, 11.5) / 2 + 5;
  const room = highX_px - lowX_px > 2 * gap_px + 18;
  return {
    lowLabel,
    highLabel,
    bandLabel: room ? { text: texts.band, x_px: (lowX_px + highX_px) / 2, anchor: "middle", gap_px } : null,
  };
}

/** Outside the band where it fits, else on the other side of its line. */
function besideLine(x_px: number, text: string, outward: "start" | "end", width_px: number): Label {
  const needs_px = widthOf(text, 16) + 5;
  const fits = outward === "end" ? x_px >= needs_px : width_px - x_px >= needs_px;
  const anchor = fits ? outward : outward === "end" ? "start" : "end";
  return { text, x_px: x_px + (anchor === "end" ? -5 : 5), anchor };
}

function lastLabelAt(
  x_px: number,
  text: string | undefined,
  width_px: number,
  highX_px: number | null,
): Label | null {
  if (text === undefined) return null;
  const needs_px = widthOf(text, 13) + 11;
  const wall_px = highX_px !== null && highX_px > x_px ? highX_px : width_px;
  const toTheRight = wall_px - x_px >= needs_px || x_px < needs_px;
  return { text, x_px: x_px + (toTheRight ? 9 : -9), anchor: toTheRight ? "start" : "end" };
}
