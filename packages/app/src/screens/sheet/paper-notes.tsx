import { ended, type Sheet, type SheetAlsoOpen, type SheetNote } from "@witnessmark/sheet";
import { Mark } from "../../marks/mark.tsx";

interface PaperNotesProps {
  readonly notes: readonly SheetNote[];
  readonly alsoOpen: readonly SheetAlsoOpen[];
  /** Why it was decided so, of the whole. */
  readonly why?: Sheet["why"];
  readonly isNothing: boolean;
  /** How many more are on the next page. */
  readonly overleaf: number;
}

/** What is not as the book says, too close or not known, each with its number, and what else is open by name. */
export function PaperNotes({ notes, alsoOpen, why, isNothing, overleaf }: PaperNotesProps) {
  return (
    <div className="paper-notes">
      <h2>
        {isNothing
          ? "Everything as the book says, and no closer to a limit than its gauge can tell"
          : "Not as the book says, close to a limit, or not known"}
        {overleaf === 0 ? null : <span>{overleaf} more overleaf</span>}
      </h2>
      {why === undefined ? null : (
        <p className="paper-rest">
          <b>Why:</b> {ended(why)}
        </p>
      )}
      {notes.length === 0 ? null : (
        <ol>
          {notes.map((note) => (
            <li key={note.number}>
              <i>{note.number}</i>
              <Mark status={note.status} size_px={20} />
              <span>
                <b>{ended(note.title)}</b> {ended(note.says)}
                {note.reason === undefined ? null : <> Why: {ended(note.reason)}</>}
              </span>
              <b>{note.margin}</b>
            </li>
          ))}
        </ol>
      )}
      {alsoOpen.map(({ titles, reason }) => (
        <p className="paper-rest" key={reason ?? ""}>
          <b>Also open:</b> {ended(titles.join("; "))}
          {reason === undefined ? null : <> Why: {ended(reason)}</>}
        </p>
      ))}
    </div>
  );
}
