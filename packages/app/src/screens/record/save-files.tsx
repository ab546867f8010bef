import { readingsCsv, timedCalendar, timedCsv } from "@witnessmark/record";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { saveFile } from "../../frame/save-file.ts";
import { href } from "../../routes/route.ts";
import { RecordPdf } from "./record-pdf.tsx";
import { useTimed } from "./timed-now.ts";
import "./save-files.css";

/** The record as files, made here and with no net: readings, what runs out, its last days for a calendar. */
export function SaveFiles({ open }: { readonly open: OpenAircraft }) {
  const { registration, book, state } = open;
  const { figures } = useTimed(open);
  const save = (text: string, name: string, type: string) =>
    saveFile(new Blob([text], { type }), `${registration.toLowerCase()}-${name}`);
  const feed = `${window.location.origin}/api/aircraft/${encodeURIComponent(registration)}/runs-out.ics`;
  return (
    <section className="one-section">
      <h3>The record as files</h3>
      <div className="save-files">
        <button
          type="button"
          className="button"
          onClick={() => save(readingsCsv(book, state), "readings.csv", "text/csv")}
        >
          Readings, CSV
        </button>
        <button
          type="button"
          className="button"
          onClick={() => save(timedCsv(figures, book.counters), "runs-out.csv", "text/csv")}
        >
          What runs out, CSV
        </button>
        <button
          type="button"
          className="button"
          onClick={() =>
            save(timedCalendar(registration, figures, Date.now()), "runs-out.ics", "text/calendar")
          }
        >
          Its last days, calendar
        </button>
        <a className="button" href={href({ at: "import", registration })}>
          Bring in a file
        </a>
      </div>
      <p className="record-small">
        A calendar that looks again by itself can follow{" "}
        <a className="feed" href={feed}>
          {feed}
        </a>{" "}
        wherever it reaches this server.
      </p>
      <RecordPdf registration={registration} />
    </section>
  );
}
