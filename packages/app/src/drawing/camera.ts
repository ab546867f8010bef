/**
 * Where the datum falls on the drawing, how large a metre is, and how the picture is turned. A place of a drawing's
 * plane is [across, down] in metres: in plan y and x, from the side x and −z, from the front −y and −z.
 */
export interface Camera {
  readonly pxPerMetre: number;
  readonly originX_px: number;
  readonly originY_px: number;
  /** How far the picture is turned, degrees clockwise; 0 unless said. */
  readonly turn_deg?: number;
}

export interface Room {
  readonly width_px: number;
  readonly height_px: number;
}

export type Px = readonly [x_px: number, y_px: number];
export type OnPlane = readonly [across_m: number, down_m: number];

/** What a picture holds, metres: across from `left` to `right`, down from `fore` to `aft`. */
export interface Box {
  readonly fore: number;
  readonly aft: number;
  readonly left: number;
  readonly right: number;
}

/** @param places [down, across], as places on the ground are written: x aft, y right */
export const boxOf = (places: readonly (readonly [number, number])[]): Box => ({
  fore: Math.min(...places.map(([x]) => x)),
  aft: Math.max(...places.map(([x]) => x)),
  left: Math.min(...places.map(([, y]) => y)),
  right: Math.max(...places.map(([, y]) => y)),
});

export interface ScaleBounds {
  readonly least_pxPerMetre: number;
  readonly most_pxPerMetre: number;
}

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const turnOf = ({ turn_deg }: Camera): number => turn_deg ?? 0;

/** Degrees from −180, left out, to 180. */
export const wrapped_deg = (degrees: number): number => {
  const turned = (((degrees % 360) + 540) % 360) - 180;
  return turned === -180 ? 180 : turned;
};

/** Where a place falls, measured from where the datum falls. */
export function fromDatum(camera: Camera, [across_m, down_m]: OnPlane): Px {
  const [sin, cos] = [Math.sin(rad(turnOf(camera))), Math.cos(rad(turnOf(camera)))];
  const k = camera.pxPerMetre;
  return [(across_m * cos - down_m * sin) * k, (across_m * sin + down_m * cos) * k];
}

export function toScreen(camera: Camera, place: OnPlane): Px {
  const [x, y] = fromDatum(camera, place);
  return [camera.originX_px + x, camera.originY_px + y];
}

export function toPlane(camera: Camera, [x_px, y_px]: Px): OnPlane {
  const [sin, cos] = [Math.sin(rad(turnOf(camera))), Math.cos(rad(turnOf(camera)))];
  const [x, y] = [
    (x_px - camera.originX_px) / camera.pxPerMetre,
    (y_px - camera.originY_px) / camera.pxPerMetre,
  ];
  return [x * cos + y * sin, y * cos - x * sin];
}

export const panned = (camera: Camera, dx_px: number, dy_px: number): Camera => ({
  ...camera,
  originX_px: camera.originX_px + dx_px,
  originY_px: camera.originY_px + dy_px,
});

/** The camera of this scale and turn that has a place of the plane under a pixel. */
export function holding(place: OnPlane, at: Px, pxPerMetre: number, turn_deg: number): Camera {
  const turned = { pxPerMetre, originX_px: 0, originY_px: 0, turn_deg: wrapped_deg(turn_deg) };
  const [x, y] = fromDatum(turned, place);
  return { ...turned, originX_px: at[0] - x, originY_px: at[1] - y };
}

const bounded = (pxPerMetre: number, { least_pxPerMetre, most_pxPerMetre }: ScaleBounds): number =>
  Math.min(Math.max(pxPerMetre, least_pxPerMetre), most_pxPerMetre);

/** Larger by a factor, as far as the bounds allow; what lies under the pixel stays there. */
export const zoomedAbout = (camera: Camera, factor_1: number, at: Px, bounds: ScaleBounds): Camera =>
  holding(toPlane(camera, at), at, bounded(camera.pxPerMetre * factor_1, bounds), turnOf(camera));

