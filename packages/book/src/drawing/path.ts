/** A place on the drawing, pixels: x to the right, y down. */
export type Px = readonly [x_px: number, y_px: number];

const two = (value: number): number => Math.round(value * 100) / 100;
const pair = (p: Px): string => `${two(p[0])},${two(p[1])}`;

/** Control arms of a quarter circle by one cubic, as a share of the radius. */
const QUARTER_CIRCLE_1 = 0.5523;
/** Catmull-Rom through the points, written as cubics: each arm is a sixth of the chord between the neighbours. */
const CATMULL_ROM_ARM_1 = 1 / 6;

export interface Cubic {
  readonly from: Px;
  readonly arm1: Px;
  readonly arm2: Px;
  readonly to: Px;
}

/** The cubics of a smooth open curve through the points; none for fewer than two points. */
export function smoothCubics(points: readonly Px[], arm_1: number = CATMULL_ROM_ARM_1): readonly Cubic[] {
  return points.slice(1).map((to, i): Cubic => {
    const from = points[i] ?? to;
    const before = points[i - 1] ?? from;
    const after = points[i + 2] ?? to;
    return {
      from,
      arm1: [from[0] + (to[0] - before[0]) * arm_1, from[1] + (to[1] - before[1]) * arm_1],
      arm2: [to[0] - (after[0] - from[0]) * arm_1, to[1] - (after[1] - from[1]) * arm_1],
      to,
    };
  });
}

export const cubicTo = (c: Pick<Cubic, "arm1" | "arm2" | "to">): string =>
  `C${pair(c.arm1)} ${pair(c.arm2)} ${pair(c.to)}`;
export const moveTo = (p: Px): string => `M${pair(p)}`;
export const lineTo = (p: Px): string => `L${pair(p)}`;
const quadTo = (arm: Px, to: Px): string => `Q${pair(arm)} ${pair(to)}`;

/** A smooth open curve through the points, as path data; `join` draws a line to its start instead of moving there. */
export function smoothPath(points: readonly Px[], join: "move" | "join" = "move"): string {
  const [first] = points;
  if (first === undefined) return "";
  return (join === "move" ? moveTo(first) : lineTo(first)) + smoothCubics(points).map(cubicTo).join("");
}

/** Straight lines through the points. */
export const polyline = (points: readonly Px[]): string =>
  points.map((p, i) => (i === 0 ? moveTo(p) : lineTo(p))).join("");

export const polygon = (points: readonly Px[]): string => (points.length === 0 ? "" : `${polyline(points)}Z`);

/** A closed polygon whose corners are rounded off, each by at most `radius_px` and at most 45 % of its sides. */
export function easedPolygon(points: readonly Px[], radius_px: number): string {
  const near = (corner: Px, other: Px): Px => {
    const side_px = Math.hypot(other[0] - corner[0], other[1] - corner[1]);
    const share_1 = side_px > 0 ? Math.min(radius_px / side_px, 0.45) : 0;
    return [corner[0] + (other[0] - corner[0]) * share_1, corner[1] + (other[1] - corner[1]) * share_1];
  };
  const corners = points.map((corner, i) => {
    const before = points.at(i - 1) ?? corner;
    const after = points[i + 1] ?? points[0] ?? corner;
    const start = near(corner, before);
    return (i === 0 ? moveTo(start) : lineTo(start)) + quadTo(corner, near(corner, after));
  });
  return corners.length === 0 ? "" : `${corners.join("")}Z`;
}

/** A full circle as four cubics. */
export function circle(centre: Px, radius_px: number): string {
  const [x, y] = centre;
  const k = radius_px * QUARTER_CIRCLE_1;
  const r = radius_px;
  return (
    moveTo([x + r, y]) +
    cubicTo({ arm1: [x + r, y + k], arm2: [x + k, y + r], to: [x, y + r] }) +
    cubicTo({ arm1: [x - k, y + r], arm2: [x - r, y + k], to: [x - r, y] }) +
    cubicTo({ arm1: [x - r, y - k], arm2: [x - k, y - r], to: [x, y - r] }) +
    cubicTo({ arm1: [x + k, y - r], arm2: [x + r, y - k], to: [x + r, y] }) +
    "Z"
  );
}

/** An upright rectangle between two opposite corners, its own corners rounded by at most `radius_px`. */
export function roundedBox(a: Px, b: Px, radius_px: number): string {
  const [left, right] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
  const [top, bottom] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
  return easedPolygon(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    radius_px,
  );
}
