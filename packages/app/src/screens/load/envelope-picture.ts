import type { LoadFigures, LoadState } from "@witnessmark/assess";
import {
  burnLines,
  type ChartScale,
  clearOfForwardEdge,
  MOMENT_NAMES,
  type Spot,
} from "./envelope-layout.ts";
import { type LoadUnits, safe, symbolOf } from "./load-units.ts";
import { pointsOf, type RowKey } from "./phase-rows.ts";
import { type Box, boxAbout, boxOf, column, freest, type Words } from "./place-words.ts";

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

export interface PlacedText extends Words {
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
    readonly at: RowKey;
    readonly x: number;
    readonly y: number;
    readonly name: PlacedText;
  }[];
  readonly leaders: string;
}

/** Points that are dots and no marks: the marks are those of start and end. */
export const isDot = (at: RowKey): boolean => at === "ramp" || at === "alternate" || at === "worst";

const NOTHING: PlacedText = { x: 0, y: 0, anchor: "start", text: "", over: false };
const NAME_px = 18;
/** The longest name beside its mark. */
const NAMES_px = 92;
/** Half of what a mark takes, with some air. */
const MARK_px = 14;

export function flightPicture(
  scale: ChartScale,
  figures: LoadFigures,
  units: LoadUnits,
  small: boolean,
): FlightPicture {
  const { plot } = scale;
  const { flown, rest } = burnLines(figures);
  const line = (spots: readonly Spot[]) =>
    spots.length < 2
      ? ""
      : `M${spots.map(({ arm_m, mass_kg }) => `${f(scale.x(arm_m))},${f(scale.y(mass_kg))}`).join("L")}`;
  const spots = pointsOf(figures).map(({ at, arm_m, mass_kg }) => ({
    at,
    x: scale.x(arm_m),
    y: scale.y(mass_kg),
  }));
  const side = roomier(spots, plot);
  const dimensions = dimensionsOf(scale, figures, units, small, side);
  const marks = spots.map(({ at, x, y }) => boxAbout(x, y, isDot(at) ? 5 : MARK_px));
  const names = named(spots, side, [...marks, ...dimensions.map(({ shaft }) => shaft)], plot);
  const taken = [...marks, ...names.moments.map(({ name }) => boxOf(name))];
  const margins: Record<MarginName, PlacedText> = {
    ahead: NOTHING,
    behind: NOTHING,
    "take-off": NOTHING,
    landing: NOTHING,
  };
  const lines: Record<LineName, string> = {
    rest: line(rest),
    burn: line(flown),
    extension: "",
    shaft: "",
    head: "",
    overShaft: "",
    overHead: "",
  };
  for (const { name, from, to, extension, over, places, may } of dimensions) {
    const { shaft, head } = dimensionPaths(from, to);
    lines.extension += extension;
    lines[over ? "overShaft" : "shaft"] += shaft;
    lines[over ? "overHead" : "head"] += head;
    const others = dimensions.filter((one) => one.name !== name).map(({ shaft: box }) => box);
    const words = freest(places(), [...taken, ...others], plot, may) ?? NOTHING;
    taken.push(boxOf(words));
    margins[name] = { ...words, over };
  }
  return { lines, margins, ...names };
}

/** A moment, or the worst point between two, in the picture. */
interface PlacedSpot {
  readonly at: RowKey;
  readonly x: number;
  readonly y: number;
}

/** To the left of the marks, or to the right. */
type Side = 1 | -1;

/** On which side of the marks there is more room for their names. */
function roomier(spots: readonly PlacedSpot[], { left, right }: Box): Side {
  const xs = spots.map(({ x }) => x);
  return Math.min(...xs) - left > right - Math.max(...xs) ? -1 : 1;
}

/** What is left to a limit, as a line with words beside it. */
interface Dimension {
  readonly name: MarginName;
  readonly from: Px;
  readonly to: Px;
  readonly extension: string;
  /** What the line itself covers. */
  readonly shaft: Box;
  readonly over: boolean;
  /** Where its words may stand, the best first. */
  readonly places: () => Iterable<Words>;
  /** Whether they may stand at a place that is none of these. */
  readonly may: (place: Words) => boolean;
}

function dimensionsOf(
  scale: ChartScale,
  figures: LoadFigures,
  units: LoadUnits,
  small: boolean,
  names: Side,
): readonly Dimension[] {
  const points = figures.envelope?.points ?? [];
  const up = (at: "take-off" | "landing", away_px: number) => {
    const state = figures.states.find((one) => one.at === at);
    return state?.mass === undefined
      ? []
      : [upTo(state, state.mass, at, away_px, scale, names, points, units)];
  };
  return [
    ...nearestEdges(figures).map((edge) => across(edge, scale, units)),
    ...up("take-off", small ? 17 : 19),
    ...up("landing", small ? 25 : 31),
  ];
}

/** So far below a line across its words may stand. */
const ROWS_px = [-9, 17, -22, 33, -38, 49] as const;

