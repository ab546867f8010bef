import type { Geometry, Hazard } from "@witnessmark/book";
import { type Ground, octagon, withRoom } from "./convex.ts";

/** Where nobody walks: metal, what stands on the ground, and where one is not to be. */
export interface Obstacle {
  readonly name: string;
  /** `metal` is what one would walk into, `thing` what one would trip over, `keep-out` where one is not to be. */
  readonly kind: "metal" | "thing" | "keep-out";
  /** Convex, with the room for a body round it where it is metal or a thing. */
  readonly corners: readonly Ground[];
  /** The propeller whose arc this is, by its place in the book. */
  readonly propeller?: number;
}

/** Half the width of a person, with arms. From memory. */
const BODY_m = 0.25;
/** One ducks under what is at least this high, and walks upright under nothing lower than one's head. From memory. */
export const DUCK_m = 1.5;
/** Before and behind the plane in which the blades turn; as the book asks of its stances. */
export const CLEAR_OF_BLADES_m = 0.5;
/** Beside the tips of the blades. From memory. */
export const CLEAR_OF_TIPS_m = 0.15;
/** How far a wing's or tailplane's underside is below its middle, as a share of the chord. From memory. */
const HALF_THICK_1 = 0.06;

const metal = (name: string, corners: readonly Ground[]): Obstacle => ({
  name,
  kind: "metal",
  corners: withRoom(corners, BODY_m),
});

const bodyCorners = (stations: Geometry["fuselage"], centre_m: number): readonly Ground[] =>
  stations.flatMap(([x, halfWidth]): Ground[] => [
    [x, centre_m - halfWidth],
    [x, centre_m + halfWidth],
  ]);

/**
 * The part of a wing or tailplane half that is too low to duck under, on one side; nothing when one can walk under all
 * of it. It rises or falls evenly from root to tip.
 */
function lowHalf(
  { root, tip, tipRound }: Geometry["wing"] | Geometry["tailplane"],
  side: 1 | -1,
): readonly Ground[] {
  const under_m = (end: typeof root): number => end.z - HALF_THICK_1 * end.chord;
  const at = (share_1: number): readonly Ground[] => {
    const mix = (a: number, b: number): number => a + (b - a) * share_1;
    const y_m = (mix(root.y, tip.y) + (share_1 === 1 ? tipRound : 0)) * side;
    const fore_m = mix(root.leadingEdge, tip.leadingEdge);
    return [
      [fore_m, y_m],
      [fore_m + mix(root.chord, tip.chord), y_m],
    ];
  };
  const [inner_m, outer_m] = [under_m(root), under_m(tip)];
  if (inner_m >= DUCK_m && outer_m >= DUCK_m) return [];
  const crossing_1 = outer_m === inner_m ? 1 : (DUCK_m - inner_m) / (outer_m - inner_m);
  if (inner_m < DUCK_m && outer_m < DUCK_m) return [...at(0), ...at(1)];
  return inner_m < DUCK_m ? [...at(0), ...at(crossing_1)] : [...at(crossing_1), ...at(1)];
}

const KEEPS_OUT: ReadonlySet<Hazard["kind"]> = new Set(["inlet", "exhaust", "antenna"]);

/**
 * Everything on the ground plan that one walks round: fuselage and nacelles always, wing and tailplane where they are
 * too low to duck under, wheels, the arc of each propeller, and what the caller names besides.
 */
export function obstaclesOf(geometry: Geometry, hazards: readonly Hazard[] = []): readonly Obstacle[] {
  const { fuselage, wing, tailplane, nacelles, propellers, wheels } = geometry;
  const halves = ([1, -1] as const).flatMap((side) => [
    { name: `${side > 0 ? "right" : "left"} wing`, corners: lowHalf(wing, side) },
    { name: `${side > 0 ? "right" : "left"} tailplane`, corners: lowHalf(tailplane, side) },
  ]);
  return [
    metal("fuselage", bodyCorners(fuselage, 0)),
    ...halves.filter(({ corners }) => corners.length > 0).map(({ name, corners }) => metal(name, corners)),
    ...nacelles.map(({ y, stations }) => metal("nacelle", bodyCorners(stations, y))),
    ...wheels.map(({ x, y, width, diameter }) =>
      metal("wheel", [
        [x - diameter / 2, y - width / 2],
        [x + diameter / 2, y - width / 2],
        [x + diameter / 2, y + width / 2],
        [x - diameter / 2, y + width / 2],
      ]),
    ),
    ...propellers.map(({ x, y, radius }, propeller): Obstacle => {
      const half_m = radius + CLEAR_OF_TIPS_m;
      return {
        name: "propeller arc",
        kind: "keep-out",
        propeller,
        corners: withRoom(
          [
            [x - CLEAR_OF_BLADES_m, y - half_m],
            [x + CLEAR_OF_BLADES_m, y - half_m],
            [x + CLEAR_OF_BLADES_m, y + half_m],
            [x - CLEAR_OF_BLADES_m, y + half_m],
          ],
          0,
        ),
      };
    }),
    ...hazards.map(({ name, kind, place, radius }): Obstacle => {
      const keepsOut = KEEPS_OUT.has(kind);
      return {
        name,
        kind: keepsOut ? "keep-out" : "thing",
        corners: withRoom(octagon(place, radius), keepsOut ? 0 : BODY_m),
      };
    }),
  ];
}
