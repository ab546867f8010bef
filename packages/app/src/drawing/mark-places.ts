/** A mark that wants a square of the drawing to itself, all in pixels. */
export interface Wanted {
  readonly id: string;
  /** Its own place. */
  readonly x: number;
  readonly y: number;
  /** Half the side of the square that is its own. */
  readonly half_px: number;
  /** Placed before the others: what is done from where one stands. */
  readonly first?: boolean;
}

/** One square of the drawing, and whose it is: one mark's, or that of several which stand too close to be told apart. */
export interface Stood {
  readonly ids: readonly [string, ...string[]];
  /** The middle of the square. */
  readonly x: number;
  readonly y: number;
  readonly half_px: number;
  /** Where the first of them really is; a leader goes there when the square had to give way. */
  readonly ofX: number;
  readonly ofY: number;
}

const DIRECTIONS = 16;
/** How far out a square may be put, as shares of the reach. */
const RINGS_1 = [0.2, 0.4, 0.6, 0.8, 1] as const;
/** Each sweep makes the whole cheaper or is the last; no drawing has needed a fourth. */
const SWEEPS = 4;
/** To lie over the place of another mark costs as much as to go this much further, as a share of the reach. */
const OVER_PLACE_1 = 0.5;

interface At {
  readonly x: number;
  readonly y: number;
}

interface Standing extends At {
  readonly wanted: Wanted;
  readonly cost: number;
}

/**
 * Gives each mark a square that no other has any of. A mark keeps its own place when it can, the one with the most
 * neighbours last; else the cheapest free square within reach; else it shares the square of the mark that is in its
 * way. Then each that gave way looks again as long as anything gets better. The same marks give the same squares.
 *
 * @param reach_px how far from its place a mark may be drawn
 */
export function markPlaces(marks: readonly Wanted[], reach_px: number): readonly Stood[] {
  const crowd = new Map(
    marks.map((mark) => [mark, marks.filter((other) => clash(mark, mark, other, other)).length] as const),
  );
  const order = marks.toSorted(
    (a, b) =>
      Number(b.first ?? false) - Number(a.first ?? false) || (crowd.get(a) ?? 0) - (crowd.get(b) ?? 0),
  );
  const standing = new Map<string, Standing>();
  const without: Wanted[] = [];
  const freeFor = (mark: Wanted): Standing | undefined => {
    const others = [...standing.values()].filter(
      ({ wanted, x, y }) =>
        wanted !== mark &&
        Math.max(Math.abs(x - mark.x), Math.abs(y - mark.y)) < reach_px + mark.half_px + wanted.half_px,
    );
    const isFree = (at: At) => others.every((other) => !clash(mark, at, other.wanted, other));
    if (isFree(mark)) return { wanted: mark, x: mark.x, y: mark.y, cost: 0 };
    return roundAbout(mark, marks, reach_px, isFree);
  };
  for (const mark of order) {
    const found = freeFor(mark);
    if (found === undefined) without.push(mark);
    else standing.set(mark.id, found);
  }
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let better = false;
    for (const was of [...standing.values()].filter(({ cost }) => cost > 0)) {
      const now = freeFor(was.wanted);
      if (now === undefined || now.cost >= was.cost) continue;
      standing.set(was.wanted.id, now);
      better = true;
    }
    for (const mark of without.splice(0)) {
      const now = freeFor(mark);
      if (now === undefined) without.push(mark);
      else {
        standing.set(mark.id, now);
        better = true;
      }
    }
    if (!better) break;
  }
  return shared(marks, [...standing.values()], without);
}

/** The cheapest free square round a mark's own place, if there is one within reach. */
function roundAbout(
  mark: Wanted,
  marks: readonly Wanted[],
  reach_px: number,
  isFree: (at: At) => boolean,
): Standing | undefined {
  const near = marks.filter(
    (other) => other !== mark && Math.hypot(other.x - mark.x, other.y - mark.y) < 2 * reach_px,
  );
  let best: Standing | undefined;
  for (const ring_1 of RINGS_1) {
    const away_px = ring_1 * reach_px;
    if (best !== undefined && away_px >= best.cost) break;
    for (let step = 0; step < DIRECTIONS; step += 1) {
      const angle_rad = (step * 2 * Math.PI) / DIRECTIONS;
      const at = { x: mark.x + Math.cos(angle_rad) * away_px, y: mark.y + Math.sin(angle_rad) * away_px };
      if (!isFree(at)) continue;
      let over = 0;
      for (const { x, y } of near) if (Math.hypot(x - at.x, y - at.y) < mark.half_px) over += 1;
      const cost = away_px + over * OVER_PLACE_1 * reach_px;
      if (best === undefined || cost < best.cost) best = { wanted: mark, ...at, cost };
    }
  }
  return best;
}

/** Those without a square join the one that is nearest to their place. */
function shared(
  marks: readonly Wanted[],
  standing: readonly Standing[],
  without: readonly Wanted[],
): readonly Stood[] {
  const joined = new Map<Standing, string[]>();
  for (const mark of without) {
    let nearest: { readonly to: Standing; readonly far: number } | undefined;
    for (const each of standing) {
      const far = Math.hypot(each.x - mark.x, each.y - mark.y);
      if (nearest === undefined || far < nearest.far) nearest = { to: each, far };
    }
    if (nearest === undefined) continue;
    const others = joined.get(nearest.to);
    if (others === undefined) joined.set(nearest.to, [mark.id]);
    else others.push(mark.id);
  }
  const order = new Map(marks.map(({ id }, index) => [id, index] as const));
  return standing
    .map(({ wanted, x, y }, index): Stood => {
      const at = standing[index];
      const more = (at === undefined ? undefined : joined.get(at)) ?? [];
      return {
        ids: [wanted.id, ...more],
        x,
        y,
        half_px: wanted.half_px,
        ofX: wanted.x,
        ofY: wanted.y,
      };
    })
    .toSorted((a, b) => (order.get(a.ids[0]) ?? 0) - (order.get(b.ids[0]) ?? 0));
}

const clash = (a: Wanted, atA: At, b: Wanted, atB: At): boolean =>
  Math.abs(atA.x - atB.x) < a.half_px + b.half_px - 1e-9 &&
  Math.abs(atA.y - atB.y) < a.half_px + b.half_px - 1e-9;

/** Whether a square had to give way so far that a line must say where it belongs. */
export const needsLeader = ({ x, y, ofX, ofY, half_px }: Stood): boolean =>
  Math.hypot(x - ofX, y - ofY) > half_px * 0.75;
