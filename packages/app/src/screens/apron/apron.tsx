import { type Book, extent } from "@witnessmark/book";
import { useMemo } from "react";
import { useFlight } from "../../flight/flight-in-hand.ts";
import { deviceWord } from "../../frame/device-word.ts";
import { PlainTitle } from "../../frame/title-block.tsx";
import type { AircraftEntry, KeepSnapshot } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { useMinute } from "../../preferences/clock.ts";
import { href } from "../../routes/route.ts";
import { assessed } from "../../walk/assessed.ts";
import { goesOn, openWalk, walkButton } from "../../walk/open-walk.ts";
import { clockTime } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { keptOfAll } from "../../words/keeping.ts";
import { ApronDrafts } from "./apron-drafts.tsx";
import { ApronPicture, type Largest } from "./apron-picture.tsx";
import { TakeDemoAway } from "./take-demo-away.tsx";
import "./apron.css";

/** The aircraft one looks after, each with what stands between it and flight. */
export function Apron({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const entries = useMemo(
    () => [...snapshot.aircraft.values()].filter((entry) => !entry.state.archived).sort(walkedFirst),
    [snapshot.aircraft],
  );
  const archived = snapshot.aircraft.size - entries.length;
  const largest = useMemo(() => largestOf(entries), [entries]);
  const walking = entries.some((entry) => openWalk(entry.state) !== undefined);
  const first = entries.find((entry) => openWalk(entry.state) !== undefined);
  return (
    <div className="frame">
      <PlainTitle title="Apron" kept={keptOfAll(snapshot.status)} />
      <main className="apron">
        {snapshot.status.updateWaiting && !walking ? <UpdateWaiting /> : null}
        {snapshot.status.needsNet ? <NeedsNet /> : null}
        {entries.length === 0 ? (
          <Empty archived={archived} />
        ) : (
          <ul className={entries.length <= 3 ? "apron-list apron-fills" : "apron-list"}>
            {entries.map((entry, index) => (
              <AircraftRow
                key={entry.registration}
                entry={entry}
                largest={largest}
                first={entry === first}
                scaleBar={index === entries.length - 1}
              />
            ))}
          </ul>
        )}
        <ApronDrafts />
        {entries.length === 0 ? null : <Odds entries={entries} archived={archived} />}
      </main>
      <footer className="apron-foot">
        <a href={href({ at: "settings" })}>Units and theme</a>
        <a href={href({ at: "add" })}>Add an aircraft</a>
      </footer>
    </div>
  );
}

/** What is being walked stands on top; the rest by registration. */
function walkedFirst(a: AircraftEntry, b: AircraftEntry): number {
  const walked = (entry: AircraftEntry) => (openWalk(entry.state) === undefined ? 1 : 0);
  return walked(a) - walked(b) || (a.registration < b.registration ? -1 : 1);
}

/** The widest and the longest of them: one scale for all, so that the pictures can be compared. */
function largestOf(entries: readonly AircraftEntry[]): Largest {
  const extents = entries.flatMap(({ book }) => (book === null ? [] : [extent(book.geometry)]));
  return {
    wide_m: Math.max(13, ...extents.map(({ left_m, right_m }) => 2 * Math.max(-left_m, right_m))),
    long_m: Math.max(10, ...extents.map(({ fore_m, aft_m }) => aft_m - fore_m)),
  };
}

interface AircraftRowProps {
  readonly entry: AircraftEntry;
  readonly largest: Largest;
  readonly first: boolean;
  readonly scaleBar: boolean;
}

function AircraftRow({ entry, largest, first, scaleBar }: AircraftRowProps) {
  const { book, registration, state } = entry;
  if (book === null) return <UnreadableRow entry={entry} />;
  return (
    <ReadableRow
      registration={registration}
      book={book}
      state={state}
      largest={largest}
      first={first}
      scaleBar={scaleBar}
    />
  );
}

interface ReadableRowProps extends Omit<AircraftRowProps, "entry"> {
  readonly registration: string;
  readonly book: Book;
  readonly state: AircraftEntry["state"];
}

function ReadableRow({ registration, book, state, largest, first, scaleBar }: ReadableRowProps) {
  const minute = useMinute();
  const flight = useFlight(registration, state, minute * 60_000);
  const assessment = assessed(book, state, flight, minute);
  const { lineStatus: status } = assessment;
  const planned =
    flight === null ? "no flight planned" : `${clockTime(Date.parse(flight.offBlocks))} to ${flight.to}`;
  const isOver = assessment.walk?.isOver === true;
  const worstAt = assessment.verdicts.find(
    (verdict) =>
      verdict.status === status && status !== "clear" && !(isOver && verdict.topic === "ground-gear"),
  );
  const button = walkButton(state, assessment, minute * 60_000);
  return (
    <li className="apron-row">
      <ApronPicture
        book={book}
        largest={largest}
        status={status}
        place={worstAt === undefined || status === "open" ? undefined : placeOf(book, state, worstAt.subject)}
        scaleBar={scaleBar}
      />
      <div className="apron-text">
        <h2>
          <a href={href({ at: "decide", registration })}>{registration}</a>
        </h2>
        <p className="apron-type">
          {book.aircraft.type}, {planned}
        </p>
        <p className={`apron-line ${status}`}>
          <Mark status={status} size_px={28} />
          <span>{assessment.line}</span>
        </p>
        <a
          className={first ? "button filled apron-go" : "button apron-go"}
          href={href({ at: goesOn(state, assessment) ? "walk" : "start", registration })}
          aria-label={`${button}: ${registration}`}
        >
          {button}
        </a>
      </div>
    </li>
  );
}

type Subject = NonNullable<ReturnType<typeof assessed>["verdicts"][number]["subject"]>;

/** Where on the aircraft a verdict is about. */
function placeOf(
  book: Book,
  state: AircraftEntry["state"],
  subject: Subject | undefined,
): readonly [number, number] | undefined {
  if (subject === undefined) return undefined;
  const ofCheck = (id: string | undefined) => book.checks.find((check) => check.id === id)?.point;
  const found = subject.kind === "discrepancy" ? state.discrepancies.get(subject.id) : undefined;
  const pointId =
    subject.kind === "ground-gear"
      ? book.groundGear.find((item) => item.id === subject.id)?.point
      : (found?.point ?? ofCheck(found?.check ?? subject.id));
  const point = pointId === undefined ? undefined : book.points.get(pointId);
  return point === undefined ? undefined : [point.place[0], point.place[1]];
}

function UnreadableRow({ entry }: { readonly entry: AircraftEntry }) {
  const { registration } = entry;
  return (
    <li className="apron-row">
      <div className="apron-picture" />
      <div className="apron-text">
        <h2>{registration}</h2>
        <p className="apron-type">
          {entry.bookFaults.length === 0
            ? "No book here yet"
            : `The book does not read: ${tally(entry.bookFaults.length, "fault")}`}
        </p>
        <a className="button apron-go" href={href({ at: "aircraft", registration })}>
          See what is wrong
        </a>
      </div>
    </li>
  );
}

function Empty({ archived }: { readonly archived: number }) {
  return (
    <div className="apron-empty">
      <Mark status="open" size_px={56} silent />
      <h2>No aircraft here yet</h2>
      <p>
        Add one from its book, a text file that tells its shape, what to look at and what right looks like; or
        begin a book of your own from a few figures.
      </p>
      <a className="button filled tall" href={href({ at: "add" })}>
        Add an aircraft
      </a>
      <a className="button" href={href({ at: "begin" })}>
        Begin a book
      </a>
      {archived === 0 ? null : (
        <a className="button" href={href({ at: "archived" })}>
          {tally(archived, "aircraft", "aircraft")} put away
        </a>
      )}
    </div>
  );
}

/** What is seldom wanted, under the list. */
function Odds({
  entries,
  archived,
}: {
  readonly entries: readonly AircraftEntry[];
  readonly archived: number;
}) {
  const demo = entries.filter((entry) => entry.registration.startsWith("ZZ-"));
  if (archived === 0 && demo.length === 0) return null;
  return (
    <div className="apron-odds">
      {demo.length === 0 ? null : <TakeDemoAway registrations={demo.map((entry) => entry.registration)} />}
      {archived === 0 ? null : (
        <a className="quiet" href={href({ at: "archived" })}>
          {tally(archived, "aircraft", "aircraft")} put away
        </a>
      )}
    </div>
  );
}

/** Told before one walks out of reach of a net, where it would be found out too late. */
function NeedsNet() {
  return (
    <div className="apron-update" role="alert">
      <span>
        Without a net this app will not open on this {deviceWord()}: there was no room to keep it, or the net
        broke off. Free some room, then try again.
      </span>
      <button type="button" className="button" onClick={() => location.reload()}>
        Try again
      </button>
    </div>
  );
}

function UpdateWaiting() {
  const keep = useKeep();
  return (
    <div className="apron-update">
      <span>A newer version of the app is here.</span>
      <button type="button" className="button" onClick={() => keep.takeUpdate()}>
        Take it
      </button>
    </div>
  );
}
