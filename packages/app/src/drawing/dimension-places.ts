import { type Camera, fromDatum, type Px } from "./camera.ts";
import type { DrawingDimension } from "./dimensions.ts";
import type { Place, Square } from "./label-places.ts";

/** Pixels from what is measured to the first line, and from line to line. */
const FIRST_px = 20;
const ROW_px = 26;
/** Where an extension line begins, and how far it goes past the line. */
const CLEAR_px = 4;
const EXTENDS_px = 5;
/** About the width of a letter of the figures, how high they are, and how much line is left on each side of them. */
const LETTER_px = 8.8;
const HIGH_px = 16;
const LINE_px = 14;
/** From a line to figures that stand beyond it, or past its end. */
const BEYOND_px = 13;
const PAST_px = 9;
/** A line so short has its arrows outside, this far. */
const SHORT_px = 20;
const OUTSIDE_px = 16;
/** Where along a line its figures may stand, the middle first. */
const SHARES_1 = [0.5, 0.38, 0.62, 0.27, 0.73, 0.16, 0.84] as const;

/** A part of the picture, pixels from the datum. */
export interface Seen {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What a pixel that is cut off costs, in marks that are covered. */
const CUT_OFF_perPx = 0.5;

/** A measure as it is drawn, pixels from the datum. */
export interface PlacedDimension {
  readonly key: string;
  readonly text: string;
  readonly from: Px;
  readonly to: Px;
  /** Extension lines, from what is measured past the line. */
  readonly extensions: readonly (readonly [Px, Px])[];
  /** The middle of its figures. */
  readonly at: Place;
  readonly upright: boolean;
  /** The figures stand in the line, which is broken for them. */
  readonly inline: boolean;
}

/**
 * Measures with their figures, each where it lies on no mark and on no other measure's figures, if there is such a
 * place along its line or beside it.
 *
 * @param marks what no figures should lie on
 * @param seen what of the picture is seen when it is whole; figures that reach out of it are cut off
 */
export function dimensionPlaces(
  dimensions: readonly DrawingDimension[],
  camera: Camera,
  marks: readonly Square[],
  seen: Seen | undefined,
): readonly PlacedDimension[] {
  const placed: PlacedDimension[] = [];
  for (const dimension of dimensions) {
    const taken = [...marks, ...placed.flatMap(textSquares)];
    const choices = choicesOf(dimension, camera);
    const cost = (choice: PlacedDimension) =>
      taken.filter((square) => liesOn(choice, square)).length +
      (seen === undefined ? 0 : cutOff_px(choice, seen) * CUT_OFF_perPx);
    const [best] = choices
      .map((choice) => ({ choice, cost: cost(choice) }))
      .toSorted((a, b) => a.cost - b.cost);
    if (best !== undefined) placed.push(best.choice);
  }
  return placed;
}

/** Every way to write a measure, the likeliest first. */
function choicesOf(dimension: DrawingDimension, camera: Camera): readonly PlacedDimension[] {
  const way = unit(fromDatum(camera, dimension.off));
  const off_px = FIRST_px + (dimension.row - 1) * ROW_px;
  const ends = [fromDatum(camera, dimension.from), fromDatum(camera, dimension.to)] as const;
  const [from, to] = [away(ends[0], way, off_px), away(ends[1], way, off_px)];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long_px = Math.hypot(dx, dy);
  const width_px = dimension.text.length * LETTER_px;
  const upright = Math.abs(dy) > Math.abs(dx);
  const shared = {
    key: `${dimension.off.join()} ${dimension.row} ${dimension.text}`,
    text: dimension.text,
    from,
    to,
    extensions: ends.map((end) => [away(end, way, CLEAR_px), away(end, way, off_px + EXTENDS_px)] as const),
    upright,
  };
  const at = ([x, y]: Px, inline: boolean): PlacedDimension => ({ ...shared, at: { x, y }, inline });
  const along = (share_1: number): Px => [from[0] + dx * share_1, from[1] + dy * share_1];
  const inside = SHARES_1.filter((share_1) => {
    const to_px = Math.min(share_1, 1 - share_1) * long_px;
    return to_px >= width_px / 2 + LINE_px;
  });
  // past the end that lies further right, or lower: further aft on most views
  const line = unit([dx, dy]);
  const isForward = upright ? dy >= 0 : dx >= 0;
  const out_px = (long_px < SHORT_px ? OUTSIDE_px : 0) + PAST_px + width_px / 2;
  const past = (end: Px, side: 1 | -1) => away(end, line, side * out_px);
  const beyond = at(away(along(0.5), way, BEYOND_px), false);
  return [
    ...inside.map((share_1) => at(along(share_1), true)),
    ...(upright || width_px <= long_px + 2 * BEYOND_px ? [beyond] : []),
    at(isForward ? past(to, 1) : past(from, -1), false),
    at(isForward ? past(from, -1) : past(to, 1), false),
    beyond,
  ];
}

/** How far figures reach out of the picture, pixels. */
function cutOff_px({ text, at, upright }: PlacedDimension, { left, right, top, bottom }: Seen): number {
  const long_px = (text.length * LETTER_px) / 2;
  const [dx, dy] = upright ? [HIGH_px / 2, long_px] : [long_px, HIGH_px / 2];
  return Math.max(0, left - at.x + dx, at.x + dx - right, top - at.y + dy, at.y + dy - bottom);
}

const STEP_px = 8;

/** A line as places along it that nothing should cover. */
export const linePlaces = ([x1, y1]: Px, [x2, y2]: Px): readonly Place[] => {
  const count = Math.ceil(Math.hypot(x2 - x1, y2 - y1) / STEP_px) + 1;
  return Array.from({ length: count }, (_, index) => {
    const share_1 = count === 1 ? 0 : index / (count - 1);
    return { x: x1 + (x2 - x1) * share_1, y: y1 + (y2 - y1) * share_1 };
  });
};

/** The line of a measure and its extensions. */
export const measurePlaces = ({ from, to, extensions }: PlacedDimension): readonly Place[] =>
  [[from, to] as const, ...extensions].flatMap(([start, end]) => linePlaces(start, end));

/** The figures as squares that nothing else should touch. */
export function textSquares({ text, at, upright }: PlacedDimension): readonly Square[] {
  const half_px = HIGH_px / 2;
  const reach_px = Math.max(0, (text.length * LETTER_px) / 2 - half_px);
  const count = Math.ceil(reach_px / half_px) + 1;
  return Array.from({ length: count }, (_, index) => {
    const by_px = count === 1 ? 0 : -reach_px + (2 * reach_px * index) / (count - 1);
    return { x: at.x + (upright ? 0 : by_px), y: at.y + (upright ? by_px : 0), half_px };
  });
}

function liesOn({ text, at, upright }: PlacedDimension, { x, y, half_px }: Square): boolean {
  const [long_px, high_px] = [(text.length * LETTER_px) / 2 + half_px, HIGH_px / 2 + half_px];
  const [width_px, height_px] = upright ? [high_px, long_px] : [long_px, high_px];
  return Math.abs(at.x - x) < width_px && Math.abs(at.y - y) < height_px;
}

const away = ([x, y]: Px, [dx, dy]: Px, by_px: number): Px => [x + dx * by_px, y + dy * by_px];

function unit([x, y]: Px): Px {
  const length = Math.hypot(x, y) || 1;
  return [x / length, y / length];
}
