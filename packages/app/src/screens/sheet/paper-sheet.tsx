import type { Book } from "@witnessmark/book";
import type { Sheet, SheetNote, SheetReading } from "@witnessmark/sheet";
import { Mark } from "../../marks/mark.tsx";
import { ROLE_NAMES, ROLES } from "../../words/people.ts";
import { firstPage } from "./first-page.ts";
import { PaperMass, PaperNumbers, Unplanned } from "./paper-figures.tsx";
import { SheetPlan } from "./sheet-plan.tsx";

interface PaperSheetProps {
  readonly sheet: Sheet;
  readonly book: Book;
}

/** Readings beside the drawing of a sheet without numbers; more of them go under the notes, or overleaf. */
const BESIDE = 11;
/** Open things told one by one; the rest are named in one paragraph. */
const OPEN_TOLD = 5;
const COLUMNS = 3;
const READING_ROW_px = 19;

/** The sheet as it prints on A4 or Letter: borders and strokes only, since backgrounds may not print. */
export function PaperSheet({ sheet, book }: PaperSheetProps) {
  const figures = sheet.flight?.figures ?? null;
  const beside = figures === null ? sheet.readings.slice(0, BESIDE) : [];
  const below = sheet.readings.slice(beside.length);
  const open = sheet.notes.filter((note) => note.status === "open");
  const told = [...sheet.notes.filter((note) => note.status !== "open"), ...open.slice(0, OPEN_TOLD)];
  const { here, overleaf, room, numbersFit } = firstPage(sheet, told);
  const rest = open.slice(OPEN_TOLD);
  // the paragraph of the rest follows the last note, and the readings follow that
  const isAllHere = overleaf.length === 0;
  const readingsHere =
    isAllHere && Math.ceil(below.length / COLUMNS) * READING_ROW_px + 12 + rest.length * 5 <= room;
  const hasOverleaf = !numbersFit || !isAllHere || (!readingsHere && below.length > 0);
  return (
    <article className="paper" aria-label="The sheet">
      {sheet.remark === undefined ? null : <p className="paper-remark">{sheet.remark}</p>}
      <div className="paper-frame">
        <Head sheet={sheet} />
        <div className={figures === null && beside.length === 0 ? "paper-mid paper-alone" : "paper-mid"}>
          <SheetPlan sheet={sheet} book={book} />
          {figures === null ? null : <PaperMass mass={figures.mass} />}
          {beside.length === 0 ? null : (
            <div>
              <h2>The readings</h2>
              <Readings rows={beside} />
            </div>
          )}
        </div>
        <Notes
          notes={here}
          rest={isAllHere ? rest : []}
          isNothing={sheet.notes.length === 0}
          overleaf={overleaf.length}
        />
        {readingsHere ? <MoreReadings rows={below} columns={COLUMNS} /> : null}
        {figures === null ? (
          <Unplanned isNamed={sheet.flight !== null} />
        ) : numbersFit ? (
          <PaperNumbers figures={figures} />
        ) : (
          <h2 className="paper-unplanned">The numbers, and where it tips over: overleaf</h2>
        )}
        <Foot sheet={sheet} />
      </div>
      <div className="paper-cut">
        <i aria-hidden="true" />
        <span>Take this half with you.</span>
        <span>Leave this half on the ground. The stripe shows that the two belong together.</span>
      </div>
      <Slip sheet={sheet} />
      {hasOverleaf ? (
        <section className="paper-overleaf">
          <p>
            {sheet.registration}, {sheet.date}, decision {sheet.signature?.hash.slice(0, 9) ?? "not signed"},
            continued
          </p>
          <div className="paper-frame">
            {figures === null || numbersFit ? null : <PaperNumbers figures={figures} />}
            {isAllHere ? null : <Notes notes={overleaf} rest={rest} isNothing={false} overleaf={0} />}
            {readingsHere || below.length === 0 ? null : (
              <>
                <h2>The readings</h2>
                <MoreReadings rows={below} columns={2} />
              </>
            )}
          </div>
        </section>
      ) : null}
    </article>
  );
}

interface MoreReadingsProps {
  readonly rows: readonly SheetReading[];
  readonly columns: number;
}

/** In columns; three leave no room for what is left to the limit. */
function MoreReadings({ rows, columns }: MoreReadingsProps) {
  if (rows.length === 0) return null;
  const each = Math.ceil(rows.length / columns);
  const starts = Array.from({ length: columns }, (_, column) => column * each);
  const isShort = columns > 2;
  return (
    <div className={isShort ? "paper-more" : "paper-more paper-two"}>
      {starts.map((start) => (
        <Readings key={start} rows={rows.slice(start, start + each)} short={isShort} />
      ))}
    </div>
  );
}

