import type { BookFault } from "@witnessmark/book";
import { countOf } from "../../words/figures.ts";
import "./add.css";

/** Everything that is wrong with a book, in the order of the file. */
export function BookFaults({
  fileName,
  faults,
}: {
  readonly fileName: string;
  readonly faults: readonly BookFault[];
}) {
  const inOrder = [...faults].sort((a, b) => a.line - b.line || a.column - b.column);
  return (
    <section className="book-faults" aria-label="What is wrong with the book">
      <p className="trouble" role="alert">
        {countOf(faults.length, "fault")} in {fileName}. Nothing of it was taken.
      </p>
      <ol>
        {inOrder.map((fault) => (
          <li key={`${fault.line}:${fault.column}:${fault.path}:${fault.expected}`}>
            <p className="fault-place">
              {fault.line === 0 ? "The file as a whole" : `Line ${fault.line}, column ${fault.column}`}
              {fault.path === "" ? null : <code>{fault.path}</code>}
            </p>
            <dl className="parts">
              <dt>Found</dt>
              <dd>{fault.found}</dd>
              <dt>Expected</dt>
              <dd>{fault.expected}</dd>
              {fault.remedy === undefined ? null : (
                <>
                  <dt>Do</dt>
                  <dd>{fault.remedy}</dd>
                </>
              )}
            </dl>
          </li>
        ))}
      </ol>
    </section>
  );
}
