import { readLongTable, type Table, textOfFile } from "@witnessmark/record";
import { type ChangeEvent, useState } from "react";
import { AircraftFrame } from "../../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../../frame/open-aircraft.ts";
import { href } from "../../../routes/route.ts";
import { Act, Brought, HowFar, Under } from "./bringing.tsx";
import { Bundles } from "./bundles.tsx";
import { Columns } from "./columns.tsx";
import { type Plan, rest, type Settled, settleFirst } from "./plan.ts";
import { Preview } from "./preview.tsx";
import { Question } from "./question.tsx";
import { useBringIn } from "./use-bring-in.ts";
import { usePlan } from "./use-plan.ts";
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
  const [isOpening, setIsOpening] = useState(false);
  const bringing = useBringIn(registration);
  const { underWay, brought } = bringing;
  const {
    plan,
    read,
    trouble: misread,
  } = usePlan(open, file?.table ?? null, settled, underWay !== null || brought !== null);
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const chosen = input.files?.[0];
    if (chosen === undefined) return;
    bringing.forget();
    setFile(null);
    setTrouble(null);
    setIsOpening(true);
    try {
      const opened = await readLongTable(textOfFile(new Uint8Array(await chosen.arrayBuffer())), rest);
      if (!opened.ok) {
        setTrouble({ name: chosen.name, ...opened });
        return;
      }
      setSettled(settleFirst(opened.table, book));
      setFile({ name: chosen.name, table: opened.table });
    } catch (error) {
      // it was moved, or what holds it has taken it back
      setTrouble({
        name: chosen.name,
        found: error instanceof Error ? error.message : String(error),
        expected: "a file that can be read",
        remedy: "Choose it again.",
      });
    } finally {
      setIsOpening(false);
      input.value = ""; // so that the same file can be chosen again once it is mended
    }
  };
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
              disabled={underWay !== null || isOpening}
              onChange={(event) => void take(event)}
            />
          </label>
        </section>
        {isOpening ? (
          <section className="one-section">
            <p role="status">Opening the file</p>
          </section>
        ) : null}
        {trouble === null ? null : <NoTable trouble={trouble} />}
        {brought === null && file === null && underWay === null ? (
          <Bundles state={state} bringing={bringing} />
        ) : null}
        {file === null || settled === null || brought !== null || underWay !== null ? null : (
          <>
            <Columns
              file={file.name}
              table={file.table}
              book={book}
              settled={settled}
              onSettle={setSettled}
            />
            {plan === null ? (
              <Reading read={read} of={file.table.rows.length} trouble={misread} />
            ) : (
              <>
                <Open plan={plan} settled={settled} onSettle={setSettled} />
                <Act plan={plan} bringing={bringing} />
              </>
            )}
          </>
        )}
        {bringing.trouble === null ? null : (
          <p className="trouble" role="alert">
            {bringing.trouble}
          </p>
        )}
        {underWay === null ? (
          <Brought bringing={bringing} file={file?.name ?? ""} />
        ) : (
          <Under now={underWay} onStop={bringing.stop} />
        )}
      </main>
    </AircraftFrame>
  );
}

interface ReadingProps {
  readonly read: number;
  readonly of: number;
  readonly trouble: string | null;
}

function Reading({ read, of, trouble }: ReadingProps) {
  return (
    <section className="one-section">
      {trouble === null ? (
        <HowFar words="Read" done={read} of={of} />
      ) : (
        <p className="trouble" role="alert">
          {trouble}
        </p>
      )}
    </section>
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