/** Turned clockwise about a pixel. */
export const turnedAbout = (camera: Camera, by_deg: number, at: Px): Camera =>
  holding(toPlane(camera, at), at, camera.pxPerMetre, turnOf(camera) + by_deg);

/** Turned to stand at `turn_deg` about a pixel. */
export const turnedTo = (camera: Camera, turn_deg: number, at: Px): Camera =>
  turnedAbout(camera, turn_deg - turnOf(camera), at);

/**
 * Two fingers that went from one pair of pixels to another: what was under each is under it still. At the bounds of the
 * scale the place between them stays between them.
 *
 * @param turns whether the picture turns with the fingers
 */
export function pinched(
  camera: Camera,
  from: readonly [Px, Px],
  to: readonly [Px, Px],
  bounds: ScaleBounds,
  turns: boolean,
): Camera {
  const span = ([a, b]: readonly [Px, Px]) => [b[0] - a[0], b[1] - a[1]] as const;
  const middle = ([a, b]: readonly [Px, Px]): Px => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const [was, is] = [span(from), span(to)];
  const apart = Math.hypot(...was);
  const factor_1 = apart > 0 ? Math.hypot(...is) / apart : 1;
  const by_deg = turns ? ((Math.atan2(is[1], is[0]) - Math.atan2(was[1], was[0])) * 180) / Math.PI : 0;
  return holding(
    toPlane(camera, middle(from)),
    middle(to),
    bounded(camera.pxPerMetre * factor_1, bounds),
    turnOf(camera) + by_deg,
  );
}

/** Moved, if need be, so that the middle of the room is over the box: a drawing cannot be lost. */
export function keptOver(camera: Camera, { left, right, fore, aft }: Box, middle: Px): Camera {
  const [across, down] = toPlane(camera, middle);
  const at: OnPlane = [Math.min(Math.max(across, left), right), Math.min(Math.max(down, fore), aft)];
  return at[0] === across && at[1] === down ? camera : holding(at, middle, camera.pxPerMetre, turnOf(camera));
}

export interface Margin {
  readonly side_px: number;
  readonly top_px: number;
  readonly bottom_px: number;
}

/** The whole of a box in a room, with margins, turned as asked. */
export function wholeCamera(box: Box, room: Room, margin: Margin, turn_deg = 0): Camera {
  const width_px = Math.max(40, room.width_px - 2 * margin.side_px);
  const height_px = Math.max(40, room.height_px - margin.top_px - margin.bottom_px);
  const [sin, cos] = [Math.abs(Math.sin(rad(turn_deg))), Math.abs(Math.cos(rad(turn_deg)))];
  const [across_m, down_m] = [box.right - box.left, box.aft - box.fore];
  const pxPerMetre = Math.min(
    width_px / (across_m * cos + down_m * sin),
    height_px / (across_m * sin + down_m * cos),
  );
  const middle: OnPlane = [(box.left + box.right) / 2, (box.fore + box.aft) / 2];
  return holding(middle, [room.width_px / 2, margin.top_px + height_px / 2], pxPerMetre, turn_deg);
}

/** The CSS transform, about 0,0, that makes what is drawn with one camera look as with another. */
export function cssBetween(drawn: Camera, seen: Camera): string {
  const scale_1 = seen.pxPerMetre / drawn.pxPerMetre;
  const turn = rad(turnOf(seen) - turnOf(drawn));
  const [a, b] = [Math.cos(turn) * scale_1, Math.sin(turn) * scale_1];
  const e = seen.originX_px - (a * drawn.originX_px - b * drawn.originY_px);
  const f = seen.originY_px - (b * drawn.originX_px + a * drawn.originY_px);
  return `matrix(${[a, b, -b, a, e, f].map((value) => value.toFixed(5)).join(",")})`;
}
