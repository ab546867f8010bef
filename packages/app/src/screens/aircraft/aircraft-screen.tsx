import type { Check } from "@witnessmark/book";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useWide } from "../../preferences/wide.ts";
import { href } from "../../routes/route.ts";
import { tally } from "../../words/figures.ts";
import { AircraftPapers } from "./aircraft-papers.tsx";
import { BookDrawing } from "./book-drawing.tsx";
import { BookToc } from "./book-toc.tsx";
import { CheckPage } from "./check-page.tsx";
import "../walk/left.css";
import "./aircraft.css";

interface AircraftScreenProps {
  readonly open: OpenAircraft;
  readonly check: string | undefined;
}

/** The book: what is looked at, where, why, and within which limits; and the aircraft's papers in this program. */
export function AircraftScreen({ open, check: id }: AircraftScreenProps) {
  const { book, registration } = open;
  const wide = useWide();
  const check = id === undefined ? undefined : book.checks.find((each) => each.id === id);
  const under = `Book revision ${book.revision}`;
  if (wide) {
    return (
      <AircraftFrame open={open} sheet="aircraft" title="Aircraft" under={under} className="aircraft">
        <main className="aircraft-wide">
          <BookToc open={open} check={check} />
          <div className="aircraft-draw">
            <BookDrawing book={book} check={check} />
          </div>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and may hold nothing else to focus */}
          <section className="aircraft-page" tabIndex={0} aria-label="What the book says">
            {check === undefined ? <AircraftPapers open={open} /> : <OneCheck open={open} check={check} />}
          </section>
        </main>
      </AircraftFrame>
    );
  }
  return (
    <AircraftFrame open={open} sheet="aircraft" title="Aircraft" under={under} className="aircraft">
      <main>
        {check === undefined ? (
          <>
            <div className="aircraft-draw aircraft-draw-phone">
              <BookDrawing book={book} check={undefined} />
            </div>
            <AircraftPapers open={open} />
            <h2 className="aircraft-h2">
              {tally(book.checks.length, "check")} at {tally(book.stances.length, "stance")}
            </h2>
            <BookToc open={open} check={undefined} />
          </>
        ) : (
          <>
            <a className="back-row" href={href({ at: "aircraft", registration })}>
              Back to the book
            </a>
            <div className="aircraft-draw aircraft-draw-phone">
              <BookDrawing book={book} check={check} />
            </div>
            <OneCheck open={open} check={check} />
          </>
        )}
      </main>
    </AircraftFrame>
  );
}

function OneCheck({ open, check }: { readonly open: OpenAircraft; readonly check: Check }) {
  return <CheckPage key={check.id} open={open} check={check} />;
}
