/** A part of the picture, pixels. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Words beside a line, from their baseline on. */
export interface Words {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
  readonly text: string;
}

/** How wide letters of the picture's words are at the most; a figure, a space, a letter "m" and all others. */
const WIDE_px: Readonly<Record<string, number>> = { " ": 4.6, m: 14.4, ".": 5, ",": 5 };
const LETTER_px = 9.8;
const ABOVE_px = 12;
const BELOW_px = 4;

const widthOf = (text: string): number =>
  [...text].reduce((sum, letter) => sum + (WIDE_px[letter] ?? LETTER_px), 0);

/** The part of the picture that words take. */
export function boxOf({ x, y, anchor, text }: Words): Box {
  const width = widthOf(text);
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return { left, right: left + width, top: y - ABOVE_px, bottom: y + BELOW_px };
}

export const boxAbout = (x: number, y: number, half_px: number): Box => ({
  left: x - half_px,
  right: x + half_px,
  top: y - half_px,
  bottom: y + half_px,
});

/** How much of two parts is the same, square pixels. */
export const shared = (one: Box, other: Box): number =>
  Math.max(0, Math.min(one.right, other.right) - Math.max(one.left, other.left)) *
  Math.max(0, Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top));

const beyond = ({ left, right, top, bottom }: Box, { left: l, right: r, top: t, bottom: b }: Box): number =>
  Math.max(0, l - left) + Math.max(0, right - r) + Math.max(0, t - top) + Math.max(0, bottom - b);

/** How much words at a place would cover, and more the further they reach out of the picture. */
function coveredBy(place: Words, taken: readonly Box[], plot: Box): number {
  const box = boxOf(place);
  return taken.reduce((sum, one) => sum + shared(box, one), 100 * beyond(box, plot));
}

/**
 * The first of some places for words that is free; where none is, the nearest anywhere that is, else the place that
 * covers least.
 *
 * @param may whether words may stand at a place that was not named
 */
export function freest(
  places: readonly [Words, ...Words[]],
  taken: readonly Box[],
  plot: Box,
  may: (place: Words) => boolean = () => true,
): Words {
  const [first] = places;
  let best = first;
  let least = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const covered = coveredBy(place, taken, plot);
    if (covered === 0) return place;
    if (covered >= least) continue;
    best = place;
    least = covered;
  }
  const free = everywhere(first, plot)
    .filter((place) => may(place) && coveredBy(place, taken, plot) === 0)
    .map((place) => ({ place, far: Math.hypot(place.x - first.x, place.y - first.y) }))
    .toSorted((a, b) => a.far - b.far)[0];
  return free?.place ?? best;
}

/** The same words all over the picture. */
function everywhere(words: Words, { left, right, top, bottom }: Box): readonly Words[] {
  const places: Words[] = [];
  for (let x = left; x <= right; x += 12)
    for (let y = top; y <= bottom; y += 8) places.push({ ...words, x, y });
  return places;
}

/** From one height that is tried to the next. */
const STEP_px = 2;
/** Rather anywhere else than on something. */
const COVERED = 1e4;

/**
 * Baselines of words in a column, in the order of what they belong to from above down, apart from each other and beside
 * what is taken: of all ways the one that moves them least.
 *
 * @param wanted where each would stand, from above down
 * @param isFree whether the words of a rank may stand at a baseline
 */
export function column(
  wanted: readonly number[],
  apart_px: number,
  { top, bottom }: Pick<Box, "top" | "bottom">,
  isFree: (rank: number, y: number) => boolean,
): readonly number[] {
  const heights: number[] = [];
  for (let y = top; y <= bottom; y += STEP_px) heights.push(y);
  const steps = Math.ceil(apart_px / STEP_px);
  // the least that the words down to a rank cost when the last of them stands at this height or above, and where it does
  const ranks: { readonly cost: number; readonly at: number }[][] = [];
  wanted.forEach((y, rank) => {
    const above = ranks[rank - 1];
    let best = { cost: Number.POSITIVE_INFINITY, at: 0 };
    ranks.push(
      heights.map((height, at) => {
        const before = rank === 0 ? 0 : (above?.[at - steps]?.cost ?? Number.POSITIVE_INFINITY);
        const cost = before + Math.abs(height - y) + (isFree(rank, height) ? 0 : COVERED);
        if (cost < best.cost) best = { cost, at };
        return best;
      }),
    );
  });
  const placed = [...wanted];
  let last = heights.length - 1;
  for (let rank = wanted.length - 1; rank >= 0; rank -= 1) {
    const at = ranks[rank]?.[last]?.at ?? 0;
    placed[rank] = heights[at] ?? top;
    last = at - steps;
  }
  return placed;
}