/** From a point of the flight to the edge ahead or behind. */
function across({ name, arm_m, mass_kg, left_m }: NearEdge, scale: ChartScale, units: LoadUnits): Dimension {
  const { plot } = scale;
  const [x, y] = [scale.x(arm_m), scale.y(mass_kg)];
  const edge = scale.x(name === "ahead" ? arm_m - left_m : arm_m + left_m);
  const text = leftWords(left_m, units.margin);
  const [low, high] = [Math.min(x, edge), Math.max(x, edge)];
  const middle = { y, anchor: "middle" as const, text };
  const { left, right } = boxOf({ ...middle, x: 0 });
  const place = (at: number, down: number): Words => ({
    ...middle,
    x: Math.max(plot.left - left, Math.min(plot.right - right, at)),
    y: y + down,
  });
  const [way, anchor] = name === "ahead" ? ([-1, "end"] as const) : ([1, "start"] as const);
  const centre = (x + edge) / 2;
  return {
    name,
    from: [x, y],
    to: [edge, y],
    extension: "",
    shaft: { left: low, right: high, top: y - 2, bottom: y + 2 },
    over: left_m < 0,
    *places() {
      // ahead, what is left to the mass limit stands above the line
      yield place(centre + way * 10, name === "ahead" ? 17 : -9);
      yield place(centre + way * 10, name === "ahead" ? -9 : 17);
      for (const down of ROWS_px)
        for (const at of [centre, edge - way * 34, edge - way * 70, x + way * 60]) yield place(at, down);
      yield { x: edge + way * 20, y: y + 5, anchor, text };
      for (const down of ROWS_px) yield place(edge + way * 34, down);
      for (const down of ROWS_px) yield place(x - way * 60, down);
    },
    may: () => true,
  };
}

/** Up to the mass limit of a moment. */
function upTo(
  { arm_m, mass_kg }: LoadState,
  mass: NonNullable<LoadState["mass"]>,
  name: "take-off" | "landing",
  away_px: number,
  scale: ChartScale,
  names: Side,
  points: readonly Spot[],
  units: LoadUnits,
): Dimension {
  const { plot } = scale;
  const [x, y, limit] = [scale.x(arm_m), scale.y(mass_kg), scale.y(mass.limit)];
  const side = x - plot.left < 96 ? 1 : -1;
  // where the names stand on this side, it stands beyond them
  const namesHere = side === names;
  const at = x + side * (away_px + (namesHere ? NAMES_px : 0));
  const beside = (way: 1 | -1, down: number, out = 0): Words => {
    const words = {
      x: at + way * (6 + out),
      y: (y + limit) / 2 + 6 + down,
      anchor: way < 0 ? ("end" as const) : ("start" as const),
      text: leftWords(mass.left, units.mass),
    };
    return { ...words, ...clearOfForwardEdge(scale, points, words, at + 6) };
  };
  const away = side < 0 ? 1 : -1;
  return {
    name,
    from: [at, y],
    to: [at, limit],
    extension: `M${f(x)},${f(y)}H${f(at + side * 5)}`,
    shaft: { left: at - 2, right: at + 2, top: Math.min(y, limit), bottom: Math.max(y, limit) },
    over: mass.left < 0,
    *places() {
      for (const out of [0, 30, 60]) {
        for (const down of [0, 10, -10, 20, -20, 32, -32, 44, -44]) {
          yield beside(side, down, out);
          yield beside(away, down, out);
        }
      }
    },
    may: (place) => clearOfForwardEdge(scale, points, place, at + 6).x === place.x,
  };
}

/** The moments by name, in a column beside their marks, in the same order from above down. */
function named(
  spots: readonly PlacedSpot[],
  side: Side,
  taken: readonly Box[],
  plot: Box,
): Pick<FlightPicture, "moments" | "leaders"> {
  const order = spots.toSorted((a, b) => a.y - b.y);
  const xs = order.map(({ x }) => x);
  const start = side < 0 ? Math.min(...xs) - 20 : Math.max(...xs) + 20;
  const anchor = side < 0 ? ("end" as const) : ("start" as const);
  const words = order.map(({ at, y }): Words => {
    return { x: start, y: y + 5, anchor, text: at === "worst" ? "Worst" : MOMENT_NAMES[at] };
  });
  const ys = column(words, NAME_px, { top: plot.top + 12, bottom: plot.bottom - 4 }, taken);
  let leaders = "";
  const moments = order.map(({ at, x, y }, rank) => {
    const label = ys[rank] ?? y;
    const end = start - side * 4;
    const from = x + side * (isDot(at) ? 0 : MARK_px);
    if (Math.abs(end - from) > 6 || Math.abs(label - 5 - y) > 4)
      leaders += `M${f(from)},${f(y)}L${f(end - side * 5)},${f(label - 5)}h${side * 5}`;
    return { at, x, y, name: { ...(words[rank] ?? NOTHING), y: label, over: false } };
  });
  return { moments, leaders };
}

type Px = readonly [x_px: number, y_px: number];

/** A dimension line along one axis: arrows inside, or outside where there is no room between them. */
function dimensionPaths(from: Px, to: Px): { readonly shaft: string; readonly head: string } {
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

/** A point of the flight, and what is left from it to an edge. */
interface NearEdge {
  readonly name: "ahead" | "behind";
  readonly arm_m: number;
  readonly mass_kg: number;
  readonly left_m: number;
}

/** From where in the flight the edge ahead is nearest, and the edge behind: the worst of all of it, and of the moments. */
function nearestEdges({ states, envelope }: LoadFigures): readonly NearEdge[] {
  const worst = envelope?.worst;
  const held = states.filter(({ at }) => at !== "ramp" && (worst === undefined || at !== "zero-fuel"));
  return (["ahead", "behind"] as const).flatMap((name): readonly NearEdge[] => {
    if (worst?.edge === (name === "ahead" ? "forward" : "aft"))
      return [{ name, arm_m: worst.arm_m, mass_kg: worst.mass_kg, left_m: worst.left }];
    const near = held.flatMap(({ arm_m, mass_kg, armRange_m }): readonly NearEdge[] => {
      if (armRange_m === undefined) return [];
      const left_m = name === "ahead" ? arm_m - armRange_m[0] : armRange_m[1] - arm_m;
      return [{ name, arm_m, mass_kg, left_m }];
    });
    return near.toSorted((a, b) => a.left_m - b.left_m).slice(0, 1);
  });
}

const f = (value: number) => value.toFixed(1);
