import type { Geometry } from "../schema/geometry.ts";
import { type Station, sectionAt } from "./fuselage-body.ts";
import { isHighWing, legTopY_m, tailKind } from "./layout.ts";
import { endsOf, HALVES, type Half, type LiftingSurface } from "./lifting-surface.ts";
import { circle, easedPolygon, polygon, polyline } from "./path.ts";
import type { Projection } from "./projection.ts";
import { bladesAhead } from "./propeller.ts";
import { type Detail, line, type Stroke, shape } from "./stroke.ts";

const WING_THICKNESS_1 = 0.13;
const TAIL_THICKNESS_1 = 0.1;
const FIN_HALF_m = { foot: 0.07, top: 0.035 } as const;
/** Sections drawn on the fuselage, as shares of the way from the nose to where it is largest. */
const COWL_AT_1 = 0.3;

/**
 * The aircraft seen from ahead, standing on the ground line z = 0; its right wing is at the viewer's left. The farther
 * lies under the nearer.
 *
 * @param project takes y and z, metres
 */
export function frontView(geometry: Geometry, project: Projection, detail: Detail): readonly Stroke[] {
  const { fuselage, wing, tailplane, nacelles } = geometry;
  const kind = tailKind(geometry);
  const tail = HALVES.map((half) => shape(panel(tailplane, half, TAIL_THICKNESS_1, project)));
  const wings = HALVES.map((half) =>
    shape(panel(wing, half, WING_THICKNESS_1, project, isHighWing(geometry))),
  );
  const largest = largestOf(fuselage);
  const body = [
    shape(sectionPath(largest, 0, project)),
    ...(detail > 0 ? bodyLines(geometry, largest, project) : []),
  ];
  return [
    ...(kind === "t" ? [...fin(geometry, project), ...tail] : [...tail, ...fin(geometry, project)]),
    ...legs(geometry, project, ({ x }) => x > largest[0]),
    ...legs(geometry, project, ({ x, y }) => x <= largest[0] && y !== 0),
    ...(isHighWing(geometry) ? [...body, ...struts(geometry, project), ...wings] : [...wings, ...body]),
    ...nacelles.map(({ y, stations }) => shape(sectionPath(largestOf(stations), y, project))),
    ...legs(geometry, project, ({ x, y }) => x <= largest[0] && y === 0),
    ...propellers(geometry, project, detail),
  ];
}

const largestOf = (stations: readonly Station[]): Station =>
  stations.reduce((most, station) =>
    station[1] * (station[2] - station[3]) > most[1] * (most[2] - most[3]) ? station : most,
  );

/** A section as a box with round corners. */
function sectionPath([, halfWidth, top, bottom]: Station, centre_m: number, project: Projection): string {
  const [left, right] = [centre_m - halfWidth, centre_m + halfWidth];
  return easedPolygon(
    [project(left, top), project(right, top), project(right, bottom), project(left, bottom)],
    Math.min(halfWidth, (top - bottom) / 2) * 0.85 * project.pxPerMetre,
  );
}

/** One half from the front: its thickness along its span. */
function panel(
  surface: LiftingSurface,
  half: Half,
  thickness_1: number,
  project: Projection,
  joined = false,
): string {
  const ends = endsOf(surface);
  const [root] = ends;
  const { tip, tipRound } = surface;
  const edge = (way: 1 | -1) =>
    ends.map(({ y, z, chord }) => project(y * half, z + way * chord * thickness_1 * 0.5));
  const centre = (way: 1 | -1) => (joined ? [project(0, root.z + way * root.chord * thickness_1 * 0.5)] : []);
  const path = polyline([
    ...centre(1),
    ...edge(1),
    project((tip.y + tipRound) * half, tip.z),
    ...edge(-1).toReversed(),
    ...centre(-1),
  ]);
  return joined ? path : `${path}Z`;
}

