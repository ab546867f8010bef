import type { Geometry } from "@witnessmark/book";

/** [x aft, y right, z up], metres. */
export type Space = readonly [x_m: number, y_m: number, z_m: number];

const HALF_THICK_1 = 0.06;
/** Steps in which a line is followed. A wing's edge is thicker than that. */
const STEP_m = 0.04;
/** What is looked at lies on the metal: so near to it, the metal does not hide it. */
const AT_THE_POINT_m = 0.3;

/** A box round a body, so that most places need no closer look. */
interface Box {
  readonly fore_m: number;
  readonly aft_m: number;
  readonly halfWidth_m: number;
  readonly top_m: number;
  readonly bottom_m: number;
}

const boxes = new WeakMap<Geometry["fuselage"], Box>();

function boxOf(stations: Geometry["fuselage"]): Box {
  const known = boxes.get(stations);
  if (known !== undefined) return known;
  const all = (at: 0 | 1 | 2 | 3): readonly number[] => stations.map((station) => station[at]);
  const box = {
    fore_m: Math.min(...all(0)),
    aft_m: Math.max(...all(0)),
    halfWidth_m: Math.max(...all(1)),
    top_m: Math.max(...all(2)),
    bottom_m: Math.min(...all(3)),
  };
  boxes.set(stations, box);
  return box;
}

function isInBody(stations: Geometry["fuselage"], centre_m: number, [x, y, z]: Space): boolean {
  const { fore_m, aft_m, halfWidth_m: most_m, top_m: highest_m, bottom_m: lowest_m } = boxOf(stations);
  if (x < fore_m || x > aft_m || z > highest_m || z < lowest_m || Math.abs(y - centre_m) > most_m)
    return false;
  const behind = stations.findIndex((station) => station[0] >= x);
  const [fore, aft] = [stations[behind - 1], stations[behind]];
  if (fore === undefined || aft === undefined) return false;
  const share_1 = aft[0] > fore[0] ? (x - fore[0]) / (aft[0] - fore[0]) : 0;
  const [halfWidth_m, top_m, bottom_m] = [
    fore[1] + (aft[1] - fore[1]) * share_1,
    fore[2] + (aft[2] - fore[2]) * share_1,
    fore[3] + (aft[3] - fore[3]) * share_1,
  ];
  const [across, up] = [(y - centre_m) / halfWidth_m, (2 * z - top_m - bottom_m) / (top_m - bottom_m)];
  return across ** 2 + up ** 2 < 1; // a round section; a flat one of no width or height holds nothing
}

function isInHalf({ root, tip }: Geometry["wing"] | Geometry["tailplane"], [x, y, z]: Space): boolean {
  const share_1 = (Math.abs(y) - root.y) / (tip.y - root.y);
  if (!(share_1 >= 0 && share_1 <= 1)) return false;
  const mix = (a: number, b: number): number => a + (b - a) * share_1;
  const [fore_m, chord_m] = [mix(root.leadingEdge, tip.leadingEdge), mix(root.chord, tip.chord)];
  return x > fore_m && x < fore_m + chord_m && Math.abs(z - mix(root.z, tip.z)) < HALF_THICK_1 * chord_m;
}

const isInMetal = ({ fuselage, nacelles, wing, tailplane }: Geometry, place: Space): boolean =>
  isInBody(fuselage, 0, place) ||
  nacelles.some(({ y, stations }) => isInBody(stations, y, place)) ||
  isInHalf(wing, place) ||
  isInHalf(tailplane, place);

/** Whether nothing of the aircraft stands between an eye and a point on it. */
export function canSee(geometry: Geometry, eye: Space, point: Space): boolean {
  const [dx, dy, dz] = [point[0] - eye[0], point[1] - eye[1], point[2] - eye[2]];
  const away_m = Math.hypot(dx, dy, dz);
  for (let gone_m = 0; gone_m < away_m - AT_THE_POINT_m; gone_m += STEP_m) {
    const share_1 = gone_m / away_m;
    if (isInMetal(geometry, [eye[0] + dx * share_1, eye[1] + dy * share_1, eye[2] + dz * share_1]))
      return false;
  }
  return true;
}
