/** A noted place on the drawing. */
export interface Noted {
  readonly note: number;
  readonly x: number;
  readonly y: number;
}

export interface Balloon extends Noted {
  readonly bx: number;
  readonly by: number;
}

/** The drawing and its balloons, in whatever unit it is drawn in. */
export interface BalloonRoom {
  readonly width: number;
  readonly height: number;
  readonly radius: number;
  /** The legend stands at the top left, and is so high. */
  readonly legend: number;
}

/** Between the edge of the drawing and a balloon, and between two balloons, as a share of the radius. */
const EDGE = 0.6;
const GAP = 0.3;

/**
 * Puts the numbers of the notes in the two margins of the drawing, each beside its place, none over another. Those
 * for which a margin has no room stay without a balloon; the notes name their places anyway.
 */
export function balloons(
  noted: readonly Noted[],
  { width, height, radius, legend }: BalloonRoom,
): readonly Balloon[] {
  const apart = radius * (2 + GAP);
  const inset = radius * (1 + EDGE);
  const bottom = height - inset;
  const side = (left: boolean) => {
    const top = (left ? legend : 0) + inset;
    const room = Math.floor((bottom - top) / apart) + 1;
    const own = noted
      .filter(({ x }) => x < width / 2 === left)
      .toSorted((a, b) => a.note - b.note)
      .slice(0, room)
      .toSorted((a, b) => a.y - b.y);
    return spread(
      own.map(({ y }) => Math.max(top, Math.min(bottom, y - radius))),
      { top, bottom, apart },
    ).map((by, index) => ({
      // `own` and its heights are one list: the index is inside both
      ...(own[index] as Noted),
      bx: left ? inset : width - inset,
      by,
    }));
  };
  return [...side(true), ...side(false)];
}

interface Span {
  readonly top: number;
  readonly bottom: number;
  readonly apart: number;
}

/** Pushes sorted heights apart, down first and then back up from the bottom. */
function spread(heights: readonly number[], { top, bottom, apart }: Span): readonly number[] {
  const down: number[] = [];
  for (const wanted of heights) down.push(Math.max(wanted, (down.at(-1) ?? top - apart) + apart));
  const up: number[] = [];
  for (const wanted of down.toReversed()) up.push(Math.min(wanted, (up.at(-1) ?? bottom + apart) - apart));
  return up.toReversed().map((height) => Math.round(height * 10) / 10);
}
