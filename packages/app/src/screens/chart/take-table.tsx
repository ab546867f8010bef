import type { PerformanceQuantity } from "@witnessmark/book";
import { idFrom } from "@witnessmark/book";
import {
  bookTable,
  type EyeReading,
  flatCells,
  type NamedAxis,
  type PaperTable,
  roundValues,
  stepFor,
  tableOfCurves,
  tableYaml,
} from "@witnessmark/chart";
import { UNITS, type UnitId } from "@witnessmark/engine";
import { useState } from "react";
import type { ChartWork } from "./chart-work.ts";
import { CheckByEye } from "./check-by-eye.tsx";
import { TextIn } from "./fields.tsx";
import { numberOf, type PanelRead, valueAt } from "./read-work.ts";
import { TablePreview } from "./table-preview.tsx";
import { AXES, AXIS_NAMES, type AxisName, type FromPaper, QUANTITIES, type Wanted } from "./wanted.ts";

interface TakeTableProps {
  readonly work: ChartWork;
  readonly panels: readonly PanelRead[];
  readonly wanted: Wanted | undefined;
  readonly onTaken: (made: FromPaper) => void;
}

interface AxisAsked {
  readonly name: AxisName;
  readonly unit: UnitId;
  readonly suggested: readonly number[];
}

/** The grid that is asked of the curves, the table they give, the two readings by eye, and the taking. */
export function TakeTable({ work, panels, wanted, onTaken }: TakeTableProps) {
  const [typed, setTyped] = useState<Readonly<Partial<Record<AxisName, string>>>>({});
  const [step, setStep] = useState<string | null>(null);
  const asked = axesAsked(work, panels);
  const last = panels.at(-1)?.frame;
  const families = panels.map(({ family }) => family).filter((family) => family !== undefined);
  if (last === undefined || families.length !== panels.length) return null;
  const suggestedStep = stepFor(last.ySpan);
  const stepTyped = step === null ? suggestedStep : numberOf(step);
  const axes = asked.map(({ name, unit, suggested }): NamedAxis => {
    const text = typed[name];
    return { name, unit: UNITS[unit].symbol, values: text === undefined ? suggested : listOf(text) };
  });
  const wrong = wrongTogether(axes);
  const isRight =
    wrong === undefined && stepTyped > 0 && axes.every(({ values }) => wrongAxisValues(values) === undefined);
  const table = isRight ? tableOf(work, families, axes, stepTyped) : undefined;
  const empty = table === undefined ? 0 : flatCells(table.cells).filter((cell) => cell === null).length;
  return (
    <section className="chart-section">
      <CheckByEye
        asks={[
          ...(work.panels[0]?.parameterName === "none" || work.panels[0] === undefined
            ? []
            : [askOf("parameter", work.panels[0].parameterName, work.panels[0].parameterUnit)]),
          ...work.panels.map(({ xName, xUnit }) => askOf("entered", xName, xUnit)),
        ]}
        reads={`${QUANTITIES[work.quantity].name}, ${UNITS[work.unit].symbol || "plain"}`}
        checking={{
          value: (reading: EyeReading) => valueAt(panels, reading),
          enteredSpans: panels.map(({ frame }) => frame?.xSpan ?? [0, 1]),
          readSpan: last.ySpan,
          readScale: last.y.scale,
        }}
        title={titleOf(wanted) ?? QUANTITIES[work.quantity].name}
        isThere={isThere(wanted)}
        onTake={(said) => {
          if (table !== undefined) onTaken(tableMade(table, work.quantity, wanted, said));
        }}
      >
        <h2>The table</h2>
        <div className="chart-grid">
          {axes.map((axis) => {
            const name = AXIS_NAMES.find((each) => each === axis.name);
            if (name === undefined) return null;
            return (
              <TextIn
                key={name}
                label={`${AXES[name].name}, ${axis.unit || "plain"}`}
                value={typed[name] ?? axis.values.join("; ")}
                isNumber
                wrong={wrongAxisValues(axis.values)}
                onChange={(text) => setTyped({ ...typed, [name]: text })}
              />
            );
          })}
          <TextIn
            label={`Rounded ${QUANTITIES[work.quantity].rounds} to, ${UNITS[work.unit].symbol || "plain"}`}
            value={step ?? String(suggestedStep)}
            isNumber
            wrong={stepTyped > 0 ? undefined : "Expected a step above 0."}
            onChange={setStep}
          />
        </div>
        {wrong === undefined ? null : <p className="chart-wrong">{wrong}</p>}
        {table === undefined ? null : <TablePreview table={table} quantity={work.quantity} />}
        {empty === 0 ? null : (
          <p className="chart-note">
            {empty} {empty === 1 ? "cell has" : "cells have"} no figure: no curve reaches there, and nothing
            is read beyond one.
          </p>
        )}
      </CheckByEye>
    </section>
  );
}

