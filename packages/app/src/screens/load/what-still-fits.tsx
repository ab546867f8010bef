import type { LoadFigures } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { fromSI, withSymbol } from "@witnessmark/engine";
import type { MostAtStation } from "@witnessmark/fit";
import type { PlannedLoad } from "@witnessmark/ledger";
import { useMemo } from "react";
import { fitInputOf } from "../../fit/fit-input-of.ts";
import { useFit } from "../../fit/use-fit.ts";
import type { WhatFits } from "../../fit/what-fits.ts";
import { massAt_kg } from "../../flight/plan-load.ts";
import { figure } from "../../words/figures.ts";
import type { LoadUnits } from "./load-units.ts";

interface WhatStillFitsProps {
  readonly book: Book;
  readonly load: PlannedLoad;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly onLoad: (load: PlannedLoad) => void;
  /** A finger is dragging: nothing is asked until it rests. */
  readonly held: boolean;
}

/** What still fits this load, or what puts it right: worked out exactly over the whole flight, not tried out. */
export function WhatStillFits({ book, load, figures, units, onLoad, held }: WhatStillFitsProps) {
  const input = useMemo(() => (held ? null : fitInputOf(book, load, figures)), [book, load, figures, held]);
  const places = useMemo(
    () =>
      (book.loading?.stations ?? [])
        .filter(({ id, kind }) => kind === "bay" || massAt_kg(load, id) === 0)
        .map(({ id }) => id),
    [book, load],
  );
  const found = useFit(input, places);
  if (held) {
    return (
      <section className="load-fits">
        <p>What still fits is worked out when the finger rests.</p>
      </section>
    );
  }
  if (found.kind === "unknown") return null;
  return (
    <section className="load-fits" aria-busy={found.kind === "working"} aria-live="polite">
      {found.kind === "working" ? <p>What still fits is being worked out.</p> : null}
      {found.kind === "failed" ? (
        <p role="alert">What still fits could not be worked out ({found.why}). The figures above stand.</p>
      ) : null}
      {found.kind === "known" ? (
        <Answer fits={found.fits} book={book} load={load} units={units} onLoad={onLoad} />
      ) : null}
    </section>
  );
}

interface AnswerProps extends Omit<WhatStillFitsProps, "figures" | "held"> {
  readonly fits: WhatFits;
}

function Answer({ fits, book, load, units, onLoad }: AnswerProps) {
  const nameOf = (station: string) =>
    book.loading?.stations.find(({ id }) => id === station)?.name ?? station;
  if (fits.kind === "broken") return <PutRight fits={fits} load={load} onLoad={onLoad} nameOf={nameOf} />;
  const { fuel, places } = fits;
  const rows = "status" in places ? [] : places.flatMap((place) => rowOf(place, units, nameOf));
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

function rowOf(place: MostAtStation, units: LoadUnits, nameOf: (station: string) => string) {
  if (place.status !== "found") return [];
  const most = Math.floor(fromSI(place.most_kg, units.mass));
  if (most <= 0) return [];
  const name = nameOf(place.station);
  const where = `in ${name.charAt(0).toLowerCase()}${name.slice(1)}`;
  return [
    {
      station: place.station,
      most: withSymbol(figure(most, 0), units.mass),
      says: `${where}, ${place.says}`,
    },
  ];
}

interface PutRightProps {
  readonly fits: Extract<WhatFits, { kind: "broken" }>;
  readonly load: PlannedLoad;
  readonly onLoad: (load: PlannedLoad) => void;
  readonly nameOf: (station: string) => string;
}

function PutRight({ fits, load, onLoad, nameOf }: PutRightProps) {
  const { arrangement, breaches } = fits;
  if (arrangement.status === "stopped") {
    return (
      <p>How to put it right took too long to work out. Move or take out something, and it is tried again.</p>
    );
  }
  if (arrangement.status === "found") {
    const { places, moves } = arrangement;
    const apply = () =>
      onLoad({
        ...load,
        items: load.items.map((item) => ({ ...item, station: places[item.id] ?? item.station })),
      });
    const nameOfItem = (id: string) => load.items.find((item) => item.id === id)?.what || "What lies there";
    return (
      <>
        <h2>Put it right</h2>
        <ul>
          {moves.map(({ item, from, to }) => (
            <li key={item}>
              <b>{nameOfItem(item)}</b> from {nameOf(from)} to {nameOf(to)}
            </li>
          ))}
        </ul>
        <button type="button" className="button filled full" onClick={apply}>
          {moves.length === 1 ? "Plan this move" : `Plan these ${moves.length} moves`}
        </button>
        <p>The fewest moves that keep every limit from the ramp to dry tanks. Undo takes them back.</p>
      </>
    );
  }
  const { lastResort, conflicts } = arrangement;
  const ways = [lastResort.leaveBehind?.says, lastResort.lessFuel?.says].filter((way) => way !== undefined);
  return (
    <>
      <h2>No seating or stowage puts it right</h2>
      <ul>
        {(conflicts.length > 0 ? conflicts : breaches).map(({ says }) => (
          <li key={says}>{sentence(says)}</li>
        ))}
        {ways.map((way) => (
          <li key={way}>
            <b>A last resort:</b> {way}
          </li>
        ))}
      </ul>
    </>
  );
}

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
