import { readTable, type Table, textOfFile } from "@witnessmark/record";
import { type ChangeEvent, useEffect, useMemo, useRef, useState } from "react";
import { AircraftFrame } from "../../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../../frame/open-aircraft.ts";
import { useMinute } from "../../../preferences/clock.ts";
import { href } from "../../../routes/route.ts";
import { tally } from "../../../words/figures.ts";
import { Bundles } from "./bundles.tsx";
import { Columns } from "./columns.tsx";
import { type Plan, planOf, type Settled, settleFirst } from "./plan.ts";
import { Preview } from "./preview.tsx";
import { Question } from "./question.tsx";
import { useBringIn } from "./use-bring-in.ts";
import "../../add/add.css";
import "../record.css";
import "./import.css";

interface ChosenFile {
  readonly name: string;
  readonly table: Table;
}

interface FileTrouble {
  readonly name: string;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

/** A file with a reading history or with what runs out: matched, looked at row by row, and then brought in. */
export function ImportScreen({ open }: { readonly open: OpenAircraft }) {
  const { registration, book, state } = open;
  const [file, setFile] = useState<ChosenFile | null>(null);
  const [trouble, setTrouble] = useState<FileTrouble | null>(null);
  const [settled, setSettled] = useState<Settled | null>(null);
  const bringing = useBringIn(registration);
  const now_ms = useMinute() * 60_000;
  const person = open.person.id;
  const underWay = bringing.progress !== null;
  const held = useRef<Plan | null>(null);
  const plan = useMemo(
    () =>
      // what was looked at is what is brought in: a long file is not read again after each of its batches
      underWay
        ? held.current
        : file === null || settled === null
          ? null
          : planOf({ book, state, table: file.table, settled, now_ms, person }),
    [book, state, file, settled, now_ms, person, underWay],
  );
  useEffect(() => {
    held.current = plan;
  }, [plan]);
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const chosen = input.files?.[0];
    if (chosen === undefined) return;
    bringing.forget();
    setFile(null);
    setTrouble(null);
    const read = readTable(textOfFile(new Uint8Array(await chosen.arrayBuffer())));
    input.value = ""; // so that the same file can be chosen again once it is mended
    if (!read.ok) {
      setTrouble({ name: chosen.name, ...read });
      return;
    }
    setSettled(settleFirst(read.table, book));
    setFile({ name: chosen.name, table: read.table });
  };
  const isDone = bringing.brought !== null;
  return (
    <AircraftFrame open={open} sheet="record" title="Record" under="Bring in a file" className="record">
      <main className="record-one import">
        <a className="back-row" href={href({ at: "record", registration })}>
          Back to the record
        </a>
        <section className="one-section">
          <h2>Bring in a file</h2>
          <p className="record-small">
            Readings of the past, or what runs out, from a CSV file with a heading over each column. Nothing
            is kept before you have seen how each row reads.
          </p>
          <label className={`button tall full file-button${file === null ? " filled" : ""}`}>
            {file === null ? "Choose a CSV file" : "Choose another file"}
            <input
              type="file"
              accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values"
              disabled={bringing.progress !== null}
              onChange={(event) => void take(event)}
            />
          </label>
        </section>
        {trouble === null ? null : <NoTable trouble={trouble} />}
        {isDone || file !== null ? null : <Bundles state={state} bringing={bringing} />}
        {file === null || settled === null || plan === null || isDone ? null : (
          <>
            <Columns
              file={file.name}
              table={file.table}
              book={book}
              settled={settled}
              onSettle={setSettled}
              disabled={bringing.progress !== null}
            />
            <Open plan={plan} settled={settled} onSettle={setSettled} />
          </>
        )}
        {bringing.brought === null ? null : <Brought bringing={bringing} file={file?.name ?? ""} />}
        {bringing.trouble === null ? null : (
          <p className="trouble" role="alert">
            {bringing.trouble}
          </p>
        )}
        {plan === null && !isDone && bringing.progress !== null ? (
          <section className="one-section">
            <Progress progress={bringing.progress} />
          </section>
        ) : null}
        {plan === null || isDone ? null : <Act plan={plan} bringing={bringing} />}
      </main>
    </AircraftFrame>
  );
}

function NoTable({ trouble }: { readonly trouble: FileTrouble }) {
  return (
    <section className="one-section" aria-label="What is wrong with the file">
      <p className="trouble" role="alert">
        {trouble.name} does not read. Nothing of it was taken.
      </p>
      <dl className="parts">
        <dt>Found</dt>
        <dd>{trouble.found}</dd>
        <dt>Expected</dt>
        <dd>{trouble.expected}</dd>
        <dt>Do</dt>
        <dd>{trouble.remedy}</dd>
      </dl>
    </section>
  );
}

interface OpenProps {
  readonly plan: Plan;
  readonly settled: Settled;
  readonly onSettle: (settled: Settled) => void;
}

/** What is still open, one thing after the other; when nothing is, how the rows read. */
function Open({ plan, settled, onSettle }: OpenProps) {
  const [question] = plan.questions;
  if (plan.missing.length > 0) {
    return (
      <p className="trouble" role="alert">
        Say above which column is: {plan.missing.join("; ")}.
      </p>
    );
  }
  if (question !== undefined) {
    return (
      <Question
        key={question.id}
        question={question}
        left={plan.questions.length}
        onAnswer={(value) => onSettle({ ...settled, answers: { ...settled.answers, [question.id]: value } })}
      />
    );
  }
  return <Preview plan={plan} />;
}

type Bringing = ReturnType<typeof useBringIn>;

function Act({ plan, bringing }: { readonly plan: Plan; readonly bringing: Bringing }) {
  const { progress } = bringing;
  if (plan.missing.length > 0 || plan.questions.length > 0) return null;
  const [one, several] = plan.noun;
  return (
    <section className="one-section import-act">
      {progress === null ? (
        <button
          type="button"
          className="button filled tall full"
          disabled={plan.count === 0}
          onClick={() => void bringing.bringIn(plan)}
        >
          {plan.count === 0 ? "Nothing to bring in" : `Bring in ${tally(plan.count, one, several)}`}
        </button>
      ) : (
        <Progress progress={progress} />
      )}
    </section>
  );
}

function Progress({ progress }: { readonly progress: { readonly done: number; readonly of: number } }) {
  return (
    <div className="import-progress" role="status">
      <progress value={progress.done} max={progress.of} aria-label="How far it is" />
      <span>
        {progress.done} of {progress.of}
      </span>
    </div>
  );
}

function Brought({ bringing, file }: { readonly bringing: Bringing; readonly file: string }) {
  const { brought, progress } = bringing;
  if (brought === null) return null;
  const [one, several] = brought.noun;
  const isOne = brought.count === 1;
  const words = tally(brought.count, one, several);
  return (
    <section className="one-section import-act">
      <h3>{brought.takenBack ? "Taken back" : "Brought in"}</h3>
      <p role="status">
        {brought.takenBack
          ? `${words} no longer ${isOne ? "counts" : "count"}; the ledger keeps what was withdrawn.`
          : `${words} of ${file} ${isOne ? "is" : "are"} on the record.`}
      </p>
      {progress !== null ? (
        <Progress progress={progress} />
      ) : brought.takenBack ? null : (
        <button
          type="button"
          className="button tall full"
          onClick={() => void bringing.takeBack(brought.events, brought.noun)}
        >
          Take {isOne ? "it" : "them"} back
        </button>
      )}
    </section>
  );
}
