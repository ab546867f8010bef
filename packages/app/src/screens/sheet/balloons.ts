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

const MARGIN = 16;
const APART = 23;
const TOP = 60;

/**
 * Puts the numbers of the notes in the two margins of the drawing, each beside its place, none over another. Those
 * for which a margin has no room stay without a balloon; the notes name their places anyway.
 */
export function balloons(
  noted: readonly Noted[],
  size: { readonly width: number; readonly height: number },
): readonly Balloon[] {
  const side = (left: boolean) => {
    const room = Math.floor((size.height - TOP - 14) / APART) + 1;
    const own = noted
      .filter(({ x }) => x < size.width / 2 === left)
      .toSorted((a, b) => a.note - b.note)
      .slice(0, room)
      .toSorted((a, b) => a.y - b.y);
    return spread(
      own.map(({ y }) => Math.max(TOP, Math.min(size.height - 14, y - 14))),
      TOP,
      size.height - 14,
    ).map((by, index) => ({
      // `own` and its heights are one list: the index is inside both
      ...(own[index] as Noted),
      bx: left ? MARGIN : size.width - MARGIN,
      by,
    }));
  };
  return [...side(true), ...side(false)];
}

/** Pushes sorted heights apart, down first and then back up from the bottom. */
function spread(heights: readonly number[], top: number, bottom: number): readonly number[] {
  const down: number[] = [];
  for (const wanted of heights) down.push(Math.max(wanted, (down.at(-1) ?? top - APART) + APART));
  const up: number[] = [];
  for (const wanted of down.toReversed()) up.push(Math.min(wanted, (up.at(-1) ?? bottom + APART) - APART));
  return up.toReversed().map((height) => Math.round(height * 10) / 10);
}