/** Whether it goes over one that stands in the book. */
export const isThere = (wanted: Wanted | undefined): boolean => wanted?.id !== undefined;
const titleOf = (wanted: Wanted | undefined): string | undefined =>
  wanted?.kind === "table" ? wanted.title : wanted?.name;

const askOf = (as: "parameter" | "entered", name: AxisName, unit: UnitId) => ({
  as,
  label: `${AXES[name].name}, ${UNITS[unit].symbol || "plain"}`,
});

/** A table in the form of a book, with where it belongs. */
export function tableMade(
  table: PaperTable,
  quantity: PerformanceQuantity,
  wanted: Wanted | undefined,
  said: { readonly title: string; readonly flaps?: string },
): FromPaper {
  const id = wanted?.id ?? idFrom(said.title);
  const value = bookTable(table, { quantity, id, ...said });
  return { kind: "table", at: ["performance", "tables"], value, yaml: tableYaml(value) };
}

function axesAsked(work: ChartWork, panels: readonly PanelRead[]): readonly AxisAsked[] {
  const first = work.panels[0];
  const parameters = panels[0]?.family?.curves.map(({ parameter }) => parameter) ?? [];
  return [
    ...(first === undefined || first.parameterName === "none"
      ? []
      : [{ name: first.parameterName, unit: first.parameterUnit, suggested: parameters }]),
    ...work.panels.map(({ xName, xUnit }, i) => ({
      name: xName,
      unit: xUnit,
      suggested: roundValues(panels[i]?.frame?.xSpan ?? [0, 1], 7),
    })),
  ];
}

function tableOf(
  work: ChartWork,
  families: Parameters<typeof tableOfCurves>[0]["panels"],
  axes: readonly NamedAxis[],
  step: number,
): PaperTable {
  const hasParameter = work.panels[0]?.parameterName !== "none";
  const [first, ...rest] = axes;
  return tableOfCurves({
    panels: families,
    ...(hasParameter && first !== undefined ? { parameter: first } : {}),
    entered: hasParameter ? rest : axes,
    order: AXIS_NAMES.filter((name) => axes.some((axis) => axis.name === name)),
    unit: work.unit === "1" ? "" : UNITS[work.unit].symbol,
    rounding: { step, to: QUANTITIES[work.quantity].rounds },
  });
}

const MOST_CELLS = 4000;

function wrongAxisValues(values: readonly number[]): string | undefined {
  if (values.length === 0 || values.some(Number.isNaN))
    return "Expected numbers with semicolons between them, such as 0; 10; 20.";
  if (values.some((value, i) => i > 0 && !(value > (values[i - 1] ?? 0))))
    return "Expected values that rise, each once.";
  return undefined;
}

/** What is wrong with the axes together. */
function wrongTogether(axes: readonly NamedAxis[]): string | undefined {
  const twice = axes.find(({ name }, i) => axes.findIndex((other) => other.name === name) < i);
  if (twice !== undefined) return "Two axes are the same. Say what each of them is.";
  if (axes.reduce((count, { values }) => count * values.length, 1) > MOST_CELLS) {
    return `Expected at most ${MOST_CELLS} cells. Ask for fewer values.`;
  }
  return undefined;
}

/** Numbers with semicolons or spaces between; a comma may be a decimal comma. */
const listOf = (text: string): readonly number[] =>
  text
    .split(/[;\s]+/)
    .filter((part) => part !== "")
    .map(numberOf);
