import { type AnyQuantity, fromSI, UNITS, type UnitId } from "@witnessmark/engine";
import { useEffect, useRef, useState } from "react";
import { preferences } from "../../preferences/preferences.ts";
import { calculate, type FieldSpec, type Outcome } from "./calculate.ts";
import { clockOf } from "./clock-of.ts";
import { ListFields, ScalarField } from "./input-fields.tsx";
import { type KeptTyped, keepTyped, keptTyped, NOTHING_TYPED } from "./kept-typed.ts";
import { plainFigure, plainMeasure } from "./plain-figure.ts";
import { startUnit } from "./unit-choice.ts";
import { UnitSelect } from "./unit-select.tsx";
import { Sources, WorkingLines } from "./working-lines.tsx";

const ROWS_AT_FIRST = 3;

/** One quantity: what goes in, what comes out, how, and from where. */
export function QuantityPage({ quantity }: { readonly quantity: AnyQuantity }) {
  const { units: chosen } = preferences.use();
  const [typed, setTyped] = useState(() => keptTyped(quantity.id));
  const [rows, setRows] = useState(() => rowsAtFirst(quantity, typed));
  const change = (next: KeptTyped) => {
    keepTyped(quantity.id, next);
    setTyped(next);
  };
  const unitOf = ({ name, unit }: Pick<FieldSpec, "name" | "unit">): UnitId =>
    typed.units[name] ?? startUnit(name, unit, chosen);
  const { faults, outcome } = calculate(quantity, {
    texts: typed.texts,
    units: Object.fromEntries(quantity.inputs.map((spec) => [spec.name, unitOf(spec)])),
  });
  const entry = {
    faults,
    texts: typed.texts,
    unitOf,
    onText: (name: string, row: number, text: string) =>
      change({ ...typed, texts: { ...typed.texts, [name]: withRow(typed.texts[name] ?? [], row, text) } }),
    onUnit: (name: string, unit: UnitId) => change({ ...typed, units: { ...typed.units, [name]: unit } }),
  };
  const lists = quantity.inputs.filter(({ many }) => many === true);
  const outUnit = unitOf(quantity.output);
  const takeAway = (row: number) => {
    const texts = Object.fromEntries(
      Object.entries(typed.texts).map(([name, all]) => [
        name,
        lists.some((spec) => spec.name === name) ? all.filter((_, at) => at !== row) : all,
      ]),
    );
    change({ ...typed, texts });
    setRows(rows - 1);
  };
  const heading = useRef<HTMLHeadingElement>(null);
  // a new page is read from its heading
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  return (
    <article className="calc-page">
      <h2 tabIndex={-1} ref={heading}>
        {quantity.title}
      </h2>
      {quantity.crossCheckOnly === true ? (
        <p className="calc-cross">
          <b>Cross-check only.</b> A rule of thumb or another author's form: it stands beside an answer and is
          never the answer.
        </p>
      ) : null}
      <form className="calc-fields" onSubmit={(event) => event.preventDefault()} noValidate>
        {quantity.inputs
          .filter(({ many }) => many !== true)
          .map((spec) => (
            <ScalarField key={spec.name} spec={spec} {...entry} />
          ))}
        {lists.length === 0 ? null : (
          <ListFields
            specs={lists}
            rows={rows}
            onMore={() => setRows(rows + 1)}
            onLess={takeAway}
            {...entry}
          />
        )}
      </form>
      <section className={`calc-result calc-${outcome.kind}`} aria-labelledby="calc-result">
        <h3 id="calc-result" className="out-of-sight">
          Result
        </h3>
        <output aria-live="polite">
          <ResultWords quantity={quantity} outcome={outcome} unit={outUnit} />
        </output>
        <UnitSelect
          of={`the result, ${quantity.title}`}
          unit={outUnit}
          onChoose={(unit) => entry.onUnit(quantity.output.name, unit)}
        />
      </section>
      <section className="calc-part">
        <h3>Working</h3>
        <p className="calc-formula">{quantity.formula}</p>
        {outcome.kind === "worked" ? <WorkingLines worked={outcome.worked} /> : null}
        {(quantity.notes ?? []).map((note) => (
          <p key={note} className="calc-note">
            {note}
          </p>
        ))}
      </section>
      <section className="calc-part">
        <h3>Sources</h3>
        <Sources sources={quantity.sources} />
      </section>
      <div className="row-of-buttons calc-foot">
        <button
          type="button"
          className="button"
          disabled={Object.values(typed.texts).every((texts) => texts.every((text) => text === ""))}
          onClick={() => {
            change({ ...NOTHING_TYPED, units: typed.units });
            setRows(ROWS_AT_FIRST);
          }}
        >
          Clear the fields
        </button>
      </div>
    </article>
  );
}

interface ResultWordsProps {
  readonly quantity: AnyQuantity;
  readonly outcome: Outcome;
  readonly unit: UnitId;
}

function ResultWords({ quantity, outcome, unit }: ResultWordsProps) {
  switch (outcome.kind) {
    case "waiting":
      return <span className="calc-waits">Still to give: {outcome.missing.join("; ")}</span>;
    case "faulty":
      return <span className="calc-waits">Put right what is marked above.</span>;
    case "refused":
      return <span className="calc-fault">{outcome.says}</span>;
    case "worked": {
      const value = fromSI(outcome.worked.outputSI, unit);
      const clock = clockOf(quantity.id, outcome.worked.outputSI);
      return (
        <>
          <b>{UNITS[unit].symbol === "" ? plainFigure(value) : plainMeasure(value, unit)}</b>
          {clock === undefined ? null : <span className="calc-clock">{clock}</span>}
        </>
      );
    }
    default:
      return outcome satisfies never;
  }
}

const rowsAtFirst = ({ inputs }: AnyQuantity, typed: KeptTyped): number =>
  Math.max(
    ROWS_AT_FIRST,
    ...inputs.map(({ name, many }) => (many === true ? (typed.texts[name]?.length ?? 0) : 0)),
  );

const withRow = (texts: readonly string[], row: number, text: string): readonly string[] =>
  Array.from({ length: Math.max(texts.length, row + 1) }, (_, at) => (at === row ? text : (texts[at] ?? "")));
