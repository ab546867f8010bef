import { type Book, extent, type Loading } from "@witnessmark/book";

/** Where the drawing of a load lies in its room, pixels. */
export interface LoadLayout {
  readonly pxPerMetre: number;
  /** x of the datum. */
  readonly originX_px: number;
  /** y of the centre line in plan. */
  readonly planY_px: number;
  /** y of the ground in elevation; `null` where there is room for the plan alone. */
  readonly groundY_px: number | null;
  /** Where the wings are cut, metres from the centre line; `null` where they are drawn whole. */
  readonly cut_m: number | null;
  /** Where the fuselage is cut, metres aft of the datum; `null` where it is drawn whole. */
  readonly foreCut_m: number | null;
  readonly aftCut_m: number | null;
}

interface Room {
  readonly width_px: number;
  readonly height_px: number;
}

const MOST_PX_PER_METRE = 84;
/** So much of each tank is seen, whatever else is cut. */
const LEAST_TANK_m = { whole: 0.9, cabin: 0.45 } as const;

const leastHalf_m = ({ wing }: Book["geometry"], seen: keyof typeof LEAST_TANK_m): number =>
  Math.min(wing.tip.y, (wing.tank?.[0] ?? wing.root.y) + LEAST_TANK_m[seen]);

const TABLET = { left: 40, right: 14, top: 14, between: 12, ground: 44 } as const;

/** Plan over elevation: as large as both go in, the wings cut rather than the cabin shrunk. */
export function planAndSideLayout(geometry: Book["geometry"], room: Room): LoadLayout {
  const { fore_m, aft_m, right_m, top_m } = extent(geometry);
  const length_m = aft_m - Math.min(0, fore_m);
  const least_m = leastHalf_m(geometry, "whole");
  const height_px = room.height_px - TABLET.top - TABLET.between - TABLET.ground;
  const pxPerMetre = Math.max(
    12,
    Math.min(
      MOST_PX_PER_METRE,
      (room.width_px - TABLET.left - TABLET.right) / length_m,
      height_px / (2 * least_m + top_m),
    ),
  );
  const half_m = (height_px / pxPerMetre - top_m) / 2;
  const isWhole = half_m >= right_m;
  const planHalf_px = (isWhole ? right_m : half_m) * pxPerMetre;
  const slack_px = isWhole ? (half_m - right_m) * pxPerMetre : 0;
  const slackX_px = room.width_px - TABLET.left - TABLET.right - length_m * pxPerMetre;
  return {
    pxPerMetre,
    originX_px: Math.round(TABLET.left + slackX_px / 2 - Math.min(0, fore_m) * pxPerMetre),
    planY_px: Math.round(TABLET.top + planHalf_px + slack_px / 2),
    groundY_px: Math.round(room.height_px - TABLET.ground),
    cut_m: isWhole ? null : half_m,
    foreCut_m: null,
    aftCut_m: null,
  };
}

/** Seats are half a metre of this and that about their place. */
const FORE_OF_SEAT_m = 1.15;
const AFT_OF_BAY_m = 0.75;

/** The cabin alone, from above, as large as a phone is wide: fuselage and wings are cut about what is loaded. */
export function cabinLayout(geometry: Book["geometry"], loading: Loading, room: Room): LoadLayout {
  const box = extent(geometry);
  const along_m = [...loading.stations, ...loading.tanks].map(({ place }) => place[0]);
  const fore_m = Math.max(box.fore_m, Math.min(...along_m) - FORE_OF_SEAT_m);
  const aft_m = Math.min(box.aft_m, Math.max(...along_m) + AFT_OF_BAY_m);
  const side_px = 6;
  const half_px = room.height_px / 2 - 10;
  const pxPerMetre = Math.min(
    MOST_PX_PER_METRE,
    (room.width_px - 2 * side_px) / (aft_m - fore_m),
    half_px / leastHalf_m(geometry, "cabin"),
  );
  const half_m = half_px / pxPerMetre;
  return {
    pxPerMetre,
    originX_px: Math.round((room.width_px - (aft_m - fore_m) * pxPerMetre) / 2 - fore_m * pxPerMetre),
    planY_px: Math.round(room.height_px / 2),
    groundY_px: null,
    cut_m: half_m >= box.right_m ? null : half_m,
    foreCut_m: fore_m > box.fore_m ? fore_m : null,
    aftCut_m: aft_m < box.aft_m ? aft_m : null,
  };
}