function fin({ fin: it, fuselage }: Geometry, project: Projection): Stroke[] {
  if (it === undefined) return [];
  const top_m = Math.max(...it.outline.map(([, z]) => z));
  const foot_m = sectionAt(fuselage, it.span[1])[3];
  const { foot, top } = FIN_HALF_m;
  return [
    shape(
      polygon([project(-foot, foot_m), project(-top, top_m), project(top, top_m), project(foot, foot_m)]),
      "inside",
    ),
  ];
}

type Wheel = Geometry["wheels"][number];

function legs(geometry: Geometry, project: Projection, wanted: (wheel: Wheel) => boolean): Stroke[] {
  return geometry.wheels.filter(wanted).flatMap((wheel) => {
    const { y, width, diameter, top, cover } = wheel;
    const tyre = (half_m: number, from_m: number, to_m: number) =>
      easedPolygon(
        [
          project(y - half_m, to_m),
          project(y + half_m, to_m),
          project(y + half_m, from_m),
          project(y - half_m, from_m),
        ],
        half_m * 0.8 * project.pxPerMetre,
      );
    const top_y_m = legTopY_m(geometry, wheel);
    const out = Math.sign(y) * width * 0.75;
    const door = polygon([
      project(top_y_m + out, top),
      project(top_y_m + out * 1.5, top),
      project(y + out * 1.5, diameter),
      project(y + out, diameter),
    ]);
    return [
      line(polyline([project(top_y_m, top), project(y, diameter * 0.85)]), "leg"),
      shape(tyre(width / 2, 0, diameter)),
      ...(cover === "spat" ? [shape(tyre(width * 0.85, diameter * 0.14, diameter * 1.08))] : []),
      ...(cover === "door" && y !== 0 ? [shape(door, "inside")] : []),
    ];
  });
}

function struts({ wing: { struts: all = [] } }: Geometry, project: Projection): Stroke[] {
  return all.flatMap(({ foot, head }) =>
    HALVES.map((half) =>
      line(polyline([project(foot[1] * half, foot[2]), project(head[1] * half, head[2])]), "leg"),
    ),
  );
}

/** The cowling, and the windscreen over it. */
function bodyLines({ fuselage, windscreen }: Geometry, largest: Station, project: Projection): Stroke[] {
  const nose = fuselage[0]?.[0] ?? 0;
  const cowl = sectionAt(fuselage, nose + (largest[0] - nose) * COWL_AT_1);
  const lines: Stroke[] = [];
  if (windscreen !== undefined) {
    const [fore, aft] = windscreen.x;
    const [low, high] = [sectionAt(fuselage, fore)[2], sectionAt(fuselage, aft)[2]];
    const w = windscreen.halfWidth;
    if (high > low)
      for (const half of HALVES)
        lines.push(
          line(
            easedPolygon(
              [
                project(0.03 * half, low + (high - low) * 0.12),
                project(w * half, low + (high - low) * 0.05),
                project(w * 0.82 * half, high - (high - low) * 0.12),
                project(0.03 * half, high - (high - low) * 0.08),
              ],
              0.06 * project.pxPerMetre,
            ),
          ),
        );
  }
  return [...lines, shape(sectionPath(cowl, 0, project), "inside")];
}

/** The disc that the blades sweep, dashed; the blades; the spinner. */
function propellers({ propellers: all }: Geometry, project: Projection, detail: Detail): Stroke[] {
  const k = project.pxPerMetre;
  return all.flatMap((propeller) => {
    const hub = project(propeller.y, propeller.z);
    const spinner_m = Math.min(propeller.spinner ? 0.2 : 0.1, propeller.radius / 3);
    return [
      ...(detail > 0 ? [line(circle(hub, propeller.radius * k), "hair", { dashed: true })] : []),
      shape(bladesAhead(propeller, project), "inside"),
      shape(circle(hub, spinner_m * k), "inside"),
    ];
  });
}