function Head({ sheet }: { readonly sheet: Sheet }) {
  const rules = sheet.flight?.figures?.rules;
  return (
    <div className="paper-top">
      <div className="paper-mark">
        <Mark status={sheet.status} size_px={68} />
      </div>
      <div>
        <h1 className={sheet.title.length > 19 ? "paper-long" : undefined}>{sheet.title}</h1>
        <p>
          <b>{sheet.registration}</b> {sheet.type}, {sheet.date}
          <br />
          {sheet.flight === null
            ? "No flight named"
            : `${sheet.flight.from} to ${sheet.flight.to}, off blocks ${sheet.flight.offBlocks}${rules === undefined ? "" : `, ${rules}`}`}
        </p>
      </div>
      <div className="paper-counts">
        {(["stop", "caution", "open", "clear"] as const).map((status) => (
          <div key={status}>
            <Mark status={status} size_px={26} silent />
            <b>{sheet.counts[status]}</b>
            {status}
          </div>
        ))}
      </div>
    </div>
  );
}

/** @param short without what is left to the limit: for those that are clear, when there are many */
function Readings({
  rows,
  short = false,
}: {
  readonly rows: readonly SheetReading[];
  readonly short?: boolean;
}) {
  return (
    <table className="paper-readings">
      <thead className="out-of-sight">
        <tr>
          <th scope="col">What</th>
          <th scope="col">Read</th>
          <th scope="col">Left</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={`${row.title}${row.says}`}>
            <th scope="row">{row.title}</th>
            <td>{row.status === "open" ? "" : figureOf(row.says)}</td>
            <td>
              {short ? null : <b>{row.margin}</b>}
              <Mark status={row.status} size_px={16} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** "5.00 bar" of "5.00 bar, 4.97 or more at 4 °C". */
const figureOf = (says: string) => says.split(/[,:]\s/)[0] ?? says;

interface NotesProps {
  readonly notes: readonly SheetNote[];
  /** Open things that are only named. */
  readonly rest: readonly SheetNote[];
  readonly isNothing: boolean;
  /** How many more are on the next page. */
  readonly overleaf: number;
}

function Notes({ notes, rest, isNothing, overleaf }: NotesProps) {
  if (isNothing) {
    return (
      <div className="paper-notes">
        <h2>Everything as the book says, and no closer to a limit than its gauge can tell</h2>
      </div>
    );
  }
  return (
    <div className="paper-notes">
      <h2>
        Not as the book says, close to a limit, or not known
        {overleaf === 0 ? null : (
          <span>{overleaf === 1 ? "1 more overleaf" : `${overleaf} more overleaf`}</span>
        )}
      </h2>
      <ol>
        {notes.map((note) => (
          <li key={note.number}>
            <i>{note.number}</i>
            <Mark status={note.status} size_px={20} />
            <span>
              <b>{note.title}.</b> {note.says}. {note.reason === undefined ? null : <>Why: {note.reason}</>}
            </span>
            <b>{note.margin}</b>
          </li>
        ))}
      </ol>
      {rest.length === 0 ? null : (
        <p className="paper-rest">
          <b>Also open:</b> {rest.map((note) => note.title).join("; ")}.
        </p>
      )}
    </div>
  );
}

/** Words that half a row cannot hold. */
const LONG = 26;

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function Foot({ sheet }: { readonly sheet: Sheet }) {
  const { signature } = sheet;
  const role = ROLES.find((each) => each === signature?.role);
  return (
    <div className="paper-low">
      <div>
        <h2>{sheet.holds}. Void at once when</h2>
        <ul className="paper-void">
          {sheet.voidWhen.map((words) => (
            <li key={words} className={words.length > LONG ? "paper-wide" : undefined}>
              {words}
            </li>
          ))}
        </ul>
        <p className="paper-warn">{sheet.caution}</p>
      </div>
      <div className="paper-block">
        <div className="paper-sign">
          <small>{role === undefined ? "Pilot in command" : ROLE_NAMES[role]}</small>
          <b>{signature?.by ?? ""}</b>
        </div>
        <div>
          <small>Signed</small>
          <b>{signature?.at ?? "not signed"}</b>
        </div>
        <div>
          <small>Decision{signature === null || signature.keySigned ? "" : ", no device key"}</small>
          <b>{signature?.hash ?? ""}</b>
        </div>
        <div>
          <small>Rests on: {lowerFirst(sheet.walk)}</small>
          <b>{sheet.restsOn}</b>
        </div>
        <div className="paper-notice">{sheet.notice}</div>
      </div>
    </div>
  );
}

function Slip({ sheet }: { readonly sheet: Sheet }) {
  return (
    <div className="paper-slip">
      {sheet.slip.map(({ label, value, after }) => (
        <div key={label}>
          <small>{label}</small>
          <b>{value}</b>
          {after === undefined ? null : ` ${after}`}
        </div>
      ))}
    </div>
  );
}
