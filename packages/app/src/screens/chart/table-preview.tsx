import { type PerformanceQuantity, TRENDS } from "@witnessmark/book";
import { type Cells, oddCells, type PaperTable } from "@witnessmark/chart";
import type { Trend } from "@witnessmark/engine";
import { figure } from "../../words/figures.ts";
import { AXES, AXIS_NAMES } from "./wanted.ts";

interface TablePreviewProps {
  readonly table: PaperTable;
  readonly quantity: PerformanceQuantity;
}

const MOST_SAID = 6;

/** The table as it stands, one grid for each value of its outer axes, and the cells that go against the others. */
export function TablePreview({ table, quantity }: TablePreviewProps) {
  const odd = oddCells(table, trendsOf(quantity));
  const places = new Set(odd.map(({ indices }) => indices.join(" ")));
  return (
    <>
      {grids(table).map(({ key, title, at, rows }) => (
        <Grid key={key} table={table} title={title} at={at} rows={rows} odd={places} />
      ))}
      {odd.length === 0 ? (
        <p className="chart-note">No figure stands out from those beside it.</p>
      ) : (
        <>
          <p className="chart-wrong">
            {odd.length === 1
              ? "One figure stands out. Look whether it is as on the paper:"
              : `${odd.length} figures stand out. Look whether they are as on the paper:`}
          </p>
          <ul className="chart-odd">
            {odd.slice(0, MOST_SAID).map(({ says }) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

interface GridProps {
  readonly table: PaperTable;
  readonly title: string;
  readonly at: readonly number[];
  readonly rows: Cells;
  readonly odd: ReadonlySet<string>;
}

function Grid({ table, title, at, rows, odd }: GridProps) {
  const across = table.axes.at(-1);
  const down = table.axes.length > 1 ? table.axes.at(-2) : undefined;
  const list = down === undefined ? [rows] : rows;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls, and holds nothing else to focus
    <section className="chart-table" tabIndex={0} aria-label={`The table${title === "" ? "" : `, ${title}`}`}>
      <table>
        <caption>
          {title === "" ? "" : `${title}. `}
          {down === undefined ? "" : `Down: ${nameOf(down.name)}, ${down.unit || "plain"}. `}
          Across: {nameOf(across?.name ?? "")}, {across?.unit || "plain"}. In {table.unit || "plain numbers"}.
        </caption>
        <thead>
          <tr>
            {down === undefined ? null : <td />}
            {across?.values.map((value) => (
              <th key={value} scope="col">
                {plain(value)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {list.map((row, i) => (
            <tr key={down?.values[i] ?? 0}>
              {down === undefined ? null : <th scope="row">{plain(down.values[i] ?? 0)}</th>}
              {(Array.isArray(row) ? row : []).map((cell: Cells | number | null, j) => {
                const isOdd = odd.has([...at, ...(down === undefined ? [] : [i]), j].join(" "));
                return (
                  <td key={across?.values[j] ?? j} className={isOdd ? "odd" : undefined}>
                    {typeof cell === "number" ? plain(cell) : "none"}
                    {isOdd ? " ?" : ""}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The outer axes, one grid for each of their values. */
function grids({ axes, cells }: PaperTable) {
  const outer = axes.slice(0, -2);
  let found: readonly { readonly at: readonly number[]; readonly title: string; readonly rows: Cells }[] = [
    { at: [], title: "", rows: cells },
  ];
  for (const { name, unit, values } of outer) {
    found = found.flatMap(({ at, title, rows }) =>
      values.map((value, i) => {
        const inner = rows[i];
        const here = `${nameOf(name)} ${plain(value)} ${unit}`.trim();
        return {
          at: [...at, i],
          title: title === "" ? here : `${title}, ${here}`,
          rows: Array.isArray(inner) ? inner : [],
        };
      }),
    );
  }
  return found.map((grid) => ({ ...grid, key: grid.at.join(" ") }));
}

function trendsOf(quantity: PerformanceQuantity): Readonly<Record<string, Trend>> {
  const trends: Record<string, Trend> = {};
  for (const [name, trend] of Object.entries(TRENDS[quantity])) trends[name.split("_")[0] ?? name] = trend;
  return trends;
}

const nameOf = (name: string): string => {
  const known = AXIS_NAMES.find((each) => each === name);
  return known === undefined ? name : AXES[known].name;
};

const plain = (value: number): string => figure(value, (String(value).split(".")[1] ?? "").length);
