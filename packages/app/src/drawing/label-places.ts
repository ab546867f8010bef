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

const AWAY_px = [20, 27, 34] as const;
const DIRECTIONS = 16;
/** Sweeps after the first placing; nothing in a walk has needed a third. */
const SWEEPS = 4;

/** What a place costs: another label under it weighs most, then what it covers, then how far it is from where it is liked. */
const OVER_LABEL = 1_000;
const OVER_TAKEN = 60;

interface Candidate extends Place {
  readonly cost: number;
}

/**
 * Places labels so that none lies on another, and few on what is drawn: each in turn takes its cheapest place, the
 * one with the least choice first, and then each looks again as long as something gets better. The same labels give
 * the same places.
 */
export function labelPlaces(labels: readonly Label[], taken: readonly Taken[]): ReadonlyMap<string, Place> {
  const choices = new Map(labels.map((label) => [label.id, candidates(label, taken)] as const));
  const placed = new Map<string, Candidate>();
  const cheapest = (label: Label): Candidate | undefined => {
    let best: { readonly candidate: Candidate; readonly cost: number } | undefined;
    for (const candidate of choices.get(label.id) ?? []) {
      let { cost } = candidate;
      for (const other of labels) {
        const at = placed.get(other.id);
        if (other.id !== label.id && at !== undefined && overlaps(label, candidate, other, at))
          cost += OVER_LABEL;
      }
      if (best === undefined || cost < best.cost) best = { candidate, cost };
    }
    return best?.candidate;
  };
  const freedom = (label: Label) =>
    (choices.get(label.id) ?? []).filter(({ cost }) => cost < OVER_TAKEN).length;
  const order = labels.toSorted((a, b) => freedom(a) - freedom(b));
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let moved = false;
    for (const label of order) {
      const found = cheapest(label);
      if (found === undefined || found === placed.get(label.id)) continue;
      placed.set(label.id, found);
      moved = true;
    }
    if (!moved) break;
  }
  return placed;
}

function candidates(label: Label, taken: readonly Taken[]): readonly Candidate[] {
  const found: Candidate[] = [];
  for (const [ring, away_px] of AWAY_px.entries()) {
    for (let step = 0; step < DIRECTIONS; step += 1) {
      const turn_rad = (step * 2 * Math.PI) / DIRECTIONS;
      const angle_rad = label.liked_rad + turn_rad;
      const at = { x: label.x + Math.cos(angle_rad) * away_px, y: label.y + Math.sin(angle_rad) * away_px };
      const covered = taken.filter((each) => covers(label, at, each)).length;
      const turned_rad = Math.min(turn_rad, 2 * Math.PI - turn_rad);
      found.push({ ...at, cost: covered * OVER_TAKEN + turned_rad * 4 + ring * 6 });
    }
  }
  return found;
}

const overlaps = (a: Label, atA: Place, b: Label, atB: Place): boolean =>
  Math.abs(atA.x - atB.x) < (a.width + b.width) / 2 && Math.abs(atA.y - atB.y) < (a.height + b.height) / 2;

const covers = ({ width, height }: Label, at: Place, { x, y, radius }: Taken): boolean =>
  Math.hypot(Math.max(0, Math.abs(at.x - x) - width / 2), Math.max(0, Math.abs(at.y - y) - height / 2)) <
  radius;
