import type { Geometry } from "../schema/geometry.ts";
import { planBody, sectionAt } from "./fuselage-body.ts";
import { HALVES, type Half, planChordwise, planHalf, planPatch, planSpanwise } from "./lifting-surface.ts";
import { polygon, polyline, smoothPath } from "./path.ts";
import type { Projection } from "./projection.ts";
import { bladesEdgeOn, spinner } from "./propeller.ts";
import { type Detail, line, type Stroke, shape } from "./stroke.ts";

/** The aircraft seen from above. */
export function planView(geometry: Geometry, project: Projection, detail: Detail): readonly Stroke[] {
  const { wing, tailplane } = geometry;
  return [
    ...HALVES.flatMap((half) => [
      shape(planHalf(tailplane, half, project)),
      ...(detail > 0 ? tailplaneLines(tailplane, half, project, detail) : []),
      shape(planHalf(wing, half, project)),
      ...(detail > 0 ? wingLines(wing, half, project, detail) : []),
    ]),
    // The bodies lie over the wing: they hide the roots and what is drawn there.
    ...bodies(geometry, project),
    ...(detail > 0 ? fuselageLines(geometry, project, detail) : []),
    ...(detail > 0 ? wheelsUnderneath(geometry, project) : []),
  ];
}

function bodies(geometry: Geometry, project: Projection): Stroke[] {
  const { fuselage, fin, nacelles, propellers } = geometry;
  const [finStart, finEnd] = fin.span;
  const widest = finStart + (finEnd - finStart) * 0.35;
  const finEdge = (half: Half) => [
    project(finStart, 0),
    project(widest, 0.055 * half),
    project(finEnd, 0.02 * half),
  ];
  return [
    ...nacelles.map((nacelle) => shape(planBody(nacelle.stations, nacelle.y, project))),
    shape(planBody(fuselage, 0, project)),
    shape(`${smoothPath(finEdge(1))}${smoothPath(finEdge(-1).toReversed(), "join")}Z`, "inside"),
    ...propellers.flatMap((propeller) => [
      shape(bladesEdgeOn(propeller, propeller.y, project), "inside"),
      ...(propeller.spinner ? [shape(spinner(propeller, propeller.y, project), "inside")] : []),
    ]),
  ];
}

function wingLines(wing: Geometry["wing"], half: Half, project: Projection, detail: Detail): Stroke[] {
  const lines: Stroke[] = [];
  const { flap, aileron, boot, tank } = wing;
  if (flap !== undefined) {
    lines.push(line(planSpanwise(wing, half, [flap.from, flap.to], flap.hinge, project)));
    lines.push(line(planChordwise(wing, half, flap.to, [flap.hinge, 1], project)));
  }
  if (aileron !== undefined) {
    const patch = { from_m: aileron.from, to_m: aileron.to, fore_1: aileron.hinge, aft_1: 1 };
    lines.push(line(planPatch(wing, half, patch, project)));
  }
  if (boot !== undefined) {
    lines.push(line(planSpanwise(wing, half, boot.span, 0.075, project)));
    if (detail === 2) {
      for (const joint of boot.joints)
        lines.push(line(planChordwise(wing, half, joint, [0, 0.075], project)));
    }
  }
  if (detail === 2 && tank !== undefined) {
    const patch = { from_m: tank[0], to_m: tank[1], fore_1: 0.17, aft_1: 0.62 };
    lines.push(line(planPatch(wing, half, patch, project), "inside", { dashed: true, soft: true }));
  }
  return lines;
}

