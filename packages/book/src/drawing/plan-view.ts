import type { Geometry } from "../schema/geometry.ts";
import { planBody, sectionAt } from "./fuselage-body.ts";
import { isHighWing, tailKind } from "./layout.ts";
import {
  chordwise_m,
  HALVES,
  type Half,
  planChordwise,
  planHalf,
  planPatch,
  planSpanwise,
} from "./lifting-surface.ts";
import { polygon, polyline, smoothPath } from "./path.ts";
import type { Projection } from "./projection.ts";
import { bladesEdgeOn, spinner } from "./propeller.ts";
import { type Detail, line, type Stroke, shape } from "./stroke.ts";

/** The aircraft seen from above: the higher lies over the lower. */
export function planView(geometry: Geometry, project: Projection, detail: Detail): readonly Stroke[] {
  const { wing, tailplane } = geometry;
  const high = isHighWing(geometry);
  const onTop = tailKind(geometry) === "t";
  const tail = HALVES.flatMap((half) => [
    shape(planHalf(tailplane, half, project, onTop)),
    ...(detail > 0 ? tailplaneLines(tailplane, half, project, detail) : []),
  ]);
  const wings = [
    ...HALVES.map((half) => shape(planHalf(wing, half, project, high))),
    ...(detail > 0 ? HALVES.flatMap((half) => wingLines(wing, half, project, detail)) : []),
  ];
  const struts = (wing.struts ?? []).flatMap(({ foot, head }) =>
    HALVES.map((half) =>
      line(polyline([project(foot[0], foot[1] * half), project(head[0], head[1] * half)]), "inside", {
        dashed: true,
      }),
    ),
  );
  return [
    ...(onTop ? [] : tail),
    // Over a low wing the bodies hide the roots and what is drawn there; a high wing hides the cabin.
    ...(high ? [] : wings),
    ...nacellesAbove(geometry, project, !high),
    ...bodies(geometry, project),
    ...(detail > 0 ? fuselageLines(geometry, project, detail) : []),
    ...(high ? [...wings, ...nacellesAbove(geometry, project, true), ...underWing(geometry, project)] : []),
    ...(onTop ? tail : []),
    ...propellersAbove(geometry, project),
    ...(detail > 0 ? [...struts, ...wheelsUnderneath(geometry, project)] : []),
  ];
}

const nacellesAbove = ({ nacelles }: Geometry, project: Projection, wanted: boolean): Stroke[] =>
  wanted ? nacelles.map((nacelle) => shape(planBody(nacelle.stations, nacelle.y, project))) : [];

/** The sides of the fuselage under a high wing, hidden lines. */
function underWing({ fuselage, wing }: Geometry, project: Projection): Stroke[] {
  const [fore, aft] = [chordwise_m(wing, wing.root.y, 0), chordwise_m(wing, wing.root.y, 1)];
  const along = [fore, ...fuselage.map(([x]) => x).filter((x) => x > fore && x < aft), aft];
  return HALVES.map((half) =>
    line(polyline(along.map((x) => project(x, sectionAt(fuselage, x)[1] * half))), "inside", {
      dashed: true,
    }),
  );
}

function propellersAbove({ propellers }: Geometry, project: Projection): Stroke[] {
  return propellers.flatMap((propeller) => [
    shape(bladesEdgeOn(propeller, propeller.y, project), "inside"),
    ...(propeller.spinner ? [shape(spinner(propeller, propeller.y, project), "inside")] : []),
  ]);
}

function bodies({ fuselage, fin }: Geometry, project: Projection): Stroke[] {
  const body = shape(planBody(fuselage, 0, project));
  if (fin === undefined) return [body];
  const [finStart, finEnd] = fin.span;
  const widest = finStart + (finEnd - finStart) * 0.35;
  const finEdge = (half: Half) => [
    project(finStart, 0),
    project(widest, 0.055 * half),
    project(finEnd, 0.02 * half),
  ];
  return [body, shape(`${smoothPath(finEdge(1))}${smoothPath(finEdge(-1).toReversed(), "join")}Z`, "inside")];
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
  return geometry.wheels.map(({ x, y, width, diameter, cover }) => {
    const [long_m, wide_m] = cover === "spat" ? [diameter * 1.7, width * 1.7] : [diameter, width];
    const [fore, aft, inner, outer] = [x - long_m / 2, x + long_m / 2, y - wide_m / 2, y + wide_m / 2];
    const tyre = polygon([
      project(fore, inner),
      project(fore, outer),
      project(aft, outer),
      project(aft, inner),
    ]);
    return line(tyre, "inside", { dashed: true });
  });
}
