import type { Ink } from "./ink.ts";
import { distance_px, type PicturePoint } from "./point.ts";

/** What a pixel of blank paper costs beside one of ink: a way round over ink may be so many times longer. */
const PAPER_COST = 60;
const INK_COST = 2;
/** Costs are whole numbers below this, so that the pixels that wait fit in a ring of lists. */
const RING = 128;
/** What is so dark beside the darkest is as good as it. */
const DARK_1 = 0.75;
/** How far to the side of the straight line between the taps the way may swing. */
const SWING_1 = 0.35;
const LEAST_SWING_px = 30;

/** A part of the picture, with what a step on each of its pixels costs. */
interface Band {
  readonly left: number;
  readonly top: number;
  readonly across: number;
  readonly down: number;
  readonly cost: Uint8Array;
}

/**
 * The pixels of the cheapest way from one place to another, where ink is cheap and paper dear.
 *
 * @returns nothing where the places are one, or at the very edge of the picture
 * @source E. W. Dijkstra, "A note on two problems in connexion with graphs", Numerische Mathematik 1, 1959; with the ring
 *   of lists of R. B. Dial, "Algorithm 360", CACM 12(11), 1969
 */
export function cheapestWay(ink: Ink, from: PicturePoint, to: PicturePoint): readonly PicturePoint[] {
  const band = bandBetween(ink, from, to);
  const { left, top, across, down } = band;
  if (across < 2 || down < 2 || distance_px(from, to) === 0) return [];
  const index = ({ x_px, y_px }: PicturePoint): number =>
    clampTo(Math.round(y_px) - top, down) * across + clampTo(Math.round(x_px) - left, across);
  const goal = index(to);
  const cameFrom = search(band, index(from), goal);
  const path: PicturePoint[] = [];
  for (let pixel = goal; pixel >= 0; pixel = cameFrom[pixel] ?? -1) {
    const x = pixel % across;
    path.push({ x_px: left + x, y_px: top + (pixel - x) / across });
  }
  return path.reverse();
}

/** From which neighbour the cheapest way comes to each pixel that was reached; −1 for none. */
function search(band: Band, start: number, goal: number): Int32Array {
  const best = new Float64Array(band.cost.length).fill(Number.POSITIVE_INFINITY);
  const cameFrom = new Int32Array(band.cost.length).fill(-1);
  const ring: number[][] = Array.from({ length: RING }, () => []);
  best[start] = 0;
  ring[0]?.push(start);
  let waiting = 1;
  const reach = (pixel: number, from: number, total: number): void => {
    if (!(total < (best[pixel] ?? 0))) return;
    best[pixel] = total;
    cameFrom[pixel] = from;
    ring[total % RING]?.push(pixel);
    waiting += 1;
  };
  for (let level = 0; waiting > 0; level += 1) {
    const list = ring[level % RING] ?? [];
    ring[level % RING] = [];
    for (const pixel of list) {
      waiting -= 1;
      if (best[pixel] !== level) continue; // a cheaper way came first
      if (pixel === goal) return cameFrom;
      stepOn(band, pixel, level, reach);
    }
  }
  return cameFrom;
}

function stepOn(
  { across, down, cost }: Band,
  pixel: number,
  level: number,
  reach: (pixel: number, from: number, total: number) => void,
): void {
  const x = pixel % across;
  const y = (pixel - x) / across;
  const lastX = Math.min(x + 1, across - 1);
  const lastY = Math.min(y + 1, down - 1);
  for (let nextY = Math.max(0, y - 1); nextY <= lastY; nextY += 1) {
    for (let nextX = Math.max(0, x - 1); nextX <= lastX; nextX += 1) {
      const next = nextY * across + nextX;
      const length = nextX !== x && nextY !== y ? Math.SQRT2 : 1;
      reach(next, pixel, level + Math.round((cost[next] ?? 0) * length));
    }
  }
}

function bandBetween(ink: Ink, from: PicturePoint, to: PicturePoint): Band {
  const swing = Math.max(LEAST_SWING_px, SWING_1 * distance_px(from, to));
  const left = Math.max(0, Math.floor(Math.min(from.x_px, to.x_px) - swing));
  const right = Math.min(ink.width - 1, Math.ceil(Math.max(from.x_px, to.x_px) + swing));
  const top = Math.max(0, Math.floor(Math.min(from.y_px, to.y_px) - swing));
  const bottom = Math.min(ink.height - 1, Math.ceil(Math.max(from.y_px, to.y_px) + swing));
  const across = Math.max(0, right - left + 1);
  const down = Math.max(0, bottom - top + 1);
  return { left, top, across, down, cost: costs(ink, left, top, across, down) };
}

function costs(ink: Ink, left: number, top: number, across: number, down: number): Uint8Array {
  const full = Math.max(0.15, DARK_1 * darkest(ink, left, top, across, down));
  const cost = new Uint8Array(across * down);
  for (let y = 0; y < down; y += 1) {
    for (let x = 0; x < across; x += 1) {
      const dark = Math.min(1, (ink.data[(top + y) * ink.width + left + x] ?? 0) / full);
      cost[y * across + x] = Math.round(INK_COST + (PAPER_COST - INK_COST) * (1 - dark) ** 2);
    }
  }
  return cost;
}

/** How dark lines are here: the lightest of the darkest hundredth. */
function darkest(ink: Ink, left: number, top: number, across: number, down: number): number {
  const counts = new Uint32Array(256);
  for (let y = 0; y < down; y += 1) {
    for (let x = 0; x < across; x += 1) {
      const level = Math.round(255 * (ink.data[(top + y) * ink.width + left + x] ?? 0));
      counts[level] = (counts[level] ?? 0) + 1;
    }
  }
  let more = 0.01 * across * down;
  let level = 255;
  while (level > 0 && more > (counts[level] ?? 0)) {
    more -= counts[level] ?? 0;
    level -= 1;
  }
  return level / 255;
}

const clampTo = (value: number, count: number): number => Math.min(Math.max(value, 0), count - 1);
