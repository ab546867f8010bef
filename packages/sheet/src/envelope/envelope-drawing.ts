import { fromSI, roundStep, toSI, UNITS, type UnitId } from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import { digits } from "../flight/figure-text.ts";
import type { SheetEdge, SheetEnvelope } from "../flight/mass-and-balance.ts";
import { type At, type Frame, hatchOutside, inFrame } from "./hatch.ts";

export interface DrawnLine {
  readonly kind: "hatch" | "edge" | "limit" | "flown" | "rest" | "dimension";
  /** As the path of an SVG. */
  readonly d: string;
}

export interface DrawnText {
  readonly kind: "scale" | "limit" | "margin";
  readonly text: string;
  readonly x: number;
  /** The base line. */
  readonly y: number;
  readonly align: "left" | "right" | "centre";
}

/** The envelope of a sheet as strokes, texts and marks, on screen and in the PDF alike; right and down, 1/96 inch. */
export interface EnvelopeDrawing {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly DrawnLine[];
  readonly texts: readonly DrawnText[];
  readonly marks: readonly { readonly status: Status; readonly x: number; readonly y: number }[];
}

interface Scale {
  readonly frame: Frame;
  readonly x: (arm_m: number) => number;
  readonly y: (mass_kg: number) => number;
  readonly range: { readonly arm_m: readonly [number, number]; readonly mass_kg: readonly [number, number] };
}

type Spot = SheetEnvelope["points"][number];

const SIZE = { width: 315, height: 158 };
const PLOT: Frame = { left: 44, right: SIZE.width - 56, top: 6, bottom: SIZE.height - 22 };
const PAD_1 = 0.06;
const HATCH = 6;

/** Across, all of the envelope; up, from somewhat below the lightest moment to somewhat above the heaviest limit. */
function scaleOf({ points, moments, flown, limits }: SheetEnvelope): Scale {
  const spots = [...moments, ...flown];
  const arms = [...points, ...spots].map(({ arm_m }) => arm_m);
  const masses = [...points, ...spots, ...limits].map(({ mass_kg }) => mass_kg);
  const [fore, aft] = [Math.min(...arms), Math.max(...arms)];
  const across = Math.max(0.01, aft - fore);
  const [low, high] = [Math.min(...spots.map(({ mass_kg }) => mass_kg)), Math.max(...masses)];
  const up = Math.max(10, high - low);
  const arm_m = [fore - across * PAD_1, aft + across * PAD_1] as const;
  const mass_kg = [Math.max(0, low - 0.3 * up), high + 0.12 * up] as const;
  const { left, right, top, bottom } = PLOT;
  return {
    frame: PLOT,
    range: { arm_m, mass_kg },
    x: (value) => left + ((value - arm_m[0]) / (arm_m[1] - arm_m[0])) * (right - left),
    y: (value) => bottom - ((value - mass_kg[0]) / (mass_kg[1] - mass_kg[0])) * (bottom - top),
  };
}

/** Whole steps of 1, 2 or 5 within a span, at most so many. */
function steps(
  low: number,
  high: number,
  most: number,
): { readonly values: readonly number[]; readonly step: number } {
  const step = roundStep((high - low) / most, "up");
  const values: number[] = [];
  for (let count = Math.ceil(low / step); count * step <= high; count += 1) values.push(count * step);
  return { values, step };
}

const round = (value: number): string => String(Math.round(value * 10) / 10);
const path = (points: readonly At[], close = false): string =>
  points.length < 2
    ? ""
    : `M${points.map(([x, y]) => `${round(x)},${round(y)}`).join("L")}${close ? "z" : ""}`;

function scaleTexts({ x, y, range, frame }: Scale, armUnit: UnitId): readonly DrawnText[] {
  const { right, left, top, bottom } = frame;
  const masses = steps(range.mass_kg[0], range.mass_kg[1], 4).values.filter(
    (mass_kg) => y(mass_kg) < bottom - 8 && y(mass_kg) > top + 16,
  );
  const [fore, aft] = [fromSI(range.arm_m[0], armUnit), fromSI(range.arm_m[1], armUnit)];
  const arms = steps(fore, aft, 5);
  const decimals = Math.max(armUnit === "m" ? 2 : 0, -Math.floor(Math.log10(arms.step)));
  return [
    ...masses.map(
      (mass_kg): DrawnText => ({
        kind: "scale",
        text: digits(mass_kg),
        x: left - 5,
        y: y(mass_kg) + 4,
        align: "right",
      }),
    ),
    { kind: "scale", text: "kg", x: left - 5, y: top + 8, align: "right" },
    ...arms.values.map(
      (arm): DrawnText => ({
        kind: "scale",
        text: digits(arm, decimals),
        x: x(toSI(arm, armUnit)),
        y: bottom + 14,
        align: "centre",
      }),
    ),
    { kind: "scale", text: UNITS[armUnit].symbol, x: right + 6, y: bottom + 14, align: "left" },
  ];
}

/** The foremost arm of the envelope at a mass; for drawing, the figures come from the engine. */
function foremost_m(points: readonly Spot[], mass_kg: number): number | undefined {
  const found = points.flatMap((to, index): readonly number[] => {
    const from = points.at(index - 1) ?? to;
    const [low, high] = from.mass_kg < to.mass_kg ? [from, to] : [to, from];
    if (mass_kg < low.mass_kg || mass_kg > high.mass_kg) return [];
    if (high.mass_kg === low.mass_kg) return [low.arm_m, high.arm_m];
    return [low.arm_m + ((high.arm_m - low.arm_m) * (mass_kg - low.mass_kg)) / (high.mass_kg - low.mass_kg)];
  });
  return found.length === 0 ? undefined : Math.min(...found);
}

