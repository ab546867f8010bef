import type { LoadMoment } from "@witnessmark/assess";
import { fromSI, toSI } from "@witnessmark/engine";
import { multiples, tickIntervals } from "../../instruments/scale.ts";
import type { LoadUnits } from "./load-units.ts";
import { type Box, boxOf, type Words } from "./place-words.ts";

/** A place in the envelope. */
export interface Spot {
  readonly arm_m: number;
  readonly mass_kg: number;
}

/** What the chart shows of arms and masses, SI. */
export interface ChartRange {
  readonly arm_m: readonly [number, number];
  readonly mass_kg: readonly [number, number];
}

const PAD_1 = 0.07;

/**
 * The part of the envelope that the flight is in: across, all of it; up, from somewhat below the lightest moment to
 * somewhat above the heaviest limit. What is outside is in the picture too.
 */
export function chartRange(
  envelope: readonly Spot[],
  spots: readonly Spot[],
  limits_kg: readonly number[],
): ChartRange {
  const all = [...envelope, ...spots];
  const arms = all.map(({ arm_m }) => arm_m);
  const armSpan_m = Math.max(0.01, Math.max(...arms) - Math.min(...arms));
  const top_kg = Math.max(...all.map(({ mass_kg }) => mass_kg), ...limits_kg);
  const lightest_kg =
    spots.length === 0
      ? Math.min(...envelope.map(({ mass_kg }) => mass_kg))
      : Math.min(...spots.map(({ mass_kg }) => mass_kg));
  const span_kg = Math.max(10, top_kg - lightest_kg);
  return {
    arm_m: [Math.min(...arms) - armSpan_m * PAD_1, Math.max(...arms) + armSpan_m * PAD_1],
    mass_kg: [Math.max(0, lightest_kg - 0.28 * span_kg), top_kg + 0.12 * span_kg],
  };
}

/** As much of both as either shows: while a finger drags, a picture only grows, so that nothing jumps under it. */
export const joined = (one: ChartRange, other: ChartRange): ChartRange => ({
  arm_m: [Math.min(one.arm_m[0], other.arm_m[0]), Math.max(one.arm_m[1], other.arm_m[1])],
  mass_kg: [Math.min(one.mass_kg[0], other.mass_kg[0]), Math.max(one.mass_kg[1], other.mass_kg[1])],
});

interface Axis {
  readonly low: number;
  readonly high: number;
  readonly major: number;
  readonly minor: number;
}

/** Whole steps of the grid about a span, in the unit that is shown. */
function axis(
  lowSI: number,
  highSI: number,
  unit: LoadUnits["mass"],
  length_px: number,
  apart_px: number,
): Axis {
  const [from, to] = [fromSI(lowSI, unit), fromSI(highSI, unit)];
  const { major } = tickIntervals(to - from, length_px, apart_px);
  const minor = major / 5;
  return {
    low: Math.max(0, Math.floor(from / minor) * minor),
    high: Math.ceil(to / minor) * minor,
    major,
    minor,
  };
}

export interface Tick {
  readonly value: number;
  readonly px: number;
  readonly major: boolean;
}

/** From arms and masses to pixels, with the grid between. */
export interface ChartScale {
  readonly plot: Box;
  readonly x: (arm_m: number) => number;
  readonly y: (mass_kg: number) => number;
  readonly arms: readonly Tick[];
  readonly masses: readonly Tick[];
  readonly armDecimals: number;
}

export function chartScale(range: ChartRange, plot: Box, units: Pick<LoadUnits, "mass" | "arm">): ChartScale {
  const across = axis(range.arm_m[0], range.arm_m[1], units.arm, plot.right - plot.left, 62);
  const up = axis(range.mass_kg[0], range.mass_kg[1], units.mass, plot.bottom - plot.top, 46);
  const [left_m, right_m] = [toSI(across.low, units.arm), toSI(across.high, units.arm)];
  const [low_kg, high_kg] = [toSI(up.low, units.mass), toSI(up.high, units.mass)];
  const x = (arm_m: number) => plot.left + ((arm_m - left_m) / (right_m - left_m)) * (plot.right - plot.left);
  const y = (mass_kg: number) =>
    plot.bottom - ((mass_kg - low_kg) / (high_kg - low_kg)) * (plot.bottom - plot.top);
  const ticks = (of: Axis, at: (value: number) => number): readonly Tick[] =>
    multiples(of.low, of.high, of.minor).map((value) => ({
      value,
      px: at(value),
      major: Math.abs(value / of.major - Math.round(value / of.major)) < 1e-6,
    }));
  return {
    plot,
    x,
    y,
    arms: ticks(across, (value) => x(toSI(value, units.arm))),
    masses: ticks(up, (value) => y(toSI(value, units.mass))),
    armDecimals: across.major >= 1 ? 0 : across.major >= 0.1 ? 2 : 3,
  };
}

