import { useState } from "react";
import type { Plan } from "./plan.ts";

const FAULTS_A_PAGE = 10;

/** How the first rows read, and everything that does not. */
export function Preview({ plan }: { readonly plan: Plan }) {
  return (
    <section className="one-section" aria-label="How it reads">
      <h3>How it reads</h3>
      <ul className="import-counts">
        <li>
          <b>{plan.count}</b> to bring in
        </li>
        <li>
          <b>{plan.again}</b> on record already, or twice in the file: left out
        </li>
        <li>
          <b>{plan.faulty}</b> with faults: left out
        </li>
      </ul>
      {plan.first.length === 0 ? null : (
        <table className="import-table">
          <thead>
            <tr>
              <th scope="col">Row</th>
              {plan.heads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {plan.first.map(({ row, cells: [first, second, third], again: isAgain }) => (
              <tr key={row}>
                <td>{row}</td>
                <td>{first}</td>
                <td>{second}</td>
                <td>
                  {third}
                  {isAgain ? <small>there already</small> : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {plan.faults.length === 0 ? null : <Faults plan={plan} />}
    </section>
  );
}

function Faults({ plan }: { readonly plan: Plan }) {
  const [page, setPage] = useState(0);
  const pages = Math.ceil(plan.faults.length / FAULTS_A_PAGE);
  const here = Math.min(page, pages - 1);
  return (
    <section className="import-faults" aria-label="Faults">
      <p className="trouble" role="status">
        {plan.faulty === 1 ? "1 row does" : `${plan.faulty} rows do`} not read. Mend the file and choose it
        again, or bring in the others.
      </p>
      <ol>
        {plan.faults.slice(here * FAULTS_A_PAGE, (here + 1) * FAULTS_A_PAGE).map((fault) => (
          <li key={`${fault.row} ${fault.column} ${fault.expected}`}>
            <p className="fault-place">
              Row {fault.row}
              {fault.column === "" ? null : <code>{fault.column}</code>}
            </p>
            <dl className="parts">
              <dt>Found</dt>
              <dd>{fault.found}</dd>
              <dt>Expected</dt>
              <dd>{fault.expected}</dd>
              <dt>Do</dt>
              <dd>{fault.remedy}</dd>
            </dl>
          </li>
        ))}
      </ol>
      {pages < 2 ? null : (
        <p className="import-pages">
          <button type="button" className="button" disabled={here === 0} onClick={() => setPage(here - 1)}>
            Earlier
          </button>
          <span role="status">
            Page {here + 1} of {pages}
          </span>
          <button
            type="button"
            className="button"
            disabled={here === pages - 1}
            onClick={() => setPage(here + 1)}
          >
            Later
          </button>
        </p>
      )}
    </section>
  );
}
