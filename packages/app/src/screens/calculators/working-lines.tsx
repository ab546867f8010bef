import type { AnyQuantity, InputValue, UnitId, Worked, WorkedInput } from "@witnessmark/engine";
import { plainFigure, plainMeasure } from "./plain-figure.ts";

const listed = (value: InputValue, unit: UnitId): string => {
  const all = typeof value === "number" ? [value] : value;
  const [last, ...before] = all.toReversed();
  return last === undefined
    ? ""
    : [...before.toReversed().map((one) => plainFigure(one)), plainMeasure(last, unit)].join("; ");
};

/** How the result was reached: each input as typed and in SI, and the formula. */
export function WorkingLines({ worked }: { readonly worked: Worked }) {
  const { quantity, inputs, outputSI } = worked;
  const siOf = ({ name }: WorkedInput): UnitId =>
    quantity.inputs.find((spec) => spec.name === name)?.unit ?? quantity.output.unit;
  return (
    <table className="calc-working">
      <thead>
        <tr>
          <th scope="col">Input</th>
          <th scope="col">As typed</th>
          <th scope="col">In SI</th>
        </tr>
      </thead>
      <tbody>
        {inputs.map((input) => (
          <tr key={input.name}>
            <th scope="row">{input.meaning}</th>
            <td>{listed(input.given.value, input.given.unit)}</td>
            <td>{listed(input.valueSI, siOf(input))}</td>
          </tr>
        ))}
        <tr className="calc-result-line">
          <th scope="row">{quantity.title}</th>
          <td />
          <td>{plainMeasure(outputSI, quantity.output.unit)}</td>
        </tr>
      </tbody>
    </table>
  );
}

/** Where the formula comes from, and how far that is to be believed. */
export function Sources({ sources }: Pick<AnyQuantity, "sources">) {
  return (
    <ul className="calc-sources">
      {sources.map((source) => (
        <li key={`${source.title} ${source.locator ?? ""} ${source.edition ?? ""}`}>
          <b className="calc-status">{source.status}</b>
          <span>
            {[source.title, source.edition, source.locator].filter((part) => part !== undefined).join(", ")}
            {source.note === undefined ? "" : `. ${source.note}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
