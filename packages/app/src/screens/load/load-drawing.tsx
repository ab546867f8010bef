import type { LoadFigures } from "@witnessmark/assess";
import type { Book, Loading } from "@witnessmark/book";
import type { PlannedLoad } from "@witnessmark/ledger";
import { type MouseEvent, memo, useMemo } from "react";
import { useSize } from "../../instruments/use-width.ts";
import { tally } from "../../words/figures.ts";
import { drawnPlaces, placeUnder } from "./drawn-load.ts";
import type { LiveLoad } from "./follow/live-load.ts";
import type { InHand } from "./in-hand.ts";
import { LoadBase } from "./load-base.tsx";
import { LoadBeam } from "./load-beam.tsx";
import { LoadPlaces } from "./load-places.tsx";
import { LoadTags } from "./load-tags.tsx";
import { type LoadUnits, plain, symbolOf } from "./load-units.ts";
import { cabinLayout, planAndSideLayout } from "./plan-layout.ts";

export interface LoadDrawingProps {
  readonly book: Book;
  readonly loading: Loading;
  readonly load: PlannedLoad;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly hand: InHand;
  readonly onHand: (hand: InHand) => void;
  /** Plan and elevation, or the cabin from above alone. */
  readonly wide: boolean;
  readonly live: LiveLoad;
}

/** What is aboard, where it is: on the aircraft as its book draws it. */
export const LoadDrawing = memo(function LoadDrawing(props: LoadDrawingProps) {
  const [ref, size] = useSize<HTMLDivElement>("load-drawing");
  return (
    <div className="load-draw" ref={ref}>
      {size.width_px === 0 ? null : <Drawing {...props} {...size} />}
    </div>
  );
});

function Drawing({
  book,
  loading,
  load,
  figures,
  units,
  hand,
  onHand,
  wide,
  live,
  width_px,
  height_px,
}: LoadDrawingProps & { readonly width_px: number; readonly height_px: number }) {
  const { geometry } = book;
  const at = useMemo(
    () =>
      wide
        ? planAndSideLayout(geometry, { width_px, height_px })
        : cabinLayout(geometry, loading, { width_px, height_px }),
    [geometry, loading, wide, width_px, height_px],
  );
  const places = useMemo(() => drawnPlaces(geometry, loading, at), [geometry, loading, at]);
  // the list beside it is the way by keyboard, so a tap on the picture needs no part of its own
  const tap = (event: MouseEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const found = placeUnder(places, event.clientX - box.left, event.clientY - box.top);
    if (found !== null) onHand(found);
  };
  return (
    <>
      <LoadBase geometry={geometry} at={at} width_px={width_px} height_px={height_px} />
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: everything on it is in the list too, with buttons */}
      <svg
        className="load-svg"
        width={width_px}
        height={height_px}
        viewBox={`0 0 ${width_px} ${height_px}`}
        role="img"
        aria-label={labelOf(book, figures, units)}
        onClick={tap}
      >
        <LoadPlaces places={places} at={at} figures={figures} units={units} hand={hand} live={live} />
        {wide ? <LoadTags places={places} at={at} items={load.items} units={units} /> : null}
        {at.groundY_px === null ? null : (
          <LoadBeam
            geometry={geometry}
            loading={loading}
            figures={figures}
            units={units}
            at={at}
            groundY_px={at.groundY_px}
            live={live}
          />
        )}
      </svg>
    </>
  );
}

function labelOf(book: Book, figures: LoadFigures, units: LoadUnits): string {
  const people = figures.stations.filter(({ kind, items }) => kind === "seat" && items.length > 0).length;
  const bags_kg = figures.stations.reduce(
    (sum, { kind, mass_kg }) => sum + (kind === "bay" ? mass_kg : 0),
    0,
  );
  const fuel_kg = figures.tanks.reduce((sum, { mass_kg = 0 }) => sum + mass_kg, 0);
  const mass = (value_kg: number) => `${plain(value_kg, units.mass)} ${symbolOf(units.mass)}`;
  return `${book.aircraft.type}, loaded: ${tally(people, "seat")} taken, ${mass(bags_kg)} in the bays, ${mass(fuel_kg)} of fuel`;
}
