import { type Book, extent } from "@witnessmark/book";
import { balloons, legendOf, type Sheet } from "@witnessmark/sheet";
import { AircraftPlan } from "../../drawing/aircraft-plan.tsx";
import { MarkAt } from "../../marks/mark.tsx";

const WIDE = 384;
const HIGH = 268;
const BALLOON = 10;
const LEGEND_ROW = 19;

/** The aircraft with a stroke where all was as it should be, and a numbered balloon where it was not. */
export function SheetPlan({ sheet, book }: { readonly sheet: Sheet; readonly book: Book }) {
  const { fore_m, aft_m, left_m, right_m } = extent(book.geometry);
  const k = Math.min((HIGH - 30) / (aft_m - fore_m), (WIDE - 84) / (right_m - left_m));
  const [ox, oy] = [WIDE / 2 - ((left_m + right_m) / 2) * k, HIGH / 2 - ((fore_m + aft_m) / 2) * k];
  const at = (place: Sheet["marks"][number]["place"]) => ({ x: ox + place[1] * k, y: oy + place[0] * k });
  const legend = legendOf(sheet.marks);
  const noted = sheet.marks.filter((mark) => mark.status !== "clear");
  const drawn = balloons(
    noted.flatMap((mark) => (mark.note === undefined ? [] : [{ note: mark.note, ...at(mark.place) }])),
    { width: WIDE, height: HIGH, radius: BALLOON, legend: 16 + legend.length * LEGEND_ROW },
  );
  return (
    <svg
      className="sheet-plan"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={`${book.aircraft.type} from above; numbers refer to the notes`}
    >
      <g transform={`translate(${ox.toFixed(1)} ${oy.toFixed(1)})`}>
        <AircraftPlan geometry={book.geometry} pxPerMetre={k} detail={2} centre />
      </g>
      <path
        className="sheet-seen"
        d={sheet.marks
          .filter((mark) => mark.status === "clear")
          .map(({ place }) => at(place))
          .map(({ x, y }) => `M${x.toFixed(1)},${(y - 3.4).toFixed(1)}v6.8`)
          .join("")}
      />
      {drawn.map((balloon) => (
        <path
          key={balloon.note}
          className="sheet-leader"
          d={`M${balloon.x.toFixed(1)},${balloon.y.toFixed(1)}L${balloon.bx},${balloon.by}`}
        />
      ))}
      {/* the worst on top, and what is only named small: a walk just begun leaves an aircraft to be seen */}
      {noted.toReversed().map((mark) => {
        const { x, y } = at(mark.place);
        const [eye, size_px] = mark.note === undefined ? [5.5, 9] : [9, 15];
        return (
          <g key={`${mark.note} ${x} ${y}`}>
            <circle className="sheet-eye" cx={x} cy={y} r={eye} />
            <MarkAt status={mark.status} x={x} y={y} size_px={size_px} />
          </g>
        );
      })}
      {drawn.map((balloon) => (
        <g key={balloon.note}>
          <circle className="sheet-balloon" cx={balloon.bx} cy={balloon.by} r={BALLOON} />
          <text className="sheet-number" x={balloon.bx} y={balloon.by + 4.6} textAnchor="middle">
            {balloon.note}
          </text>
        </g>
      ))}
      <g className="sheet-legend">
        {legend.map(({ status, words }, row) => (
          <g key={status} transform={`translate(0 ${LEGEND_ROW * (row + 1)})`}>
            {status === "clear" ? (
              <path className="sheet-seen" d="M18,-4v6.8" />
            ) : (
              <MarkAt status={status} x={18} y={0} size_px={15} />
            )}
            <text x={30} y={4}>
              {words}
            </text>
          </g>
        ))}
      </g>
    </svg>
  );
}
