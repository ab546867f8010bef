import type { SheetFigures, SheetMass, SheetNumber } from "@witnessmark/sheet";
import { Mark } from "../../marks/mark.tsx";
import { PaperEnvelope } from "./paper-envelope.tsx";

/** What the masses wait for stands where the chart would. */
function OpenReasons({ mass }: { readonly mass: SheetMass }) {
  if (mass.envelope !== undefined && mass.open.length === 0) return null;
  return (
    <p className="paper-open">
      <b>Open.</b>{" "}
      {mass.open.length === 0 ? "Not known where the load lies." : `Not known: ${mass.open.join("; ")}.`}
    </p>
  );
}

/** Mass and balance: the flight in its envelope, and what it weighs of what it may. */
export function PaperMass({ mass }: { readonly mass: SheetMass }) {
  return (
    <div className="paper-mass">
      <h2>Mass and balance</h2>
      {mass.envelope === undefined ? null : <PaperEnvelope envelope={mass.envelope} />}
      <OpenReasons mass={mass} />
      <table className="paper-table">
        <thead className="out-of-sight">
          <tr>
            <th scope="col">When</th>
            <th scope="col">Mass of the limit</th>
            <th scope="col">Left</th>
          </tr>
        </thead>
        <tbody>
          {mass.rows.map(({ what, of, left, status }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>{of}</td>
              <td>
                <b>{left}</b>
                <Mark status={status} size_px={16} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface PaperNumbersProps {
  readonly numbers: readonly SheetNumber[];
  /** How many more follow overleaf. */
  readonly follow?: number;
  /** Left out where they stand on another page. */
  readonly tips?: SheetFigures["tips"];
  readonly title?: string;
}

/** What the flight needs, has and has left; beside it where the answer tips over. */
export function PaperNumbers({ numbers, follow = 0, tips, title = "The numbers" }: PaperNumbersProps) {
  if (numbers.length === 0 && tips === undefined) return null;
  return (
    <div className={tips === undefined ? "paper-numbers paper-alone" : "paper-numbers"}>
      <div>
        <table className="paper-table">
          <thead>
            <tr>
              <th scope="col">
                <h2>{title}</h2>
              </th>
              <th scope="col">needs</th>
              <th scope="col">has</th>
              <th scope="col">left</th>
            </tr>
          </thead>
          {numbers.map((number) => (
            <NumberRow key={number.what} number={number} />
          ))}
          {follow === 0 ? null : (
            <tbody>
              <tr>
                <th scope="row" colSpan={4}>
                  <b>{follow} more overleaf</b>
                </th>
              </tr>
            </tbody>
          )}
        </table>
      </div>
      {tips === undefined ? null : <Tips tips={tips} />}
    </div>
  );
}

function Tips({ tips }: { readonly tips: SheetFigures["tips"] }) {
  return (
    <div>
      <h2>Where it tips over</h2>
      {tips.length === 0 ? (
        <p className="paper-open">
          No single value, as far as it could plausibly be off, changes the answer.
        </p>
      ) : (
        <table className="paper-table paper-tips">
          <thead className="out-of-sight">
            <tr>
              <th scope="col">What, and what then</th>
              <th scope="col">At</th>
            </tr>
          </thead>
          <tbody>
            {tips.map(({ what, value }) => (
              <tr key={`${what} ${value}`}>
                <th scope="row">{what}</th>
                <td>
                  <b>{value}</b>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}

function NumberRow({ number }: { readonly number: SheetNumber }) {
  const { what, needs, has, left, status, why } = number;
  return (
    <tbody>
      <tr>
        {needs === "" && has === "" ? (
          <th scope="row" colSpan={3}>
            {what}
          </th>
        ) : (
          <>
            <th scope="row">{what}</th>
            <td>{needs}</td>
            <td>{has}</td>
          </>
        )}
        <td>
          <b>{left}</b>
          <Mark status={status} size_px={16} />
        </td>
      </tr>
      {why === undefined ? null : (
        <tr className="paper-why">
          <td colSpan={4}>{why}</td>
        </tr>
      )}
    </tbody>
  );
}

/** Nothing planned is nothing known: the sheet says so where its numbers would be. */
export function Unplanned({ isNamed }: { readonly isNamed: boolean }) {
  return (
    <p className="paper-unplanned">
      <b>The numbers: open.</b> Load, fuel, runways and weather were not worked out,{" "}
      {isNamed ? "the flight is named and not planned" : "no flight is named"}.
    </p>
  );
}
