import { readingsCsv, timedCalendar, timedCsv } from "@witnessmark/record";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";
import { RecordPdf } from "./record-pdf.tsx";
import { saveFile } from "./save-file.ts";
import { useTimed } from "./what-runs-out.tsx";

/** The record as files, made here and with no net: readings, what runs out, its last days for a calendar. */
export function SaveFiles({ open }: { readonly open: OpenAircraft }) {
  const { registration, book, state } = open;
  const figures = useTimed(open);
  const name = registration.toLowerCase();
  return (
    <section className="one-section">
      <h3>The record as files</h3>
      <div className="save-files">
        <button
          type="button"
          className="button"
          onClick={() => saveFile(readingsCsv(book, state), `${name}-readings.csv`, "text/csv")}
        >
          Readings, CSV
        </button>
        <button
          type="button"
          className="button"
          onClick={() => saveFile(timedCsv(figures, book.counters), `${name}-runs-out.csv`, "text/csv")}
        >
          What runs out, CSV
        </button>
        <button
          type="button"
          className="button"
          onClick={() =>
            saveFile(
              timedCalendar(registration, figures, Date.now()),
              `${name}-runs-out.ics`,
              "text/calendar",
            )
          }
        >
          Its last days, calendar
        </button>
        <a className="button" href={href({ at: "import", registration })}>
          Bring in a file
        </a>
      </div>
      <RecordPdf registration={registration} />
    </section>
  );
}
