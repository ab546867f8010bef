/** A number to be written beside what it belongs to, all in pixels. */
export interface Label {
  readonly id: string;
  /** What it belongs to. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Where it would stand if it stood alone: radians clockwise from the right. */
  readonly liked_rad: number;
}

/** What a label should leave free. */
export interface Taken {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** A square that no label may touch: a mark's own. */
export interface Square extends Place {
  readonly half_px: number;
}

/** The last two are for where it is crowded: from there a leader goes back. */
const AWAY_px = [20, 27, 34, 45, 58] as const;
/** Further from what it belongs to than this, a label needs a leader. */
export const LEADER_FROM_px = 40;
const DIRECTIONS = 16;
/** Sweeps after the first placing; nothing in a walk has needed a third. */
const SWEEPS = 4;
/** This much of a label's width stands over what it belongs to without pushing it away. */
const NARROW_px = 17;

/** What a place costs: another label under it weighs most, then what it covers, then how far it is from where it is liked. */
const OVER_LABEL = 1_000;
const OVER_TAKEN = 60;

interface Candidate extends Place {
  readonly cost: number;
}

/**
 * Places labels so that none lies on another or on a mark, and few on what else is drawn: each in turn takes its
 * cheapest place, the one with the least choice first, and then each looks again as long as something gets better. One
 * for which there is no room at all has no place. The same labels give the same places.
 */
export function labelPlaces(
  labels: readonly Label[],
  taken: readonly Taken[],
  marks: readonly Square[] = [],
): ReadonlyMap<string, Place> {
  const choices = new Map(labels.map((label) => [label, candidates(label, taken, marks)] as const));
  const rivals = new Map(
    labels.map((label) => [label, labels.filter((other) => meet(label, other))] as const),
  );
  const placed = new Map<Label, Candidate>();
  const cheapest = (label: Label): Candidate | undefined => {
    const others = (rivals.get(label) ?? []).flatMap((other) => {
      const at = placed.get(other);
      return at === undefined ? [] : [{ other, at }];
    });
    let best: { readonly candidate: Candidate; readonly cost: number } | undefined;
    for (const candidate of choices.get(label) ?? []) {
      // they stand in the order of their cost
      if (best !== undefined && candidate.cost >= best.cost) break;
      let { cost } = candidate;
      for (const { other, at } of others) if (overlaps(label, candidate, other, at)) cost += OVER_LABEL;
      if (best === undefined || cost < best.cost) best = { candidate, cost };
    }
    return best?.candidate;
  };
  const freedom = (label: Label) => (choices.get(label) ?? []).filter(({ cost }) => cost < OVER_TAKEN).length;
  const order = labels
    .map((label) => ({ label, free: freedom(label) }))
    .toSorted((a, b) => a.free - b.free)
    .map(({ label }) => label);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let moved = false;
    for (const label of order) {
      const found = cheapest(label);
      if (found === undefined || found === placed.get(label)) continue;
      placed.set(label, found);
      moved = true;
    }
    if (!moved) break;
  }
  return apart(order, placed, rivals);
}

/** What could not be kept apart is left out, the last first. */
function apart(
  order: readonly Label[],
  placed: ReadonlyMap<Label, Candidate>,
  rivals: ReadonlyMap<Label, readonly Label[]>,
): ReadonlyMap<string, Candidate> {
  const kept = new Map<Label, Candidate>();
  for (const label of order) {
    const at = placed.get(label);
    if (at === undefined) continue;
    const isFree = (rivals.get(label) ?? []).every((other) => {
      const there = kept.get(other);
      return there === undefined || !overlaps(label, at, other, there);
    });
    if (isFree) kept.set(label, at);
  }
  return new Map([...kept].map(([{ id }, at]) => [id, at]));
}

const FURTHEST_px = AWAY_px[AWAY_px.length - 1] ?? 0;

const wider_px = ({ width }: Label): number => Math.max(0, (width - NARROW_px) / 2);

/** Whether two labels could come to lie on each other at all. */
const meet = (a: Label, b: Label): boolean =>
  a !== b &&
  Math.abs(a.x - b.x) < 2 * FURTHEST_px + wider_px(a) + wider_px(b) + (a.width + b.width) / 2 &&
  Math.abs(a.y - b.y) < 2 * FURTHEST_px + (a.height + b.height) / 2;

function candidates(label: Label, taken: readonly Taken[], marks: readonly Square[]): readonly Candidate[] {
  const found: Candidate[] = [];
  const wide_px = wider_px(label);
  const close = (each: Place, far_px: number) =>
    Math.abs(each.x - label.x) < FURTHEST_px + wide_px + label.width / 2 + far_px &&
    Math.abs(each.y - label.y) < FURTHEST_px + label.height / 2 + far_px;
  const near = taken.filter((each) => close(each, each.radius));
  const squares = marks.filter((each) => close(each, each.half_px));
  for (const [ring, away_px] of AWAY_px.entries()) {
    for (let step = 0; step < DIRECTIONS; step += 1) {
      const turn_rad = (step * 2 * Math.PI) / DIRECTIONS;
      const angle_rad = label.liked_rad + turn_rad;
      const at = {
        x: label.x + Math.cos(angle_rad) * (away_px + wide_px),
        y: label.y + Math.sin(angle_rad) * away_px,
      };
      if (squares.some((mark) => touches(label, at, mark))) continue;
      const covered = near.filter((each) => covers(label, at, each)).length;
      const turned_rad = Math.min(turn_rad, 2 * Math.PI - turn_rad);
      found.push({ ...at, cost: covered * OVER_TAKEN + turned_rad * 4 + ring * 6 });
    }
  }
  return found.sort((a, b) => a.cost - b.cost);
}

const overlaps = (a: Label, atA: Place, b: Label, atB: Place): boolean =>
  Math.abs(atA.x - atB.x) < (a.width + b.width) / 2 && Math.abs(atA.y - atB.y) < (a.height + b.height) / 2;

const touches = ({ width, height }: Label, at: Place, { x, y, half_px }: Square): boolean =>
  Math.abs(at.x - x) < width / 2 + half_px && Math.abs(at.y - y) < height / 2 + half_px;

const covers = ({ width, height }: Label, at: Place, { x, y, radius }: Taken): boolean =>
  Math.hypot(Math.max(0, Math.abs(at.x - x) - width / 2), Math.max(0, Math.abs(at.y - y) - height / 2)) <
  radius;
