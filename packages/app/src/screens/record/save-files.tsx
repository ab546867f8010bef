import { readingsCsv, timedCalendar, timedCsv } from "@witnessmark/record";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useTimed } from "./what-runs-out.tsx";

const FILE_KEPT_MS = 60_000;

function save(text: string, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), FILE_KEPT_MS);
}

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
          onClick={() => save(readingsCsv(book, state), `${name}-readings.csv`, "text/csv")}
        >
          Readings, CSV
        </button>
        <button
          type="button"
          className="button"
          onClick={() => save(timedCsv(figures), `${name}-runs-out.csv`, "text/csv")}
        >
          What runs out, CSV
        </button>
        <button
          type="button"
          className="button"
          onClick={() =>
            save(timedCalendar(registration, figures, Date.now()), `${name}-runs-out.ics`, "text/calendar")
          }
        >
          Its last days, calendar
        </button>
      </div>
    </section>
  );
}
