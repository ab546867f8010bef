import { PlainTitle } from "../../frame/title-block.tsx";
import type { AircraftEntry, KeepSnapshot } from "../../keep/contract.ts";
import { href } from "../../routes/route.ts";
import { keptOfAll } from "../../words/keeping.ts";
import { BookFile } from "../add/add-aircraft.tsx";
import { BookFaults } from "../add/book-faults.tsx";
import { LedgerFile } from "./ledger-file.tsx";

/** An aircraft whose book is missing or does not read: nothing can be judged, and the page says why. */
export function BookTrouble({
  snapshot,
  entry,
}: {
  readonly snapshot: KeepSnapshot;
  readonly entry: AircraftEntry;
}) {
  return (
    <div className="frame">
      <PlainTitle title={entry.registration} kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      <main className="page">
        <section>
          <h2>{entry.bookFaults.length === 0 ? "No book is here yet" : "Its book does not read"}</h2>
          <p>
            Without a book nothing can be judged. Everything that was kept of this aircraft is still here;
            give it a revision that reads.
          </p>
          <BookFile label="Choose a revision" onAdopted={() => {}} />
          {entry.bookFaults.length === 0 ? null : (
            <BookFaults fileName="the book in force" faults={entry.bookFaults} />
          )}
        </section>
        <section>
          <h2>Its ledger</h2>
          <LedgerFile registration={entry.registration} />
        </section>
      </main>
    </div>
  );
}
