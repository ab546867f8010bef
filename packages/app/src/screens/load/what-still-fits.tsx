import { type Flight, fuelFigures, type LoadFigures, leavingAt } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { fromSI, withSymbol } from "@witnessmark/engine";
import type { MostAtStation } from "@witnessmark/fit";
import type { PlannedLoad } from "@witnessmark/ledger";
import { useLayoutEffect, useMemo, useRef } from "react";
import { fitInputOf, thingName } from "../../fit/fit-input-of.ts";
import { type FitState, useFit } from "../../fit/use-fit.ts";
import { massAt_kg } from "../../flight/plan-load.ts";
import { useMinute } from "../../preferences/clock.ts";
import { lower } from "../../words/capital.ts";
import { figure } from "../../words/figures.ts";
import type { LoadUnits } from "./load-units.ts";
import type { NamesOf } from "./other-ways.ts";
import { PutRight } from "./put-right.tsx";

interface WhatStillFitsProps {
  readonly book: Book;
  readonly flight: Flight;
  readonly load: PlannedLoad;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly onLoad: (load: PlannedLoad) => void;
  /** A finger is dragging: nothing is asked until it rests. */
  readonly held: boolean;
}

/** What still fits this load, or what puts it right: worked out exactly over the whole flight, not tried out. */
export function WhatStillFits({ book, flight, load, figures, units, onLoad, held }: WhatStillFitsProps) {
  const minute = useMinute();
  const required_kg = useMemo(
    () => (held ? undefined : requiredOf(book, leavingAt(flight, minute * 60_000), figures)),
    [book, flight, figures, held, minute],
  );
  const input = useMemo(
    () => (held ? null : fitInputOf(book, load, figures, required_kg)),
    [book, load, figures, required_kg, held],
  );
  const places = useMemo(
    () =>
      (book.loading?.stations ?? [])
        .filter(({ id, kind }) => kind === "bay" || massAt_kg(load, id) === 0)
        .map(({ id }) => id),
    [book, load],
  );
  const { found, askAnother } = useFit(input, places);
  const isSettled = !held && found.kind !== "working";
  const [section, height_px] = useKeptHeight(isSettled);
  if (held || found.kind === "working") {
    return (
      <section
        ref={section}
        className="load-fits"
        style={{ minHeight: height_px() }}
        aria-busy={!held}
        aria-live="polite"
      >
        <p>
          {held
            ? "What still fits is worked out when the finger rests."
            : "What still fits is being worked out."}
        </p>
      </section>
    );
  }
  if (found.kind === "unknown") return null;
  return (
    <section ref={section} className="load-fits" aria-busy={false} aria-live="polite">
      {found.kind === "failed" ? (
        <p role="alert">What still fits could not be worked out ({found.why}). The figures above stand.</p>
      ) : (
        <Answer found={found} book={book} load={load} units={units} onLoad={onLoad} onAnother={askAnother} />
      )}
    </section>
  );
}

/** What must be in the tanks at start-up; undefined while that is not known. */
const requiredOf = (book: Book, flight: Flight, figures: LoadFigures): number | undefined =>
  flight.plan === undefined ? undefined : fuelFigures(book, flight, flight.plan, figures).required_kg;

/** How high an answer was: while the next is worked out it takes as much, so that the list below stays where it is. */
function useKeptHeight(isSettled: boolean) {
  const section = useRef<HTMLElement>(null);
  const last_px = useRef(0);
  useLayoutEffect(() => {
    if (isSettled) last_px.current = section.current?.offsetHeight ?? 0;
  });
  return [section, () => last_px.current] as const;
}

interface AnswerProps extends Pick<WhatStillFitsProps, "book" | "load" | "units" | "onLoad"> {
  readonly found: Extract<FitState, { kind: "known" }>;
  readonly onAnother: () => void;
}

function Answer({ found, book, load, units, onLoad, onAnother }: AnswerProps) {
  const { fits } = found;
  const names = namesOf(book, load);
  if (fits.kind === "broken") {
    return (
      <PutRight
        fits={fits}
        known={found}
        load={load}
        units={units}
        names={names}
        onLoad={onLoad}
        onAnother={onAnother}
      />
    );
  }
  const { fuel, places } = fits;
  const rows = "status" in places ? [] : places.flatMap((place) => rowOf(place, units, names.place));
  return (
    <>
      <h2>What still fits</h2>
      <ul>
        {rows.map(({ station, most, says }) => (
          <li key={station}>
            <b>{most}</b> {says}
          </li>
        ))}
        {fuel.status === "found" && fuel.more_m3 > 0 ? (
          <li>
            <b>{withSymbol(figure(Math.floor(fromSI(fuel.more_m3, units.volume)), 0), units.volume)}</b> more
            fuel, {fuel.says}
          </li>
        ) : null}
        {"status" in places ? <li>How much fits in each place took too long to work out.</li> : null}
      </ul>
    </>
  );
}

function namesOf({ loading }: Book, load: PlannedLoad): NamesOf {
  const stationOf = (id: string) => loading?.stations.find((station) => station.id === id);
  return {
    place: (id) => stationOf(id)?.name ?? id,
    thing(id) {
      const item = load.items.find((one) => one.id === id);
      return thingName({ what: item?.what ?? "" }, stationOf(item?.station ?? "")?.kind === "bay");
    },
  };
}

function rowOf(place: MostAtStation, units: LoadUnits, nameOf: (station: string) => string) {
  if (place.status !== "found") return [];
  const most = Math.floor(fromSI(place.most_kg, units.mass));
  if (most <= 0) return [];
  return [
    {
      station: place.station,
      most: withSymbol(figure(most, 0), units.mass),
      says: `in ${lower(nameOf(place.station))}, ${place.says}`,
    },
  ];
}