/** The foremost arm of the envelope at a mass; `null` where it has none. For drawing: the figures come from the engine. */
export function foremostAt_m(points: readonly Spot[], mass_kg: number): number | null {
  const found = points.flatMap((to, index): readonly number[] => {
    const from = points.at(index - 1) ?? to;
    const [low, high] = from.mass_kg < to.mass_kg ? [from, to] : [to, from];
    if (mass_kg < low.mass_kg || mass_kg > high.mass_kg) return [];
    if (high.mass_kg === low.mass_kg) return [low.arm_m, high.arm_m];
    const share = (mass_kg - low.mass_kg) / (high.mass_kg - low.mass_kg);
    return [low.arm_m + (high.arm_m - low.arm_m) * share];
  });
  return found.length === 0 ? null : Math.min(...found);
}

const GAP_px = 4;

/** Between which places across the forward edge runs, at the height of some words; undefined above and below it. */
export function forwardEdge(
  { x, y }: ChartScale,
  points: readonly Spot[],
  { top, bottom }: Pick<Box, "top" | "bottom">,
): readonly [number, number] | undefined {
  const perPx_kg = 1 / (y(1) - y(0));
  const [low_kg, high_kg] = [(bottom - y(0)) * perPx_kg, (top - y(0)) * perPx_kg];
  const corners = points.map(({ mass_kg }) => mass_kg).filter((kg) => kg > low_kg && kg < high_kg);
  const places = [low_kg, high_kg, ...corners].flatMap((kg): readonly number[] => {
    const arm_m = foremostAt_m(points, kg);
    return arm_m === null ? [] : [x(arm_m)];
  });
  return places.length === 0 ? undefined : [Math.min(...places), Math.max(...places)];
}

/**
 * Where words stand that would lie on the forward edge: ahead of it; behind it where they would leave the picture.
 *
 * @param behind_px where the words may begin behind their line
 */
export function clearOfForwardEdge(
  scale: ChartScale,
  points: readonly Spot[],
  words: Words,
  behind_px: number,
): Pick<Words, "x" | "anchor"> {
  const { x, anchor } = words;
  const box = boxOf(words);
  const edge = forwardEdge(scale, points, box);
  if (edge === undefined || box.left > edge[1] + GAP_px) return { x, anchor };
  if (box.right < edge[0] - GAP_px && box.left >= scale.plot.left) return { x, anchor };
  const ahead = edge[0] - GAP_px;
  return ahead - (box.right - box.left) >= scale.plot.left
    ? { x: ahead, anchor: "end" }
    : { x: Math.max(edge[1] + GAP_px, behind_px), anchor: "start" };
}

export const MOMENT_NAMES: Readonly<Record<LoadMoment, string>> = {
  "zero-fuel": "Zero fuel",
  ramp: "Ramp",
  "take-off": "Take-off",
  landing: "Landing",
  alternate: "Alternate",
};

/** The burn from the ramp to the last landing, and the rest of it, for a full and a dashed line. */
export function burnLines(figures: {
  readonly path: readonly Spot[];
  readonly states: readonly (Spot & { readonly at: LoadMoment })[];
}): {
  readonly flown: readonly Spot[];
  readonly rest: readonly Spot[];
} {
  const { path, states } = figures;
  const last = states.findLast(({ at }) => at === "landing" || at === "alternate");
  if (last === undefined) return { flown: [], rest: path };
  const until = path.filter(({ mass_kg }) => mass_kg >= last.mass_kg - 1e-6);
  const after = path.filter(({ mass_kg }) => mass_kg < last.mass_kg - 1e-6);
  return { flown: [...until, last], rest: [last, ...after] };
}
