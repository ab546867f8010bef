import type { Book } from "@witnessmark/book";
import type { PartedNumbers, Sheet, SheetFigures, SheetNote, SheetReading } from "@witnessmark/sheet";
import { Mark } from "../../marks/mark.tsx";
import { lower } from "../../words/capital.ts";
import { ROLE_NAMES, ROLES } from "../../words/people.ts";
import { alsoOpenHeight, firstPage } from "./first-page.ts";
import { PaperBrief } from "./paper-brief.tsx";
import { PaperMass, PaperNumbers, Unplanned } from "./paper-figures.tsx";
import { PaperNotes } from "./paper-notes.tsx";
import { SheetPlan } from "./sheet-plan.tsx";

interface PaperSheetProps {
  readonly sheet: Sheet;
  readonly book: Book;
}

/** Readings beside the drawing of a sheet without numbers; more of them go under the notes, or overleaf. */
const BESIDE = 11;
const COLUMNS = 3;
const READING_ROW_px = 19;

/** The sheet as it prints on A4 or Letter: borders and strokes only, since backgrounds may not print. */
export function PaperSheet({ sheet, book }: PaperSheetProps) {
  const figures = sheet.flight?.figures ?? null;
  const beside = figures === null ? sheet.readings.slice(0, BESIDE) : [];
  const below = sheet.readings.slice(beside.length);
  const { here, overleaf, room, numbers } = firstPage(sheet);
  // what else is open follows the last note, and the readings follow that
  const also_px = alsoOpenHeight(sheet.alsoOpen);
  const isAllHere = overleaf.length === 0 && also_px <= room;
  const readingsHere = isAllHere && Math.ceil(below.length / COLUMNS) * READING_ROW_px + 12 + also_px <= room;
  const hasOverleaf = figures !== null || !isAllHere || (!readingsHere && below.length > 0);
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
        <PaperNotes
          notes={here}
          alsoOpen={isAllHere ? sheet.alsoOpen : []}
          why={sheet.why}
          isNothing={sheet.notes.length === 0}
          overleaf={isAllHere ? 0 : overleaf.length + tallyOf(sheet.alsoOpen)}
        />
        {readingsHere ? <MoreReadings rows={below} columns={COLUMNS} /> : null}
        {figures === null ? (
          <Unplanned isNamed={sheet.flight !== null} />
        ) : numbers !== undefined ? (
          <PaperNumbers numbers={numbers.here} follow={numbers.overleaf.length} tips={figures.tips} />
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
        <Overleaf
          sheet={sheet}
          figures={figures}
          numbers={numbers}
          notes={overleaf}
          alsoOpen={isAllHere ? [] : sheet.alsoOpen}
          readings={readingsHere ? [] : below}
        />
      ) : null}
    </article>
  );
}

interface OverleafProps {
  readonly sheet: Sheet;
  readonly figures: SheetFigures | null;
  readonly numbers: PartedNumbers | undefined;
  readonly notes: readonly SheetNote[];
  readonly alsoOpen: Sheet["alsoOpen"];
  readonly readings: readonly SheetReading[];
}

/** What was planned and counted with, and everything that has no room on the first page. */
function Overleaf({ sheet, figures, numbers, notes, alsoOpen, readings }: OverleafProps) {
  return (
    <section className="paper-overleaf">
      <p>
        {sheet.registration}, {sheet.date}, decision {sheet.signature?.hash.slice(0, 9) ?? "not signed"},
        continued
      </p>
      <div className="paper-frame">
        {figures === null ? null : numbers === undefined ? (
          <PaperNumbers numbers={figures.numbers} tips={figures.tips} />
        ) : (
          <PaperNumbers numbers={numbers.overleaf} title="The numbers, continued" />
        )}
        {figures === null ? null : <PaperBrief brief={figures.brief} />}
        {notes.length === 0 && alsoOpen.length === 0 ? null : (
          <PaperNotes notes={notes} alsoOpen={alsoOpen} isNothing={false} overleaf={0} />
        )}
        {readings.length === 0 ? null : (
          <>
            <h2>The readings</h2>
            <MoreReadings rows={readings} columns={2} />
          </>
        )}
      </div>
    </section>
  );
}

/** How many names there are. */
const tallyOf = (alsoOpen: Sheet["alsoOpen"]): number =>
  alsoOpen.reduce((sum, { titles }) => sum + titles.length, 0);

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

/** Words that half a row cannot hold. */
const LONG = 26;

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
          <small>Rests on: {lower(sheet.walk)}</small>
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
