/** A point of a drawing: right and down. */
export type At = readonly [x: number, y: number];

export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

type Cut = (one: At, other: At) => At;
const at = (one: At, other: At, share: number): At => [
  one[0] + (other[0] - one[0]) * share,
  one[1] + (other[1] - one[1]) * share,
];

/** The part of a closed shape that is in a frame (Sutherland and Hodgman, Reentrant polygon clipping, 1974). */
export function inFrame(shape: readonly At[], { left, right, top, bottom }: Frame): readonly At[] {
  const onX =
    (x: number): Cut =>
    (one, other) =>
      at(one, other, (x - one[0]) / (other[0] - one[0]));
  const onY =
    (y: number): Cut =>
    (one, other) =>
      at(one, other, (y - one[1]) / (other[1] - one[1]));
  const sides: readonly (readonly [isIn: (point: At) => boolean, cut: Cut])[] = [
    [([x]) => x >= left, onX(left)],
    [([x]) => x <= right, onX(right)],
    [([, y]) => y >= top, onY(top)],
    [([, y]) => y <= bottom, onY(bottom)],
  ];
  return sides.reduce<readonly At[]>(
    (points, [isIn, cut]) =>
      points.flatMap((point, index) => {
        const before = points.at(index - 1) ?? point;
        if (isIn(point)) return isIn(before) ? [point] : [cut(before, point), point];
        return isIn(before) ? [cut(before, point)] : [];
      }),
    shape,
  );
}

/** Where along a line that rises to the right a shape's edges cross it, as x. */
function crossings(shape: readonly At[], sum: number): readonly number[] {
  return shape.flatMap((point, index) => {
    const before = shape.at(index - 1) ?? point;
    const [a, b] = [before[0] + before[1] - sum, point[0] + point[1] - sum];
    return a < 0 === b < 0 ? [] : [before[0] + ((point[0] - before[0]) * a) / (a - b)];
  });
}

/**
 * Hatching of what is in a frame and outside a shape, as strokes: fills may not print, and neither may clips.
 * Lines rise to the right.
 *
 * @param shape the whole of it, also what lies beyond the frame
 * @param apart along the bottom
 */
export function hatchOutside(
  shape: readonly At[],
  frame: Frame,
  apart: number,
): readonly (readonly [At, At])[] {
  const { left, right, top, bottom } = frame;
  const strokes: (readonly [At, At])[] = [];
  for (let sum = left + top + apart; sum < right + bottom; sum += apart) {
    const from = Math.max(left, sum - bottom);
    const to = Math.min(right, sum - top);
    const cuts = crossings(shape, sum).toSorted((a, b) => a - b);
    const ends = [Number.NEGATIVE_INFINITY, ...cuts, Number.POSITIVE_INFINITY];
    // far away is outside; outside and inside come by turns
    for (let index = 0; index + 1 < ends.length; index += 2) {
      const start = Math.max(from, ends[index] ?? from);
      const end = Math.min(to, ends[index + 1] ?? from);
      if (end - start > 0.5)
        strokes.push([
          [start, sum - start],
          [end, sum - end],
        ]);
    }
  }
  return strokes;
}
