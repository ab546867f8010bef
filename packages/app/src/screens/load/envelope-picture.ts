import type { LoadFigures, LoadMoment, LoadState } from "@witnessmark/assess";
import {
  burnLines,
  type ChartScale,
  clearOfForwardEdge,
  MOMENT_NAMES,
  type Spot,
  spread,
} from "./envelope-layout.ts";
import { type LoadUnits, safe, symbolOf } from "./load-units.ts";

/** The strokes over the envelope, each kind one path, from below up. */
export const LINES = [
  ["rest", "envelope-rest"],
  ["burn", "envelope-burn"],
  ["extension", "extension"],
  ["shaft", "dimension"],
  ["head", "dimension-head"],
  ["overShaft", "dimension envelope-over"],
  ["overHead", "dimension-head envelope-over"],
] as const;

export type LineName = (typeof LINES)[number][0];

export interface PlacedText {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
  readonly text: string;
  readonly over: boolean;
}

export const MARGINS = ["ahead", "behind", "take-off", "landing"] as const;
export type MarginName = (typeof MARGINS)[number];

/** The flight in the envelope, in pixels: the burn as a line, its moments, and what is left as dimensions. */
export interface FlightPicture {
  readonly lines: Readonly<Record<LineName, string>>;
  readonly margins: Readonly<Record<MarginName, PlacedText>>;
  /** The moments, each with its mark or dot and its name beside it. */
  readonly moments: readonly {
    readonly at: LoadMoment;
    readonly x: number;
    readonly y: number;
    readonly name: PlacedText;
  }[];
  readonly leaders: string;
}

/** Moments that are dots and no marks: the aircraft is not held to the edges there. */
export const isDot = (at: LoadMoment): boolean => at === "ramp" || at === "alternate";

const NOTHING: PlacedText = { x: 0, y: 0, anchor: "start", text: "", over: false };
const NAME_px = 18;
/** The longest name beside its mark. */
const NAMES_px = 92;
/** Half of a margin in words, and how far from its mark its middle stands clear of the short name of a dot. */
const HALF_px = 34;
const CLEAR_px = 109;

export function flightPicture(
  scale: ChartScale,
  figures: LoadFigures,
  units: LoadUnits,
  small: boolean,
): FlightPicture {
  const { states } = figures;
  const { flown, rest } = burnLines(figures);
  const line = (spots: readonly Spot[]) =>
    spots.length < 2
      ? ""
      : `M${spots.map(({ arm_m, mass_kg }) => `${f(scale.x(arm_m))},${f(scale.y(mass_kg))}`).join("L")}`;
  const lines: Record<LineName, string> = {
    rest: line(rest),
    burn: line(flown),
    extension: "",
    shaft: "",
    head: "",
    overShaft: "",
    overHead: "",
  };
  const dimension = (from: Px, to: Px, over: boolean) => {
    const { shaft, head } = dimensionPaths(from, to);
    lines[over ? "overShaft" : "shaft"] += shaft;
    lines[over ? "overHead" : "head"] += head;
  };
  const { ahead, behind } = nearestEdges(states.filter(({ at }) => !isDot(at)));
  const across = (state: LoadState | undefined, end: 0 | 1): PlacedText => {
    const edge_m = state?.armRange_m?.[end];
    if (state === undefined || edge_m === undefined) return NOTHING;
    const left_m = end === 0 ? state.arm_m - edge_m : edge_m - state.arm_m;
    const [x, y, edge] = [scale.x(state.arm_m), scale.y(state.mass_kg), scale.x(edge_m)];
    const over = left_m < 0;
    dimension([x, y], [edge, y], over);
    // ahead, what is left to the mass limit stands above the line
    const under = end === 0 && state.mass !== undefined && state.at !== "zero-fuel";
    const middle = (x + edge) / 2 + (end === 1 ? 10 : -10);
    // clear of the name beside the dot, where the line is long enough
    const clear = end === 1 && edge - x > CLEAR_px + HALF_px ? Math.max(middle, x + CLEAR_px) : middle;
    return {
      x: within(clear, scale, over ? 48 : HALF_px),
      y: under ? y + 17 : y - 6,
      anchor: "middle",
      text: leftWords(left_m, units.margin),
      over,
    };
  };
  /** Up to the mass limit of a moment. */
  const up = (moment: LoadMoment, away_px: number): PlacedText => {
    const state = states.find(({ at }) => at === moment);
    if (state?.mass === undefined) return NOTHING;
    const { mass, arm_m, mass_kg } = state;
    const [x, y, limit] = [scale.x(arm_m), scale.y(mass_kg), scale.y(mass.limit)];
    const side = x - scale.plot.left < 96 ? 1 : -1;
    // where the names stand on this side, it stands beyond them
    const namesHere = side < 0 && x > scale.plot.right - NAMES_px;
    const at = x + side * (away_px + (namesHere ? NAMES_px : 0));
    const over = mass.left < 0;
    lines.extension += `M${f(x)},${f(y)}H${f(at + side * 5)}`;
    dimension([at, y], [at, limit], over);
    const beside = {
      x: at + side * 6,
      y: (y + limit) / 2 + 6,
      anchor: side < 0 ? ("end" as const) : ("start" as const),
      text: leftWords(mass.left, units.mass),
    };
    const clear = clearOfForwardEdge(scale, figures.envelope?.points ?? [], beside, at + 6);
    return { ...beside, ...clear, over };
  };
  const margins = {
    ahead: across(ahead, 0),
    behind: across(behind, 1),
    "take-off": up("take-off", small ? 17 : 19),
    landing: up("landing", small ? 25 : 31),
  };
  return { lines, margins, ...named(scale, states, behind) };
}

