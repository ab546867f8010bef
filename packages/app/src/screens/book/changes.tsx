import { type MergeQuestion, mergeBooks, plainOf, rebaseDraft, wordsOf } from "@witnessmark/book";
import { useMemo, useState } from "react";
import { tally } from "../../words/figures.ts";
import { useChanges } from "./use-changes.ts";
import { useDesk } from "./use-desk.ts";

/** What the draft says otherwise than the revision it was begun from. */
export function Changes() {
  const desk = useDesk();
  const changes = useChanges();
  const [sure, setSure] = useState(false);
  const { draft } = desk;
  if (draft === null) return <p className="bk-none">Nothing is being changed.</p>;
  return (
    <article className="bk-page">
      <header className="bk-head">
        <h2>{draft.base === null ? "A new book" : `Changes since revision ${draft.base.revision}`}</h2>
      </header>
      <Merge />
      {draft.base === null ? (
        <p className="bk-none">It was never issued: all of it is new.</p>
      ) : changes.length === 0 ? (
        <p className="bk-none">It says the same as revision {draft.base.revision}.</p>
      ) : (
        <ul className="bk-changes">
          {changes.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
      {sure ? (
        <button type="button" className="button full" onClick={() => void desk.drop()}>
          Yes, throw {tally(draft.past.length, "step")} away
        </button>
      ) : (
        <button type="button" className="button full" onClick={() => setSure(true)}>
          Throw this draft away
        </button>
      )}
    </article>
  );
}

/** Whether another revision was issued since the draft was begun. */
export function useIssuedMeanwhile() {
  const { draft, entry } = useDesk();
  const inForce = entry?.state.books.at(-1);
  if (draft === null || inForce === undefined || draft.base?.text === inForce.text) return null;
  return inForce;
}

/** Another revision was issued since this draft was begun: it says so, and lays the draft onto it. */
export function Merge() {
  const desk = useDesk();
  const { draft } = desk;
  const issued = useIssuedMeanwhile();
  const [answers, setAnswers] = useState<ReadonlyMap<string, "mine" | "theirs">>(new Map());
  const theirs = issued?.text;
  const merged = useMemo(() => {
    if (draft === null || theirs === undefined) return null;
    try {
      return { ok: true as const, ...mergeBooks(draft.base?.text ?? theirs, draft.text, theirs, answers) };
    } catch (error) {
      return { ok: false as const, why: error instanceof Error ? error.message : String(error) };
    }
  }, [draft, theirs, answers]);
  if (draft === null || issued === null || merged === null) return null;
  const take = () => {
    if (!merged.ok) return;
    desk.change((before) =>
      rebaseDraft(before, { revision: issued.revision, text: issued.text }, merged.text),
    );
  };
  return (
    <section className="bk-merge" aria-label="Another revision was issued">
      <h3>Revision {issued.revision} was issued meanwhile</h3>
      <p>
        {issued.author.name} issued it after this draft was begun. Your changes are laid onto it; where both
        changed the same, you say which stands.
      </p>
      {merged.ok ? (
        <>
          {merged.questions.map((question) => (
            <Question
              key={question.key}
              question={question}
              onAnswer={(answer) => setAnswers((before) => new Map([...before, [question.key, answer]]))}
            />
          ))}
          <button
            type="button"
            className="button filled full"
            disabled={merged.questions.length > 0}
            onClick={take}
          >
            {merged.questions.length > 0
              ? `Answer ${tally(merged.questions.length, "question")} first`
              : `Lay my changes onto revision ${issued.revision}`}
          </button>
        </>
      ) : (
        <p className="bk-fault">They cannot be laid together yet: {merged.why}</p>
      )}
    </section>
  );
}

function Question({
  question,
  onAnswer,
}: {
  readonly question: MergeQuestion;
  readonly onAnswer: (answer: "mine" | "theirs") => void;
}) {
  const desk = useDesk();
  const base = desk.draft?.base?.text ?? "";
  const before = useMemo(() => {
    const read = plainOf(base, "the book");
    return read.ok ? read.plain : null;
  }, [base]);
  const words = (now: MergeQuestion["mine"]) =>
    wordsOf({ path: question.path, kind: "value", was: question.was, now }, before, desk.plain);
  return (
    <fieldset className="bk-question">
      <legend>Which stands?</legend>
      <div className="choices">
        <button type="button" onClick={() => onAnswer("mine")}>
          Mine: {words(question.mine)}
        </button>
        <button type="button" onClick={() => onAnswer("theirs")}>
          Theirs: {words(question.theirs)}
        </button>
      </div>
    </fieldset>
  );
}
