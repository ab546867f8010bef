import type { PerformanceQuantity } from "@witnessmark/book";
import { type PastedAxisName, type PasteSaid, readPasted } from "@witnessmark/chart";
import { UNITS, type UnitId } from "@witnessmark/engine";
import { type ChangeEvent, useEffect, useMemo, useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { Choose, ChooseUnit, TextIn } from "./fields.tsx";
import { heldFor, hold } from "./held.ts";
import { TablePreview } from "./table-preview.tsx";
import { isThere, tableMade } from "./take-table.tsx";
import { AXES, AXIS_NAMES, type FromPaper, QUANTITIES, type Wanted } from "./wanted.ts";

interface PasteMakerProps {
  readonly quantity: PerformanceQuantity;
  readonly wanted: Wanted | undefined;
  /** Under which name what was pasted is kept while the page is open. */
  readonly heldAs: string;
  readonly onTaken: (made: FromPaper) => void;
}

const SIGNS = [
  ["found", "As found"],
  ["point", "Point: 12.5"],
  ["comma", "Comma: 12,5"],
] as const;
const NAMES = [
  ["found", "As its heading says"],
  ...AXIS_NAMES.map((name) => [name, AXES[name].name] as const),
] as const;

/** A table from a spreadsheet or a CSV file: pasted, read at once, and every fault told by row and column. */
export function PasteMaker({ quantity, wanted, heldAs, onTaken }: PasteMakerProps) {
  const [text, setText] = useState(() => heldFor(heldAs).pasted ?? "");
  useEffect(() => {
    // to look at the page alone lets go of no other paper
    if (text !== (heldFor(heldAs).pasted ?? "")) hold(heldAs, { pasted: text });
  }, [heldAs, text]);
  const [decimal, setDecimal] = useState<(typeof SIGNS)[number][0]>("found");
  const [unit, setUnit] = useState<UnitId>(QUANTITIES[quantity].unit);
  const [across, setAcross] = useState<PastedAxisName | "found">("found");
  const [down, setDown] = useState<PastedAxisName | "found">("found");
  const [column, setColumn] = useState("");
  const [said, setSaid] = useState({
    title: (wanted?.kind === "table" ? wanted.title : undefined) ?? QUANTITIES[quantity].name,
    flaps: "",
  });
  const keeping = useKeeping();
  const choose = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const file = input.files?.[0];
    if (file !== undefined) await keeping.keep(async () => setText(await textOf(file)));
    input.value = ""; // so that the same file can be chosen again once it is mended
  };
  const { dimension } = QUANTITIES[quantity];
  const own = UNITS[unit].dimension === dimension ? unit : QUANTITIES[quantity].unit;
  const result = useMemo(() => {
    const given: PasteSaid = {
      cells: dimension,
      unit: UNITS[own].symbol,
      units: Object.fromEntries(AXIS_NAMES.map((name) => [name, UNITS[AXES[name].unit].symbol])),
      ...(decimal === "found" ? {} : { decimal }),
      ...(across === "found" ? {} : { across }),
      ...(down === "found" ? {} : { down }),
      ...(column.trim() === "" ? {} : { column: Number(column) }),
    };
    return readPasted(text, given);
  }, [text, decimal, across, down, column, dimension, own]);
  return (
    <section className="chart-section chart-pasted">
      <div>
        <h2>The pasted table</h2>
        <label className="field">
          <span>Paste it here, with its headings: Pressure altitude (ft), OAT (°C)</span>
          <textarea
            className="chart-paste"
            value={text}
            spellCheck={false}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <label className="button full file-button">
          Choose a CSV or text file
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            onChange={(event) => void choose(event)}
          />
        </label>
        <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
        {text.trim() === "" || result.ok ? null : (
          <ul className="chart-faults" aria-label="What is wrong with the table">
            {result.faults.map(({ row, column: at, says }) => (
              <li key={`${row} ${at} ${says}`}>
                <b>{row === 0 ? "The whole" : at === 0 ? `Row ${row}` : `Row ${row}, column ${at}`}</b> {says}
              </li>
            ))}
          </ul>
        )}
        <div className="chart-grid">
          <ChooseUnit
            label="Figures in, where no heading says"
            dimension={dimension}
            value={own}
            onChange={setUnit}
          />
          <Choose label="Decimal sign" value={decimal} options={SIGNS} onChange={setDecimal} />
          <Choose label="Values across" value={across} options={NAMES} onChange={setAcross} />
          <Choose label="Values down" value={down} options={NAMES} onChange={setDown} />
          <TextIn label="Column of the figures, of several" value={column} isNumber onChange={setColumn} />
        </div>
        <p className="chart-note">
          Where no heading gives a unit:{" "}
          {AXIS_NAMES.map((name) => `${AXES[name].name.toLowerCase()} ${UNITS[AXES[name].unit].symbol}`).join(
            ", ",
          )}
          .
        </p>
      </div>
      {text.trim() === "" || !result.ok ? null : (
        <div>
          <p className="chart-note">{result.notes.join(" ")}</p>
          <TablePreview table={result.table} quantity={quantity} />
          {isThere(wanted) ? null : (
            <div className="chart-grid">
              <TextIn
                label="Title"
                value={said.title}
                wrong={said.title.trim() === "" ? "Say what it is called." : undefined}
                onChange={(title) => setSaid({ ...said, title })}
              />
              <TextIn label="Flaps" value={said.flaps} onChange={(flaps) => setSaid({ ...said, flaps })} />
            </div>
          )}
          <button
            type="button"
            className="button filled tall full"
            disabled={said.title.trim() === ""}
            onClick={() => onTaken(tableMade(result.table, quantity, wanted, said))}
          >
            Take it
          </button>
        </div>
      )}
    </section>
  );
}

/** A table of a book has some hundred figures; what is larger is another file. */
const MOST_BYTES = 500_000;

async function textOf(file: File): Promise<string> {
  if (file.size > MOST_BYTES) {
    throw new Error(
      `${file.name} has ${Math.round(file.size / 1000)} kB; a table has at most ${MOST_BYTES / 1000} kB. Is it the right file?`,
    );
  }
  const text = await file.text();
  if (text.includes("\0")) {
    throw new Error(
      `${file.name} is no text. Save the sheet as CSV and choose that, or copy its cells and paste them.`,
    );
  }
  return text;
}
