import {
  type BookPath,
  type Plain,
  pastedRows,
  resizedCells,
  spaced,
  valueAt,
  withBlock,
} from "@witnessmark/book";
import { type ClipboardEvent, useEffect, useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { capital } from "../../words/capital.ts";
import { toldFault } from "./fault-words.ts";
import { plainText } from "./field-input.tsx";
import { useDesk } from "./use-desk.ts";

interface Axis {
  readonly name: string;
  readonly unit: string;
  readonly values: readonly Plain[];
}

function axesOf(table: Plain | undefined): readonly Axis[] {
  const axes = valueAt(table, ["axes"]);
  if (!Array.isArray(axes)) return [];
  return axes.map((axis: Plain): Axis => {
    const values = valueAt(axis, ["values"]);
    return {
      name: plainText(valueAt(axis, ["name"])),
      unit: plainText(valueAt(axis, ["unit"])),
      values: Array.isArray(values) ? values : [],
    };
  });
}

/** The cells of a table as a grid: the last axis across, the one before it down, the others chosen. */
export function TableGrid({ path }: { readonly path: BookPath }) {
  const desk = useDesk();
  const [layers, setLayers] = useState<readonly number[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  const table = valueAt(desk.plain ?? undefined, path);
  const axes = axesOf(table);
  const cells = valueAt(table, ["cells"]) ?? [];
  const [down, across] = axes.length === 1 ? [undefined, axes[0]] : axes.slice(-2);
  if (across === undefined) return <p className="note">Name its axes first.</p>;
  const outer = axes
    .slice(0, -2)
    .map((axis, index) => Math.min(layers[index] ?? 0, Math.max(0, axis.values.length - 1)));
  const isRead = desk.draft === null;
  const lengths = axes.map(({ values }) => values.length);
  const fits = JSON.stringify(resizedCells(cells, lengths)) === JSON.stringify(cells);
  const cellPath = (row: number, column: number): BookPath => [
    ...path,
    "cells",
    ...outer,
    ...(down === undefined ? [] : [row]),
    column,
  ];
  const paste = (event: ClipboardEvent, row: number, column: number) => {
    const text = event.clipboardData.getData("text/plain");
    if (!/[\t\n]/.test(text.trim())) return;
    event.preventDefault();
    try {
      desk.edit([{ set: [...path, "cells"], to: withBlock(cells, outer, [row, column], pastedRows(text)) }]);
      setTrouble(null);
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    }
  };
  const titleOf = (axis: Axis) => `${capital(spaced(axis.name))}${axis.unit === "" ? "" : `, ${axis.unit}`}`;
  return (
    <div className="bk-grid">
      {axes.slice(0, -2).map((axis, index) => (
        <label className="field" key={axis.name}>
          <span>{titleOf(axis)}</span>
          <select
            value={outer[index]}
            onChange={(event) =>
              setLayers(
                axes
                  .slice(0, -2)
                  .map((_, at) => (at === index ? Number(event.target.value) : (outer[at] ?? 0))),
              )
            }
          >
            {axis.values.map((value, at) => (
              <option key={plainText(value)} value={at}>
                {plainText(value)}
              </option>
            ))}
          </select>
        </label>
      ))}
      {fits || isRead ? null : (
        <button
          type="button"
          className="button"
          onClick={() => desk.edit([{ set: [...path, "cells"], to: resizedCells(cells, lengths) }])}
        >
          Make its cells fit the axes
        </button>
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and read alone it holds nothing else to focus */}
      <section className="bk-grid-scroll" tabIndex={0} aria-label="Cells">
        <table>
          <caption>
            {down === undefined ? "" : `Down: ${titleOf(down)}. `}Across: {titleOf(across)}.
          </caption>
          <thead>
            <tr>
              {down === undefined ? null : <td />}
              {across.values.map((value) => (
                <th key={plainText(value)} scope="col">
                  {plainText(value)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {(down?.values ?? [null]).map((value, row) => (
              <tr key={plainText(value)}>
                {down === undefined ? null : <th scope="row">{plainText(value)}</th>}
                {across.values.map((over, column) => {
                  const cell = valueAt(table, cellPath(row, column).slice(path.length));
                  return (
                    <td key={plainText(over)}>
                      {isRead ? (
                        plainText(cell) || "–"
                      ) : (
                        <Cell
                          label={`${down === undefined ? "" : `${titleOf(down)} ${plainText(value)}, `}${titleOf(across)} ${plainText(over)}`}
                          value={plainText(cell)}
                          isWrong={desk.faultsAt(cellPath(row, column)).length > 0}
                          onKeep={(to) => fits && desk.edit([{ set: cellPath(row, column), to }])}
                          onPaste={(event) => paste(event, row, column)}
                        />
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <CellFaults path={path} />
      <Trouble words={trouble} onDismiss={() => setTrouble(null)} />
    </div>
  );
}

/** Faults of single cells, each with its place in words. */
function CellFaults({ path }: { readonly path: BookPath }) {
  const { faults, plain } = useDesk();
  const here = `performance.tables[${String(path.at(-1))}].cells[`;
  const found = faults.filter((fault) => fault.path.startsWith(here));
  if (found.length === 0) return null;
  return (
    <ul className="bk-fault">
      {found.slice(0, 6).map((fault) => (
        <li key={fault.path}>{toldFault(fault, plain).text}</li>
      ))}
    </ul>
  );
}

interface CellProps {
  readonly label: string;
  readonly value: string;
  readonly isWrong: boolean;
  readonly onKeep: (to: Plain) => void;
  readonly onPaste: (event: ClipboardEvent) => void;
}

function Cell({ label, value, isWrong, onKeep, onPaste }: CellProps) {
  const [typed, setTyped] = useState(value);
  useEffect(() => setTyped(value), [value]);
  const keep = () => {
    const text = typed.trim().replace("−", "-").replace(",", ".");
    if (text === value) return;
    const figure = Number(text);
    onKeep(text === "" || text === "-" ? null : Number.isNaN(figure) ? text : figure);
  };
  return (
    <input
      aria-label={label}
      aria-invalid={isWrong}
      inputMode="decimal"
      value={typed}
      onChange={(event) => setTyped(event.target.value)}
      onBlur={keep}
      onPaste={onPaste}
    />
  );
}
