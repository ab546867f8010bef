import type { Discrepancy, Status } from "@witnessmark/ledger";
import { AircraftPlan } from "../../drawing/aircraft-plan.tsx";
import { wholeCamera } from "../../drawing/camera.ts";
import { walkBox } from "../../drawing/walk-camera.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";

interface WhereItIsProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
  readonly status: Status;
}

const WIDTH_px = 84;
const HEIGHT_px = 88;
const MARK_px = 20;

/** Where a discrepancy is, x aft and y right in metres: as it was placed, else at its point, else at its check's. */
export function placeOfDiscrepancy({ book }: OpenAircraft, discrepancy: Discrepancy) {
  if (discrepancy.place !== undefined) return [discrepancy.place.x_m, discrepancy.place.y_m] as const;
  const check = discrepancy.check === undefined ? undefined : book.checksById.get(discrepancy.check);
  const point = book.points.get(discrepancy.point ?? check?.point ?? "");
  return point === undefined ? undefined : ([point.place[0], point.place[1]] as const);
}

/** The aircraft from above, small, with the mark where the discrepancy is; a picture beside words that say the same. */
export function WhereItIs({ open, discrepancy, status }: WhereItIsProps) {
  const { book } = open;
  const place = placeOfDiscrepancy(open, discrepancy);
  const camera = wholeCamera(
    walkBox(book, { stops: [] }),
    { width_px: WIDTH_px, height_px: HEIGHT_px },
    { side_px: 10, top_px: 6, bottom_px: 6 },
  );
  const k = camera.pxPerMetre;
  const x = place === undefined ? 0 : camera.originX_px + place[1] * k;
  const y = place === undefined ? 0 : camera.originY_px + place[0] * k;
  return (
    <span className="where-it-is" aria-hidden="true">
      <svg width={WIDTH_px} height={HEIGHT_px} viewBox={`0 0 ${WIDTH_px} ${HEIGHT_px}`} aria-hidden="true">
        <g transform={`translate(${camera.originX_px.toFixed(1)} ${camera.originY_px.toFixed(1)})`}>
          <AircraftPlan geometry={book.geometry} pxPerMetre={k} detail={0} />
        </g>
      </svg>
      {place === undefined ? null : (
        <i style={{ left: x - MARK_px / 2, top: y - MARK_px / 2 }}>
          <Mark status={status} size_px={MARK_px} silent />
        </i>
      )}
    </span>
  );
}
