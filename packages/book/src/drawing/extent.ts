import type { Geometry } from "../schema/geometry.ts";
import { HALVES, type LiftingSurface } from "./lifting-surface.ts";
import { SPINNER_REACH_m } from "./propeller.ts";

/** [x, y], metres. */
export type PlanPlace = readonly [x_m: number, y_m: number];

/** One part of the aircraft as a polygon seen from above. */
export interface PlanPart {
  readonly name: "fuselage" | "wing" | "tailplane" | "fin" | "nacelle" | "propeller" | "wheel";
  readonly corners: readonly PlanPlace[];
}

const box = (fore_m: number, aft_m: number, left_m: number, right_m: number): readonly PlanPlace[] => [
  [fore_m, left_m],
  [fore_m, right_m],
  [aft_m, right_m],
  [aft_m, left_m],
];

function bodyCorners(stations: Geometry["fuselage"], centre_m: number): readonly PlanPlace[] {
  const right = stations.map(([x, halfWidth]): PlanPlace => [x, centre_m + halfWidth]);
  const left = stations.map(([x, halfWidth]): PlanPlace => [x, centre_m - halfWidth]);
  return [...right, ...left.toReversed()];
}

/** A half reaches to the centre line: what lies inside the fuselage belongs to it too. */
function halfCorners(
  { root, kinks = [], tip, tipRound }: LiftingSurface,
  half: 1 | -1,
): readonly PlanPlace[] {
  const past_m = tip.y + tipRound;
  return [
    [root.leadingEdge, 0],
    [root.leadingEdge, root.y * half],
    ...kinks.map(({ leadingEdge, y }): PlanPlace => [leadingEdge, y * half]),
    [tip.leadingEdge, tip.y * half],
    [tip.leadingEdge, past_m * half],
    [tip.leadingEdge + tip.chord, past_m * half],
    [tip.leadingEdge + tip.chord, tip.y * half],
    ...kinks.toReversed().map(({ leadingEdge, chord, y }): PlanPlace => [leadingEdge + chord, y * half]),
    [root.leadingEdge + root.chord, root.y * half],
    [root.leadingEdge + root.chord, 0],
  ];
}

/** Every part of the aircraft seen from above, straight between the places that the book gives. */
export function outlineOf(geometry: Geometry): readonly PlanPart[] {
  const { fuselage, wing, tailplane, fin, nacelles, propellers, wheels } = geometry;
  return [
    { name: "fuselage", corners: bodyCorners(fuselage, 0) },
    ...HALVES.map((half): PlanPart => ({ name: "wing", corners: halfCorners(wing, half) })),
    ...HALVES.map((half): PlanPart => ({ name: "tailplane", corners: halfCorners(tailplane, half) })),
    ...(fin === undefined
      ? []
      : [{ name: "fin" as const, corners: box(fin.span[0], fin.span[1], -0.055, 0.055) }]),
    ...nacelles.map(({ stations, y }): PlanPart => ({ name: "nacelle", corners: bodyCorners(stations, y) })),
    ...propellers.map(
      ({ x, y, radius, spinner }): PlanPart => ({
        name: "propeller",
        corners: box(x - (spinner ? SPINNER_REACH_m : 0.1), x + 0.1, y - radius, y + radius),
      }),
    ),
    ...wheels.map(
      ({ x, y, width, diameter }): PlanPart => ({
        name: "wheel",
        corners: box(x - diameter / 2, x + diameter / 2, y - width / 2, y + width / 2),
      }),
    ),
  ];
}

function isInside(corners: readonly PlanPlace[], [x, y]: PlanPlace): boolean {
  let inside = false;
  let previous = corners.at(-1);
  for (const corner of corners) {
    if (previous !== undefined && corner[1] > y !== previous[1] > y) {
      const crossing = corner[0] + ((y - corner[1]) / (previous[1] - corner[1])) * (previous[0] - corner[0]);
      if (x < crossing) inside = !inside;
    }
    previous = corner;
  }
  return inside;
}

function distanceToEdge_m(a: PlanPlace, b: PlanPlace, [x, y]: PlanPlace): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const squared = dx * dx + dy * dy;
  const share_1 = squared > 0 ? Math.min(Math.max(((x - a[0]) * dx + (y - a[1]) * dy) / squared, 0), 1) : 0;
  return Math.hypot(x - a[0] - share_1 * dx, y - a[1] - share_1 * dy);
}

/** How far a place lies outside a part, metres in plan; 0 inside it. */
export function distanceOutside_m(part: PlanPart, place: PlanPlace): number {
  if (isInside(part.corners, place)) return 0;
  return Math.min(
    ...part.corners.map((corner, i) => distanceToEdge_m(part.corners.at(i - 1) ?? corner, corner, place)),
  );
}

/** The box that holds the whole aircraft, metres in the book's axes; the ground is its floor. */
export interface Extent {
  readonly fore_m: number;
  readonly aft_m: number;
  readonly left_m: number;
  readonly right_m: number;
  readonly top_m: number;
}

export function extent(geometry: Geometry): Extent {
  const places = outlineOf(geometry).flatMap(({ corners }) => corners);
  const { fuselage, wing, tailplane, fin, nacelles, propellers } = geometry;
  const along = [...places.map(([x]) => x), ...(fin?.outline ?? []).map(([x]) => x)];
  const across = places.map(([, y]) => y);
  return {
    fore_m: Math.min(...along),
    aft_m: Math.max(...along),
    left_m: Math.min(...across),
    right_m: Math.max(...across),
    top_m: Math.max(
      ...[fuselage, ...nacelles.map(({ stations }) => stations)].flat().map(([, , top]) => top),
      ...[wing.root, ...(wing.kinks ?? []), wing.tip, tailplane.root, tailplane.tip].map(({ z }) => z),
      ...(fin?.outline ?? []).map(([, z]) => z),
      ...propellers.map(({ z, radius }) => z + radius),
    ),
  };
}
