/** A flat picture of a flat sheet, seen from anywhere: (x, y) to (u, v), nine figures row by row. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

export interface Pair {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [u: number, v: number];
}

/** Beside the greatest figure of its column a pivot smaller than this is none: the places lie on one line. */
const SMALLEST_PIVOT = 1e-9;

/**
 * The homography through four pairs of places, or nearest to more (least squares of the algebraic error).
 *
 * @returns `undefined` for fewer than four pairs, or where three of four lie on one line
 * @source R. Hartley and A. Zisserman, Multiple View Geometry, 2nd ed., algorithm 4.2 (normalised direct linear
 *   transformation), with the last figure fixed at 1
 */
export function homographyOf(pairs: readonly Pair[]): Homography | undefined {
  if (pairs.length < 4) return undefined;
  const from = normalising(pairs.map((pair) => pair.from));
  const to = normalising(pairs.map((pair) => pair.to));
  if (from === undefined || to === undefined) return undefined;
  const rows: number[][] = [];
  for (const pair of pairs) {
    const [x, y] = mapped(from, pair.from);
    const [u, v] = mapped(to, pair.to);
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u], [0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  }
  const solved = leastSquares(rows);
  const toBack = inverseOf(to);
  if (solved === undefined || toBack === undefined) return undefined;
  const [a, b, c, d, e, f, g, h] = solved;
  const inner: Homography = [a ?? 0, b ?? 0, c ?? 0, d ?? 0, e ?? 0, f ?? 0, g ?? 0, h ?? 0, 1];
  const whole = times(toBack, times(inner, from));
  return inverseOf(whole) === undefined ? undefined : whole;
}

/** Where a place goes; `undefined` on the horizon, which no picture shows. */
export function mapPoint(
  [a, b, c, d, e, f, g, h, i]: Homography,
  [x, y]: readonly [number, number],
): readonly [number, number] | undefined {
  const w = g * x + h * y + i;
  const u = (a * x + b * y + c) / w;
  const v = (d * x + e * y + f) / w;
  return Number.isFinite(u) && Number.isFinite(v) ? [u, v] : undefined;
}

/** The way back; `undefined` where several places go to one. */
export function inverseOf([a, b, c, d, e, f, g, h, i]: Homography): Homography | undefined {
  const first = e * i - f * h;
  const second = f * g - d * i;
  const third = d * h - e * g;
  const size = a * first + b * second + c * third;
  const scale = Math.max(Math.abs(a * first), Math.abs(b * second), Math.abs(c * third));
  if (!(Math.abs(size) > scale * 1e-12)) return undefined;
  return [
    first / size,
    (c * h - b * i) / size,
    (b * f - c * e) / size,
    second / size,
    (a * i - c * g) / size,
    (c * d - a * f) / size,
    third / size,
    (b * g - a * h) / size,
    (a * e - b * d) / size,
  ];
}

function times(one: Homography, other: Homography): Homography {
  const at = (row: number, column: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + (one[3 * row + k] ?? 0) * (other[3 * k + column] ?? 0), 0);
  return [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)];
}

/** Moves places about their middle and to a mean distance of √2 from it, so that all figures are of one size. */
function normalising(places: readonly (readonly [number, number])[]): Homography | undefined {
  const count = places.length;
  const middleX = places.reduce((sum, [x]) => sum + x, 0) / count;
  const middleY = places.reduce((sum, [, y]) => sum + y, 0) / count;
  const spreadX = Math.sqrt(places.reduce((sum, [x]) => sum + (x - middleX) ** 2, 0) / count);
  const spreadY = Math.sqrt(places.reduce((sum, [, y]) => sum + (y - middleY) ** 2, 0) / count);
  if (!(spreadX > 0 && spreadY > 0)) return undefined;
  // each axis by itself: 8000 ft beside 0.2 is no slant
  return [1 / spreadX, 0, -middleX / spreadX, 0, 1 / spreadY, -middleY / spreadY, 0, 0, 1];
}

const mapped = (h: Homography, place: readonly [number, number]): readonly [number, number] =>
  mapPoint(h, place) ?? [0, 0]; // a normalising one has no horizon

/** Solves rows of eight figures and a right side, by normal equations and elimination with pivots. */
function leastSquares(rows: readonly (readonly number[])[]): readonly number[] | undefined {
  const size = 8;
  const matrix = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size + 1 }, (_, j) =>
      rows.reduce((sum, row) => sum + (row[i] ?? 0) * (row[j] ?? 0), 0),
    ),
  );
  const greatest = Math.max(...matrix.map((row, i) => Math.abs(row[i] ?? 0)));
  for (let column = 0; column < size; column += 1) {
    const chosen = pivotOf(matrix, column);
    const top = chosen?.[column] ?? 0;
    if (chosen === undefined || !(Math.abs(top) > SMALLEST_PIVOT * greatest)) return undefined;
    for (const [row, target] of matrix.entries()) {
      if (row === column) continue;
      const share = (target[column] ?? 0) / top;
      for (let k = column; k <= size; k += 1) target[k] = (target[k] ?? 0) - share * (chosen[k] ?? 0);
    }
  }
  return matrix.map((row, i) => (row[size] ?? 0) / (row[i] ?? 1));
}

/** The row with the greatest figure in a column, from the diagonal down, moved to the diagonal. */
function pivotOf(matrix: number[][], column: number): number[] | undefined {
  const below = matrix.slice(column);
  const sizes = below.map((row) => Math.abs(row[column] ?? 0));
  const pivot = column + sizes.indexOf(Math.max(...sizes));
  const chosen = matrix[pivot];
  const here = matrix[column];
  if (chosen === undefined || here === undefined) return undefined;
  matrix[pivot] = here;
  matrix[column] = chosen;
  return chosen;
}
