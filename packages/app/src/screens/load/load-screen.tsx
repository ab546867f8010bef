import type { Loading } from "@witnessmark/book";
import { useFlightEditing } from "../../flight/use-flight-editing.ts";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";
import { countOf, tally } from "../../words/figures.ts";
import { FlightLine } from "../decide/flight-line.tsx";
import { LoadSheet } from "./load-sheet.tsx";
import "../decide/decide.css";
import "./load.css";

/** People, bags and fuel, and the envelope with the whole flight in it. */
export function LoadScreen({ open }: { readonly open: OpenAircraft }) {
  const { flight, book } = open;
  const { loading } = book;
  return (
    <AircraftFrame open={open} sheet="load" title="Load" under={underOf(open, loading)} className="load">
      {flight === null ? (
        <main className="page">
          <section>
            <p>Say first which flight it is; then its people, bags and fuel are worked out here.</p>
          </section>
          <FlightLine open={open} />
        </main>
      ) : loading === undefined ? (
        <NoLoading open={open} />
      ) : (
        <Sheet open={open} loading={loading} />
      )}
    </AircraftFrame>
  );
}

function Sheet({ open, loading }: { readonly open: OpenAircraft; readonly loading: Loading }) {
  const editing = useFlightEditing(open);
  return editing.flight === null ? null : (
    <LoadSheet open={open} loading={loading} editing={editing} flight={editing.flight} />
  );
}

/** The book does not say where mass may lie: nothing is guessed. */
function NoLoading({ open }: { readonly open: OpenAircraft }) {
  return (
    <main className="page">
      <section>
        <p className="verdict open">
          The book says nothing of loading: no seats, tanks, limits or envelope. The load stays open.
        </p>
        <p>
          Work it out from the approved flight manual, or have the book of {open.book.aircraft.type} filled
          in.
        </p>
        <a
          className="button filled tall full"
          href={href({ at: "aircraft", registration: open.registration })}
        >
          To the book
        </a>
      </section>
    </main>
  );
}

/** "Five seats, 2 bags": nobody said is nobody counted. */
function underOf({ flight }: OpenAircraft, loading: Loading | undefined): string {
  if (flight === null) return "No flight planned";
  const items = flight.plan?.load?.items ?? [];
  if (items.length === 0) return "Nobody aboard yet";
  const kinds = new Map((loading?.stations ?? []).map(({ id, kind }) => [id, kind]));
  const people = items.filter(({ station }) => kinds.get(station) === "seat").length;
  const bags = items.length - people;
  return `${countOf(people, "seat")}${bags === 0 ? "" : `, ${tally(bags, "bag")}`}`;
}
