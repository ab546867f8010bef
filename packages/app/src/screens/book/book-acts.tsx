import { nextRevision } from "@witnessmark/book";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { href } from "../../routes/route.ts";
import { draftOfBook } from "./book-screen.tsx";
import { useDesk } from "./use-desk.ts";

/** What can be done with the book as a whole. */
export function BookActs({ page }: { readonly snapshot: KeepSnapshot; readonly page: string | undefined }) {
  const desk = useDesk();
  const { registration, draft, book } = desk;
  const to = (next: string | undefined) =>
    href({ at: "book", registration, ...(next === undefined ? {} : { page: next }) });
  const text = page === "text" ? undefined : "text";
  if (draft === null) {
    return (
      <div className="bk-acts">
        <a className="button" href={to(text)}>
          {text === undefined ? "As pages" : "As text"}
        </a>
        <span>
          Revision {book?.revision ?? "?"} is in force. It never changes: a change is a new revision.
        </span>
        <button type="button" className="button filled" onClick={() => void desk.begin(draftOfBook(desk))}>
          Change this book
        </button>
      </div>
    );
  }
  return (
    <div className="bk-acts bk-acts-draft">
      <a className="button" href={to(text)}>
        {text === undefined ? "As pages" : "As text"}
      </a>
      <button type="button" className="button" disabled={draft.past.length === 0} onClick={desk.undo}>
        Undo
      </button>
      <button type="button" className="button" disabled={draft.future.length === 0} onClick={desk.redo}>
        Redo
      </button>
      <span className="bk-acts-words">
        {draft.base === null
          ? "A draft until somebody issues it."
          : `Decisions under revision ${draft.base.revision} keep it; the walk in hand is judged by the new one.`}
      </span>
      {page === "issue" ? (
        <a className="button" href={to(undefined)}>
          Back to the pages
        </a>
      ) : (
        <a
          className="button filled"
          href={to("issue")}
          aria-label={`Sign and issue revision ${nextRevision(draft)}`}
        >
          <span className="bk-acts-wide">Sign and issue revision {nextRevision(draft)}</span>
          <span className="bk-acts-narrow">Sign and issue</span>
        </a>
      )}
    </div>
  );
}
