import type { Book } from "@witnessmark/book";
import type { Table } from "@witnessmark/record";
import { useMemo } from "react";
import { tally } from "../../../words/figures.ts";
import { choicesOf, type FileKind, type Settled, settleAs } from "./plan.ts";

interface ColumnsProps {
  readonly file: string;
  readonly table: Table;
  readonly book: Book;
  readonly settled: Settled;
  readonly onSettle: (settled: Settled) => void;
}

const KINDS: readonly { readonly kind: FileKind; readonly name: string }[] = [
  { kind: "readings", name: "Readings" },
  { kind: "timed", name: "What runs out" },
];

/** So many cells of a column show what it holds. */
const EXAMPLES = 3;

function examplesOf(table: Table, place: number): readonly string[] {
  const held = new Set<string>();
  for (const { cells } of table.rows) {
    const cell = cells[place] ?? "";
    if (cell !== "") held.add(cell);
    if (held.size === EXAMPLES) break;
  }
  return [...held];
}

/** Each column of the file, what it holds, and what it is taken for. */
export function Columns({ file, table, book, settled, onSettle }: ColumnsProps) {
  const choices = choicesOf(settled.kind, book);
  const examples = useMemo(() => table.headings.map((_heading, place) => examplesOf(table, place)), [table]);
  const match = (place: number, role: string) =>
    onSettle({
      ...settled,
      // one thing is in one column: what had it before is not wanted then
      columns: settled.columns.map((each, at) => (at === place ? role : each === role ? "" : each)),
      answers: {},
    });
  return (
    <section className="one-section" aria-label="Columns">
      <h3>What the columns are</h3>
      <p className="record-small">
        {file}: {tally(table.headings.length, "column")}, {tally(table.rows.length, "row")}.
      </p>
      <div className="choices import-kinds">
        {KINDS.map(({ kind, name }) => (
          <button
            key={kind}
            type="button"
            aria-pressed={settled.kind === kind}
            onClick={() => onSettle(settleAs(kind, table, book))}
          >
            {name}
          </button>
        ))}
      </div>
      <ul className="import-columns">
        {table.headings.map((heading, place) => {
          const held = examples[place] ?? [];
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two columns may have one heading; their order never changes
            <li key={place}>
              <label className="field">
                <span>
                  <b>{heading === "" ? `Column ${place + 1}` : heading}</b>
                  <small>{held.length === 0 ? "empty" : held.join(", ")}</small>
                </span>
                <select
                  value={settled.columns[place] ?? ""}
                  onChange={(event) => match(place, event.target.value)}
                >
                  <option value="">Not wanted</option>
                  {choices.map(({ value, label }) => (
                    <option key={value} value={value}>
                      {label}
                    </option>
                  ))}
                </select>
              </label>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
