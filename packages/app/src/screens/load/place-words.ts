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
export const boxOf = (words: Words): Box => boxOfWidth(words, widthOf(words.text));

function boxOfWidth({ x, y, anchor }: Words, width: number): Box {
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

/** How much of the picture a part covers that is taken, and more the further it reaches out of it. */
const coveredBy = (box: Box, taken: readonly Box[], plot: Box): number =>
  taken.reduce((sum, one) => sum + shared(box, one), 100 * beyond(box, plot));

/**
 * The first of some places for words that is free; where none is, the nearest anywhere that is, else the place that
 * covers least.
 *
 * @param places of the same words, the best first; one at least
 * @param may whether words may stand at a place that was not named
 */
export function freest(
  places: Iterable<Words>,
  taken: readonly Box[],
  plot: Box,
  may: (place: Words) => boolean = () => true,
): Words | undefined {
  let first: Words | undefined;
  let best: Words | undefined;
  let least = Number.POSITIVE_INFINITY;
  let width = 0;
  for (const place of places) {
    if (first === undefined) {
      first = place;
      width = widthOf(place.text);
    }
    const covered = coveredBy(boxOfWidth(place, width), taken, plot);
    if (covered === 0) return place;
    if (covered >= least) continue;
    best = place;
    least = covered;
  }
  return first === undefined ? undefined : (nearestFree(first, width, taken, plot, may) ?? best);
}

/** The nearest place anywhere in the picture that is free. */
function nearestFree(
  words: Words,
  width: number,
  taken: readonly Box[],
  plot: Box,
  may: (place: Words) => boolean,
): Words | undefined {
  let found: Words | undefined;
  let nearest = Number.POSITIVE_INFINITY;
  for (let x = plot.left; x <= plot.right; x += 12) {
    for (let y = plot.top; y <= plot.bottom; y += 8) {
      const far = Math.hypot(x - words.x, y - words.y);
      if (far >= nearest) continue;
      const place = { ...words, x, y };
      if (coveredBy(boxOfWidth(place, width), taken, plot) > 0 || !may(place)) continue;
      found = place;
      nearest = far;
    }
  }
  return found;
}

/** From one height that is tried to the next. */
const STEP_px = 2;
/** So far above the first that is wanted and below the last, names are tried. */
const AROUND_px = 110;
/** Rather anywhere else than on something. */
const COVERED = 1e4;

/**
 * Baselines of names in a column, in the order of what they belong to from above down, apart from each other and beside
 * what is taken: of all ways the one that moves them least.
 *
 * @param names where each would stand, from above down
 */
export function column(
  names: readonly Words[],
  apart_px: number,
  { top, bottom }: Pick<Box, "top" | "bottom">,
  taken: readonly Box[],
): readonly number[] {
  const wanted = names.map(({ y }) => y);
  const from = Math.max(top, Math.min(...wanted) - AROUND_px);
  const count = Math.floor((Math.min(bottom, Math.max(...wanted) + AROUND_px) - from) / STEP_px) + 1;
  const apart = Math.ceil(apart_px / STEP_px);
  // the least that the names down to a rank cost when the last of them stands at a height or above, and where it does
  const costs: number[][] = [];
  const places: number[][] = [];
  names.forEach((name, rank) => {
    const { left, right } = boxOf(name);
    const beside = taken.filter((one) => one.left < right && one.right > left);
    const above = costs[rank - 1];
    const cost = new Array<number>(count);
    const place = new Array<number>(count);
    let least = Number.POSITIVE_INFINITY;
    let where = 0;
    for (let at = 0; at < count; at += 1) {
      const y = from + at * STEP_px;
      const before = above === undefined ? 0 : (above[at - apart] ?? Number.POSITIVE_INFINITY);
      const covers = beside.some((one) => one.top < y + BELOW_px && one.bottom > y - ABOVE_px);
      const all = before + Math.abs(y - name.y) + (covers ? COVERED : 0);
      if (all < least) {
        least = all;
        where = at;
      }
      cost[at] = least;
      place[at] = where;
    }
    costs.push(cost);
    places.push(place);
  });
  const placed = [...wanted];
  let last = count - 1;
  for (let rank = names.length - 1; rank >= 0; rank -= 1) {
    const at = places[rank]?.[last] ?? 0;
    placed[rank] = from + at * STEP_px;
    last = at - apart;
  }
  return placed;
}