/** The moments by name, beside their marks, apart from each other. */
function named(
  scale: ChartScale,
  states: readonly LoadState[],
  /** The moment whose line to the edge behind runs where its name would stand. */
  behind: LoadState | undefined,
): Pick<FlightPicture, "moments" | "leaders"> {
  const { plot } = scale;
  const labels = states.map((state) => {
    const [x, y] = [scale.x(state.arm_m), scale.y(state.mass_kg)];
    const dot = isDot(state.at);
    return { at: state.at, x, y, dot, wanted: state === behind ? y + 20 : dot ? y - 12 : y + 5 };
  });
  const ys = spread(
    labels.map(({ wanted }) => wanted),
    NAME_px,
    plot.top + 12,
    plot.bottom - 4,
  );
  let leaders = "";
  const moments = labels.map(({ at, x, y, dot }, index) => {
    const label = ys[index] ?? y;
    const side = x > plot.right - NAMES_px ? -1 : 1;
    const start = x + side * (dot ? 33 : 18);
    const moved = Math.abs(label - y) > 24 && !dot;
    if (dot || moved) leaders += `M${f(x)},${f(y)}L${f(start - side * 9)},${f(label - 5)}h${side * 6}`;
    const anchor = side > 0 ? ("start" as const) : ("end" as const);
    return { at, x, y, name: { x: start, y: label, anchor, text: MOMENT_NAMES[at], over: false } };
  });
  return { moments, leaders };
}

type Px = readonly [x_px: number, y_px: number];

/** A dimension line along one axis: arrows inside, or outside where there is no room between them. */
export function dimensionPaths(from: Px, to: Px): { readonly shaft: string; readonly head: string } {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / length, dy / length];
  const outside = length < 20;
  const head = ([x, y]: Px, way: 1 | -1) =>
    `M${f(x)},${f(y)}l${f(way * ux * 7 - uy * 2.4)},${f(way * uy * 7 + ux * 2.4)}l${f(uy * 4.8)},${f(-ux * 4.8)}z`;
  const out = ([x, y]: Px, way: 1 | -1) => `M${f(x + way * ux * 16)},${f(y + way * uy * 16)}L${f(x)},${f(y)}`;
  return {
    shaft: outside ? out(from, -1) + out(to, 1) : `M${f(from[0])},${f(from[1])}L${f(to[0])},${f(to[1])}`,
    head: head(from, outside ? -1 : 1) + head(to, outside ? 1 : -1),
  };
}

/** "71 kg", "4 mm over". */
const leftWords = (left: number, unit: LoadUnits["mass"]): string =>
  left < 0
    ? `${safe(-left, unit, "up")} ${symbolOf(unit)} over`
    : `${safe(left, unit, "down")} ${symbolOf(unit)}`;

/** Where in the flight the edge ahead is nearest, and where the edge behind is. */
function nearestEdges(states: readonly LoadState[]): {
  readonly ahead: LoadState | undefined;
  readonly behind: LoadState | undefined;
} {
  const withRange = states.filter(({ armRange_m }) => armRange_m !== undefined);
  return {
    ahead: least(withRange, ({ arm_m, armRange_m }) => arm_m - (armRange_m?.[0] ?? 0)),
    behind: least(withRange, ({ arm_m, armRange_m }) => (armRange_m?.[1] ?? 0) - arm_m),
  };
}

const within = (x: number, { plot }: ChartScale, half_px: number): number =>
  Math.max(plot.left + half_px, Math.min(plot.right - half_px, x));

function least<T>(all: readonly T[], value: (one: T) => number): T | undefined {
  return all.reduce<T | undefined>(
    (best, one) => (best === undefined || value(one) < value(best) ? one : best),
    undefined,
  );
}

const f = (value: number) => value.toFixed(1);