function tailplaneLines(
  tailplane: Geometry["tailplane"],
  half: Half,
  project: Projection,
  detail: Detail,
): Stroke[] {
  const { root, tip, elevator, boot, trimTab } = tailplane;
  const span_m = tip.y - root.y;
  const lines = [line(planSpanwise(tailplane, half, [root.y, tip.y], elevator, project))];
  if (boot === true) {
    lines.push(
      line(planSpanwise(tailplane, half, [root.y + span_m * 0.07, tip.y - span_m * 0.05], 0.11, project)),
    );
  }
  const hasTab = trimTab === "both" || trimTab === (half === 1 ? "right" : "left");
  if (detail === 2 && hasTab) {
    const patch = {
      from_m: root.y + span_m * 0.12,
      to_m: root.y + span_m * 0.5,
      fore_1: elevator + (1 - elevator) * 0.65,
      aft_1: 1,
    };
    lines.push(line(planPatch(tailplane, half, patch, project)));
  }
  return lines;
}

function fuselageLines(geometry: Geometry, project: Projection, detail: Detail): Stroke[] {
  const { fuselage, frames, windscreen, windows, door, hatch, exhaust } = geometry;
  const halfWidth_m = (x_m: number): number => sectionAt(fuselage, x_m)[1];
  const lines = frames.map((x) => line(polyline([project(x, -halfWidth_m(x)), project(x, halfWidth_m(x))])));
  for (const half of HALVES) {
    if (windscreen !== undefined) lines.push(line(windscreenPane(windscreen, half, project)));
    for (const span of windows) {
      const along = span.map((x) => project(x, Math.max(halfWidth_m(x) - 0.13, 0) * half));
      lines.push(line(polyline(along), "window", { soft: true }));
    }
    if (exhaust !== undefined) {
      const out = halfWidth_m(exhaust);
      lines.push(
        shape(polygon(EXHAUST_STUB.map(([aft, y]) => project(exhaust + aft, (out + y) * half))), "inside"),
      );
    }
  }
  if (detail < 2) return lines;
  if (door !== undefined) {
    const way = door.side === "right" ? 1 : -1;
    const [fore, aft] = door.x;
    const sill = (x_m: number, in_m: number) => project(x_m, Math.max(halfWidth_m(x_m) - in_m, 0) * way);
    lines.push(line(polyline([sill(fore, 0), sill(fore, 0.24), sill(aft, 0.24), sill(aft, 0)])));
  }
  if (hatch !== undefined) {
    const [fore, aft] = hatch.x;
    const w = hatch.halfWidth;
    lines.push(
      line(polygon([project(fore, -w), project(aft, -w), project(aft, w), project(fore, w)]), "inside", {
        soft: true,
      }),
    );
  }
  return lines;
}

/** [metres aft of the stub, metres outside the cowling]. */
const EXHAUST_STUB: readonly (readonly [number, number])[] = [
  [0, -0.02],
  [0.1, 0.15],
  [0.34, 0.19],
  [0.34, 0.06],
  [0.26, -0.02],
];

function windscreenPane(
  windscreen: NonNullable<Geometry["windscreen"]>,
  half: Half,
  project: Projection,
): string {
  const [fore, aft] = windscreen.x;
  const depth = aft - fore;
  const w = windscreen.halfWidth;
  const lower = [
    project(fore + depth * 0.06, w * 0.08 * half),
    project(fore + depth * 0.16, w * 0.62 * half),
    project(fore + depth * 0.47, w * half),
  ];
  const upper = [project(aft, w * 0.92 * half), project(aft - depth * 0.09, w * 0.08 * half)];
  return `${smoothPath(lower)}${polyline(upper).replace("M", "L")}Z`;
}

/** The wheels lie under the wing or the nose: hidden lines, drawn last. */
function wheelsUnderneath(geometry: Geometry, project: Projection): Stroke[] {
  return geometry.wheels.map(({ x, y, width, diameter }) => {
    const [fore, aft, inner, outer] = [x - diameter / 2, x + diameter / 2, y - width / 2, y + width / 2];
    const tyre = polygon([
      project(fore, inner),
      project(fore, outer),
      project(aft, outer),
      project(aft, inner),
    ]);
    return line(tyre, "inside", { dashed: true });
  });
}
