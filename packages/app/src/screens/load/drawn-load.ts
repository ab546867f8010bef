import type { LoadFigures } from "@witnessmark/assess";
import { type Book, type Loading, noseLeft, type Station, type Tank } from "@witnessmark/book";
import { tankMiddle, tankPatch } from "../../drawing/wing-patch.ts";
import type { InHand } from "./in-hand.ts";
import type { LoadLayout } from "./plan-layout.ts";

/** A box on the drawing, its middle and half its sides, pixels. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly halfX: number;
  readonly halfY: number;
}

export interface DrawnStation {
  readonly station: Station;
  readonly box: Box;
}

export interface DrawnTank {
  readonly tank: Tank;
  readonly box: Box;
  readonly path: string;
}

/** Seats, bays and tanks laid out on the plan; the same for any load. */
export interface DrawnPlaces {
  readonly stations: readonly DrawnStation[];
  readonly tanks: readonly DrawnTank[];
}

const SEAT_m = { halfX: 0.33, halfY: 0.29 } as const;
const BAY_AREA_m2 = 0.55;

export function drawnPlaces(geometry: Book["geometry"], loading: Loading, at: LoadLayout): DrawnPlaces {
  const k = at.pxPerMetre;
  const project = noseLeft(k, at.originX_px, at.planY_px);
  const stations = loading.stations.map((station): DrawnStation => {
    const [x, y] = project(station.place[0], station.place[1]);
    const { halfX, halfY } = station.kind === "seat" ? SEAT_m : bayHalves_m(geometry, station);
    return { station, box: { x, y, halfX: halfX * k, halfY: halfY * k } };
  });
  const tanks = loading.tanks.map((tank): DrawnTank => {
    const half = tank.place[1] < 0 ? -1 : 1;
    const span = spanOf(geometry, loading, tank, at.cut_m);
    const [x, y] = tankMiddle(geometry.wing, half, span, project);
    const wide_m = geometry.wing.root.chord * 0.45;
    const box = { x, y, halfX: (wide_m / 2) * k, halfY: ((span[1] - span[0]) / 2) * k };
    return { tank, box, path: tankPatch(geometry.wing, half, span, project) };
  });
  return { stations, tanks };
}

function bayHalves_m({ fuselage }: Book["geometry"], { place, floor }: Station) {
  const aft = fuselage.findIndex(([x]) => x >= place[0]);
  const behind = fuselage[aft] ?? fuselage.at(-1);
  const ahead = fuselage[aft - 1] ?? behind;
  const width_m = Math.min(ahead?.[1] ?? 0.5, behind?.[1] ?? 0.5);
  const halfY = Math.max(0.2, Math.min(0.44, width_m * 0.84));
  return { halfX: Math.max(0.2, Math.min(0.42, (floor?.area_m2 ?? BAY_AREA_m2) / (4 * halfY))), halfY };
}

/** How far out a tank is drawn: as the book draws the wing's, to the cut; a strip about its place where there are more. */
function spanOf(
  { wing }: Book["geometry"],
  { tanks }: Loading,
  tank: Tank,
  cut_m: number | null,
): readonly [number, number] {
  const out_m = Math.abs(tank.place[1]);
  const neighbours = tanks.filter(({ place }) => Math.sign(place[1]) === Math.sign(tank.place[1]));
  const [from_m, to_m] =
    wing.tank !== undefined && neighbours.length === 1 ? wing.tank : [out_m - 0.4, out_m + 0.4];
  const end_m = cut_m === null ? to_m : Math.min(to_m, cut_m - 0.1);
  return [from_m, Math.max(from_m + 0.3, end_m)];
}

/** What is nearest to a tap, within reach of a finger. */
export function placeUnder(
  { stations, tanks }: DrawnPlaces,
  x_px: number,
  y_px: number,
  reach_px = 24,
): InHand | null {
  const far = ({ x, y, halfX, halfY }: Box) =>
    Math.hypot(Math.max(0, Math.abs(x_px - x) - halfX), Math.max(0, Math.abs(y_px - y) - halfY));
  let best: { readonly hand: InHand; readonly far_px: number } | null = null;
  const look = (hand: InHand, far_px: number) => {
    if (far_px <= (best?.far_px ?? reach_px)) best = { hand, far_px };
  };
  for (const { tank, box } of tanks) look({ kind: "tank", id: tank.id }, far(box));
  for (const { station, box } of stations) look({ kind: "station", id: station.id }, far(box));
  return (best as { readonly hand: InHand } | null)?.hand ?? null; // set in a closure, which the compiler does not follow
}

/** One arrow of the loaded beam. */
export interface BeamLoad {
  readonly arm_m: number;
  readonly mass_kg: number;
  /** Where its projection line begins in plan: the outermost place on the side next to the elevation. */
  readonly lateral_m: number;
}

/** Stations nearer to each other than this are one row of seats. */
const ROW_m = 0.3;

/** Seats of a row together, bays alone; what is empty has no arrow. */
export function beamLoads(loading: Loading, figures: Pick<LoadFigures, "stations">): readonly BeamLoad[] {
  const loads: { arm_m: number; mass_kg: number; lateral_m: number }[] = [];
  for (const station of loading.stations.toSorted((a, b) => a.arm_m - b.arm_m)) {
    const mass_kg = figures.stations.find(({ id }) => id === station.id)?.mass_kg ?? 0;
    if (!(mass_kg > 0)) continue;
    const row = loads.at(-1);
    if (row !== undefined && station.arm_m - row.arm_m < ROW_m) {
      const all_kg = row.mass_kg + mass_kg;
      row.arm_m = (row.arm_m * row.mass_kg + station.arm_m * mass_kg) / all_kg;
      row.mass_kg = all_kg;
      row.lateral_m = Math.min(row.lateral_m, station.place[1]);
    } else loads.push({ arm_m: station.arm_m, mass_kg, lateral_m: station.place[1] });
  }
  return loads;
}
