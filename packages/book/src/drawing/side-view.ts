import type { Geometry } from "../schema/geometry.ts";
import { sectionAt, sideBody } from "./fuselage-body.ts";
import { sideSection } from "./lifting-surface.ts";
import { circle, easedPolygon, polygon, polyline, roundedBox, smoothPath } from "./path.ts";
import type { Projection } from "./projection.ts";
import { bladesEdgeOn, spinner } from "./propeller.ts";
import { type Detail, line, type Stroke, shape } from "./stroke.ts";

const WING_THICKNESS_1 = 0.13;
const TIP_THICKNESS_1 = 0.1;
/** Less dihedral than this does not show: the root section alone is drawn. */
const VISIBLE_DIHEDRAL_m = 0.2;

/** The aircraft seen from its left side, nose to the left, standing on the ground line z = 0. */
export function sideView(geometry: Geometry, project: Projection, detail: Detail): readonly Stroke[] {
  const { fuselage, fin, nacelles } = geometry;
  return [
    ...legsAndWheels(geometry, project),
    ...finStrokes(fin, project, detail),
    ...propellerStrokes(geometry, (y_m) => y_m > 0, project),
    shape(sideBody(fuselage, project)),
    ...propellerStrokes(geometry, (y_m) => y_m === 0, project),
    ...strutStrokes(geometry.wing, project),
    ...wingStrokes(geometry.wing, project),
    ...nacelles.filter(({ y }) => y <= 0).map((nacelle) => shape(sideBody(nacelle.stations, project))),
    ...propellerStrokes(geometry, (y_m) => y_m < 0, project),
    ...tailStrokes(geometry, project),
    ...(detail > 0 ? sideDetails(geometry, project, detail) : []),
  ];
}

function finStrokes(fin: Geometry["fin"], project: Projection, detail: Detail): Stroke[] {
  if (fin === undefined) return [];
  const outline = fin.outline.map(([x, z]) => project(x, z));
  return [
    shape(easedPolygon(outline, 0.16 * project.pxPerMetre)),
    ...(detail > 0 ? [line(polyline(fin.hinge.map(([x, z]) => project(x, z))))] : []),
  ];
}

/** The section of a tailplane at its root; where it rises, the whole of its left half. */
function tailStrokes({ tailplane: { root, tip, elevator } }: Geometry, project: Projection): Stroke[] {
  const section = shape(sideSection(root, TIP_THICKNESS_1, project), "inside");
  if (tip.z - root.z <= VISIBLE_DIHEDRAL_m) return [section];
  const at = (end: typeof root, fraction_1: number) =>
    project(end.leadingEdge + end.chord * fraction_1, end.z);
  return [
    shape(easedPolygon([at(root, 0), at(tip, 0), at(tip, 1), at(root, 1)], 0.08 * project.pxPerMetre)),
    line(polyline([at(root, elevator), at(tip, elevator)])),
  ];
}

function legsAndWheels(geometry: Geometry, project: Projection): Stroke[] {
  const farthestFirst = geometry.wheels.toSorted((a, b) => b.y - a.y);
  return farthestFirst.flatMap((wheel) => {
    const hub = project(wheel.x, wheel.diameter / 2);
    const radius_px = (wheel.diameter / 2) * project.pxPerMetre;
    const d = wheel.diameter;
    const at = (aft_1: number, up_1: number) => project(wheel.x + aft_1 * d, up_1 * d);
    const spat = `${smoothPath([at(1.15, 0.5), at(0.3, 1.02), at(-0.35, 0.98), at(-0.72, 0.5), at(-0.5, 0.18), at(0.35, 0.16), at(1.15, 0.5)])}Z`;
    const top_m = wheel.x + (wheel.rake ?? 0);
    const door = [
      project(top_m - d * 0.3, wheel.top),
      project(top_m + d * 0.3, wheel.top),
      at(0.3, 0.8),
      at(-0.3, 0.8),
    ];
    return [
      line(polyline([project(top_m, wheel.top), hub]), "leg"),
      shape(circle(hub, radius_px)),
      line(circle(hub, radius_px * 0.45)),
      ...(wheel.cover === "spat" ? [shape(spat)] : []),
      ...(wheel.cover === "door" ? [shape(polygon(door), "inside")] : []),
    ];
  });
}

function propellerStrokes(
  geometry: Geometry,
  wanted: (y_m: number) => boolean,
  project: Projection,
): Stroke[] {
  return geometry.propellers
    .filter(({ y }) => wanted(y))
    .flatMap((propeller) => [
      shape(bladesEdgeOn(propeller, propeller.z, project), "inside"),
      ...(propeller.spinner ? [shape(spinner(propeller, propeller.z, project), "inside")] : []),
    ]);
}

function strutStrokes({ struts = [] }: Geometry["wing"], project: Projection): Stroke[] {
  return struts.map(({ foot, head }) =>
    line(polyline([project(foot[0], foot[2]), project(head[0], head[2])]), "leg"),
  );
}

function wingStrokes({ root, tip }: Geometry["wing"], project: Projection): Stroke[] {
  const rootSection = shape(sideSection(root, WING_THICKNESS_1, project));
  if (tip.z - root.z <= VISIBLE_DIHEDRAL_m) return [rootSection];
  const edge = (fraction_1: number) =>
    line(
      polyline([
        project(tip.leadingEdge + tip.chord * fraction_1, tip.z),
        project(root.leadingEdge + root.chord * fraction_1, root.z),
      ]),
    );
  return [rootSection, edge(0), edge(1), shape(sideSection(tip, TIP_THICKNESS_1, project), "inside")];
}

/** [metres aft of the stub, metres above its middle]. */
const EXHAUST_STUB: readonly (readonly [number, number])[] = [
  [0, 0.1],
  [0.1, 0.12],
  [0.38, -0.02],
  [0.34, -0.14],
  [0, -0.06],
];
const EXHAUST_ABOVE_BOTTOM_m = 0.28;

function sideDetails(geometry: Geometry, project: Projection, detail: Detail): Stroke[] {
  const { fuselage, sideWindows, windscreen, door, frames, exhaust } = geometry;
  const box = (x: readonly [number, number], z: readonly [number, number], radius_m: number): string =>
    roundedBox(project(x[0], z[0]), project(x[1], z[1]), radius_m * project.pxPerMetre);
  const lines = sideWindows.map((window) => line(box(window.x, window.z, 0.1)));
  if (windscreen?.side !== undefined) {
    lines.push(line(polygon(windscreen.side.map(([x, z]) => project(x, z)))));
  }
  // The side view is of the left side: a door on the right is behind the fuselage.
  if (door !== undefined && (door.side === "left" || detail === 2)) {
    lines.push(line(box(door.x, door.z, 0.08), "inside", { dashed: door.side === "right" }));
  }
  for (const x of frames) {
    const [, , top, bottom] = sectionAt(fuselage, x);
    lines.push(line(polyline([project(x, top), project(x, bottom)])));
  }
  if (exhaust !== undefined) {
    const middle_m = sectionAt(fuselage, exhaust)[3] + EXHAUST_ABOVE_BOTTOM_m;
    const stub = EXHAUST_STUB.map(([aft_m, up_m]) => project(exhaust + aft_m, middle_m + up_m));
    lines.push(shape(polygon(stub), "inside"));
  }
  return lines;
}
