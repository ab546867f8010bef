import type { Book } from "@witnessmark/book";
import type { Table } from "@witnessmark/record";
import { tally } from "../../../words/figures.ts";
import { choicesOf, type FileKind, type Settled, settleAs } from "./plan.ts";

interface ColumnsProps {
  readonly file: string;
  readonly table: Table;
  readonly book: Book;
  readonly settled: Settled;
  readonly onSettle: (settled: Settled) => void;
  readonly disabled: boolean;
}

const KINDS: readonly { readonly kind: FileKind; readonly name: string }[] = [
  { kind: "readings", name: "Readings" },
  { kind: "timed", name: "What runs out" },
];

/** So many cells of a column show what it holds. */
const EXAMPLES = 3;

/** Each column of the file, what it holds, and what it is taken for. */
export function Columns({ file, table, book, settled, onSettle, disabled }: ColumnsProps) {
  const choices = choicesOf(settled.kind, book);
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
            disabled={disabled}
            onClick={() => onSettle(settleAs(kind, table, book))}
          >
            {name}
          </button>
        ))}
      </div>
      <ul className="import-columns">
        {table.headings.map((heading, place) => {
          const held = [
            ...new Set(table.rows.map(({ cells }) => cells[place] ?? "").filter((cell) => cell !== "")),
          ].slice(0, EXAMPLES);
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
                  disabled={disabled}
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
