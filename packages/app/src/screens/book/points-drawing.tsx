import { useMemo, useState } from "react";
import { AircraftDrawing, type DrawingMark, type PlaceOnView } from "../../drawing/aircraft-drawing.tsx";
import { metres, overallDimensions, placeDimensions, placeWords } from "../../drawing/dimensions.ts";
import { go } from "../../routes/use-route.ts";
import { tappedPlace } from "./tapped-place.ts";
import { useDesk } from "./use-desk.ts";
import { type DraftPoint, moveEdits, newPoint, pointsIn } from "./walk-points.ts";

interface PointsDrawingProps {
  readonly point: string | undefined;
  /** The stance in hand: the points that are seen from it stand out. */
  readonly stance: string | undefined;
  readonly small: boolean;
}

/** The aircraft from above over its left side, with its points: tapped, and in a draft dragged and put there. */
export function PointsDrawing({ point, stance, small }: PointsDrawingProps) {
  const desk = useDesk();
  const { plain, book, registration, draft } = desk;
  const [adding, setAdding] = useState<"no" | "one" | "pair">("no");
  /** The point in hand when a tap fell outside: with another one, that is past. */
  const [outsideAt, setOutsideAt] = useState<string | null>(null);
  const [moving, setMoving] = useState<{ readonly id: string; readonly at: PlaceOnView } | null>(null);
  const points = useMemo(() => pointsIn(plain), [plain]);
  const geometry = useGeometry();
  const marks = useMemo(
    () => points.map((each) => markOf(each, point, stance, moving)),
    [points, point, stance, moving],
  );
  const inHand = points.find(({ id }) => id === point);
  const isMoving = inHand !== undefined && moving?.id === inHand.id;
  const place = isMoving ? moved(inHand, moving.at) : inHand?.place;
  const measures = useMemo(() => {
    if (geometry === null) return { plan: [], side: [] };
    const of = (view: "plan" | "side") =>
      place === undefined
        ? overallDimensions(view, geometry, metres)
        : placeDimensions(view, place, geometry, metres);
    return { plan: of("plan"), side: of("side") };
  }, [geometry, place]);
  if (geometry === null) return <p className="bk-none">The shape cannot be drawn: mend it in the text.</p>;
  const open = (id: string) => go({ at: "book", registration, page: "points", item: id });
  const move = (id: string, at: PlaceOnView, done: boolean) => {
    const found = points.find((each) => each.id === id);
    if (!done) setMoving({ id, at });
    else {
      setMoving(null);
      if (found !== undefined && plain !== null) desk.edit(moveEdits(plain, found, at));
      if (id !== point) open(id);
    }
  };
  const put = (at: PlaceOnView) => {
    if (adding === "no" || plain === null) return;
    const place = tappedPlace(at, geometry, points);
    setOutsideAt(place === null ? (point ?? "") : null);
    if (place === null) return;
    const made = newPoint(plain, place, adding === "pair");
    desk.edit(made.edits);
    setAdding("no");
    open(made.id);
  };
  const label = `${book?.aircraft.type ?? registration}: ${points.length} points`;
  const shared = {
    geometry,
    marks,
    datum: true,
    // while a point is being placed, a tap on another one is a place as well
    ...(adding === "no" ? { onPoint: open } : { onPlace: put }),
    ...(point === undefined ? {} : { selected: point }),
    ...(draft === null ? {} : { onMove: move }),
  };
  return (
    <>
      <div className="bk-plan">
        <AircraftDrawing
          {...shared}
          label={`${label}, from above`}
          dimensions={measures.plan}
          squares={!small}
          up={NOSE_LEFT}
          tools="folded"
          apart_px={small ? 20 : 14}
          mark_px={14}
        />
      </div>
      {small ? null : (
        <div className="bk-side">
          <AircraftDrawing
            {...shared}
            view="side"
            label={`${label}, from the left`}
            dimensions={measures.side}
            tools="none"
            apart_px={14}
            mark_px={14}
            squares
          />
        </div>
      )}
      <div className="bk-draw-acts">
        {inHand === undefined || place === undefined ? null : (
          <p>
            {inHand.name}: {placeWords(place)}
          </p>
        )}
        {draft === null ? null : (
          <p className="bk-outside" role="status">
            {adding !== "no" && outsideAt === (point ?? "") ? "That is outside the aircraft. Tap on it." : ""}
          </p>
        )}
        {draft === null ? null : (
          <span className="row-of-buttons">
            {(["one", "pair"] as const).map((kind) => (
              <button
                key={kind}
                type="button"
                className="button"
                aria-pressed={adding === kind}
                onClick={() => {
                  setAdding(adding === kind ? "no" : kind);
                  setOutsideAt(null);
                }}
              >
                {adding === kind ? "Tap where it is" : kind === "one" ? "Place a point" : "Place a pair"}
              </button>
            ))}
          </span>
        )}
      </div>
    </>
  );
}

/** As one stands on its left, looking to the right. */
export const NOSE_LEFT = { heading_deg: 90 } as const;

/** The shape as it is drawn: that of the draft as it read last. */
const useGeometry = () => useDesk().geometry;

const moved = ({ place }: DraftPoint, at: PlaceOnView): DraftPoint["place"] => [
  at.x_m ?? place[0],
  at.y_m ?? place[1],
  at.z_m ?? place[2],
];

function markOf(
  each: DraftPoint,
  point: string | undefined,
  stance: string | undefined,
  moving: { readonly id: string; readonly at: PlaceOnView } | null,
): DrawingMark {
  const here = each.id === point || (stance !== undefined && each.stance === stance);
  return {
    id: each.id,
    name: each.name,
    place: moving?.id === each.id ? moved(each, moving.at) : each.place,
    ...(here ? { state: "here" as const } : {}),
    size: each.id === point ? "large" : "small",
    ...(here ? { label: each.label } : {}),
  };
}
