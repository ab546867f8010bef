import {
  type BookFault,
  draftAfterIssue,
  issuedText,
  nextRevision,
  SPARE_SECTIONS,
  spaced,
  valueAt,
} from "@witnessmark/book";
import { useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { openWalk } from "../../walk/open-walk.ts";
import { capital } from "../../words/capital.ts";
import { isoWithOffset } from "../../words/dates.ts";
import { listed } from "../../words/listed.ts";
import { BookFaults } from "../add/book-faults.tsx";
import { Merge, useIssuedMeanwhile } from "./changes.tsx";
import { FaultsAndDoubts } from "./faults-and-doubts.tsx";
import { useBefore, useChanges } from "./use-changes.ts";
import { useDesk } from "./use-desk.ts";
import { weighingQuestion } from "./weighing-question.ts";

/** The parts of the book that faults are in, where it can do without them; nothing when one is elsewhere. */
function partsToLeaveOut(faults: readonly BookFault[]): readonly string[] | undefined {
  const tops = new Set(faults.map(({ path }) => /^[A-Za-z]+/.exec(path)?.[0] ?? ""));
  const spare: readonly string[] = SPARE_SECTIONS;
  return [...tops].every((top) => spare.includes(top)) ? [...tops] : undefined;
}

/** A draft becomes a revision: a named person issues it, and it never changes again. */
export function Issue({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const desk = useDesk();
  const keep = useKeep();
  const keeping = useKeeping();
  const changes = useChanges();
  const asked = weighingQuestion(useBefore(), desk.plain);
  const meanwhile = useIssuedMeanwhile();
  const [refused, setRefused] = useState<readonly BookFault[]>([]);
  const { draft, registration, faults, isRead, entry } = desk;
  if (draft === null) return <p className="bk-none">Nothing is being changed.</p>;
  const revision = nextRevision(draft);
  const by = snapshot.person?.name ?? "";
  const leaveOut = partsToLeaveOut(faults);
  const without = faults.length === 0 ? [] : (leaveOut ?? []);
  const noticed = valueAt(desk.plain ?? undefined, ["notice"]);
  const notice = typeof noticed === "string" ? noticed : "";
  const walking = entry === undefined ? undefined : openWalk(entry.state);
  const canIssue = isRead && leaveOut !== undefined && meanwhile === null;
  const issue = () =>
    keeping.keep(async () => {
      const on = isoWithOffset(Date.now()).slice(0, 10);
      const text = issuedText(draft, { by, on, without });
      const result = await keep.adoptBook(text, `${registration.toLowerCase()}-rev-${revision}.yaml`);
      if ("faults" in result) {
        setRefused(result.faults);
        return;
      }
      if (without.length === 0) await desk.drop();
      else desk.change((before) => draftAfterIssue(before, text, by, on));
      go({ at: "aircraft", registration: result.registration }, "replace");
    });
  return (
    <article className="bk-page">
      <header className="bk-head">
        <h2>Sign and issue revision {revision}</h2>
      </header>
      <Merge />
      <p className="bk-says">
        {by} issues it. It is then in force, and never changes again. The approved manual, the authority’s
        rules and licensed mechanics come first.
      </p>
      {notice === "" ? null : (
        <>
          <p className="bk-missing">
            It says of itself: “{notice}” These words go with it. Change them once they are true no more.
          </p>
          <a className="button" href={href({ at: "book", registration, page: "aircraft" })}>
            What it is fit for
          </a>
        </>
      )}
      {walking === undefined ? null : (
        <p className="bk-says">
          A walk is open. From then on it is judged by revision {revision}: what was answered in it stays, as
          far as that has those checks; what is new is asked.
        </p>
      )}
      {draft.base === null ? null : (
        <>
          <h3>{changes.length === 0 ? "Nothing has changed" : "What changes"}</h3>
          <ul className="bk-changes">
            {changes.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </>
      )}
      {asked === undefined ? null : (
        <>
          <p className="bk-missing">{asked}</p>
          <a className="button" href={href({ at: "book", registration, page: "loading" })}>
            Look at the weighing
          </a>
        </>
      )}
      <FaultsAndDoubts />
      {without.length === 0 ? null : (
        <p className="bk-missing">
          {capital(listed(without.map(spaced)))} {without.length === 1 ? "is" : "are"} not complete. Revision{" "}
          {revision} is issued without: what depends on that stays open. In the draft it stays.
        </p>
      )}
      {leaveOut === undefined ? (
        <p className="bk-missing">
          It cannot be issued with faults in its shape, points or checks. Mend these first.
        </p>
      ) : null}
      {refused.length === 0 ? null : <BookFaults fileName="the draft" faults={refused} />}
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <button
        type="button"
        className="button filled tall full"
        disabled={!canIssue}
        aria-busy={keeping.busy}
        onClick={() => void issue()}
      >
        {isRead ? `Issue revision ${revision} as ${by}` : "Being read"}
      </button>
      <a className="quiet" href={href({ at: "book", registration })}>
        Not yet
      </a>
    </article>
  );
}