const NAME = 12;

/** The mass limits, dashed across and named at the right, no name on another. */
function limitsOf({ limits, points }: SheetEnvelope, { x, y, frame }: Scale) {
  const sorted = limits.toSorted((a, b) => b.mass_kg - a.mass_kg);
  const lines: DrawnLine[] = [];
  const texts: DrawnText[] = [];
  let lowest = Number.NEGATIVE_INFINITY;
  for (const { name, mass_kg } of sorted) {
    const height = y(mass_kg);
    if (height > frame.bottom) continue;
    const fore_m = foremost_m(points, mass_kg);
    const from = fore_m === undefined ? frame.left : x(fore_m);
    lowest = Math.max(height, lowest + NAME);
    lines.push({
      kind: "limit",
      d: path([
        [from, height],
        [frame.right, height],
        [frame.right + 4, lowest],
      ]),
    });
    texts.push({ kind: "limit", text: name, x: frame.right + 6, y: lowest + 4, align: "left" });
  }
  return { lines, texts };
}

const ARROW = 5;
/** The mark stands at one end of a dimension: its text keeps off it. */
const MARK = 9;
const OVER = -4.5;
const UNDER = 13;
const about = (text: string): number => text.length * 6.6;

/** A margin as a dimension: arrows at both ends, its text over it, or beside it where it is too short. */
function dimensionOf({ from, edge_m, text }: SheetEdge, { x, y, frame }: Scale) {
  const [a, b, height] = [x(from.arm_m), x(edge_m), y(from.mass_kg)];
  const [left, right] = [Math.min(a, b), Math.max(a, b)];
  const head = (tip: number, way: 1 | -1): string =>
    `M${round(tip + way * ARROW)},${round(height - 2)}L${round(tip)},${round(height)}L${round(tip + way * ARROW)},${round(height + 2)}`;
  const d = `${path([
    [left, height],
    [right, height],
  ])}${head(left, 1)}${head(right, -1)}`;
  const line: DrawnLine = { kind: "dimension", d };
  const written = (at: number, below: number, align: DrawnText["align"]): DrawnText => ({
    kind: "margin",
    text,
    x: at,
    y: height + below,
    align,
  });
  const wide = about(text);
  const isAft = a < b;
  if (right - left >= wide + MARK + 4)
    return { line, text: written((left + right + (isAft ? MARK : -MARK)) / 2, OVER, "centre") };
  // too short to hold it: ahead it stands before the edge, behind there is no room but under the line
  if (!isAft && left - wide - 4 > frame.left) return { line, text: written(left - 4, OVER, "right") };
  return isAft
    ? { line, text: written(right - 4, UNDER, "right") }
    : { line, text: written(left + 4, UNDER, "left") };
}

const LINE = 11;
/** From where to where a text reaches across. */
function acrossOf({ text, x, align }: DrawnText): readonly [number, number] {
  const wide = about(text);
  const from = align === "left" ? x : align === "right" ? x - wide : x - wide / 2;
  return [from, from + wide];
}

const lieOnEachOther = (one: DrawnText, other: DrawnText): boolean => {
  const [[a, b], [c, d]] = [acrossOf(one), acrossOf(other)];
  return a < d && c < b && Math.abs(one.y - other.y) < LINE;
};

/** Margins of nearly one mass would be written on each other: the later one goes under its line, or under the other. */
function marginsApart(texts: readonly DrawnText[]): readonly DrawnText[] {
  const placed: DrawnText[] = [];
  for (const text of texts) {
    const ways = [0, UNDER - OVER, UNDER - OVER + LINE, -LINE].map((down) => ({ ...text, y: text.y + down }));
    placed.push(ways.find((way) => !placed.some((other) => lieOnEachOther(way, other))) ?? text);
  }
  return placed;
}

/** The envelope with the flight in it, hatched outside, its margins as dimensions. */
export function envelopeDrawing(envelope: SheetEnvelope): EnvelopeDrawing {
  const scale = scaleOf(envelope);
  const { x, y, frame } = scale;
  const place = ({ arm_m, mass_kg }: Spot): At => [x(arm_m), y(mass_kg)];
  const whole = envelope.points.map(place);
  const limits = limitsOf(envelope, scale);
  const edges = envelope.edges.map((edge) => dimensionOf(edge, scale));
  const inView = (spots: readonly Spot[]): readonly At[] =>
    spots.map(place).filter(([, height]) => height <= frame.bottom);
  const hatch = hatchOutside(whole, frame, HATCH).map((stroke) => path(stroke));
  const lines: readonly DrawnLine[] = [
    { kind: "hatch", d: hatch.join("") },
    { kind: "edge", d: path(inFrame(whole, frame), true) },
    ...limits.lines,
    { kind: "rest", d: path(inView(envelope.rest)) },
    { kind: "flown", d: path(inView(envelope.flown)) },
    ...edges.map(({ line }) => line),
  ];
  return {
    ...SIZE,
    lines: lines.filter(({ d }) => d !== ""),
    texts: [
      ...scaleTexts(scale, envelope.armUnit),
      ...limits.texts,
      ...marginsApart(edges.map(({ text }) => text)),
    ],
    marks: envelope.moments.map((moment) => ({
      status: moment.status,
      x: x(moment.arm_m),
      y: y(moment.mass_kg),
    })),
  };
}
