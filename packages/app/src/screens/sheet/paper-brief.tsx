import type { SheetBrief, SheetSaid } from "@witnessmark/sheet";
import { Fragment } from "react";

/** What was planned and counted with: the trip, who and what is aboard, the air at each field and its reports. */
export function PaperBrief({ brief }: { readonly brief: SheetBrief }) {
  const { trip, aboard, fields, units } = brief;
  return (
    <div className="paper-brief">
      <h2>The flight</h2>
      <Said said={trip} />
      <table className="paper-table">
        <thead>
          <tr>
            <th scope="col">
              <h3>Aboard</h3>
            </th>
            <th scope="col">who or what</th>
            <th scope="col">how much</th>
          </tr>
        </thead>
        <tbody>
          {aboard.length === 0 ? (
            <tr>
              <td colSpan={3}>Nobody said who and what is aboard.</td>
            </tr>
          ) : null}
          {aboard.map(({ where, what, much }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two bags may be the same in every word, and the list never changes
            <tr key={index}>
              <th scope="row">{where}</th>
              <td>{what}</td>
              <td>
                <b>{much}</b>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {fields.map(({ title, used, reports }) => (
        <section key={title}>
          <h3>{title}</h3>
          <Said said={used} />
          {reports.length === 0 ? (
            <p>No report, and nothing was read or told.</p>
          ) : (
            reports.map(({ text, taken }) => (
              <p key={text}>
                <Report text={text} /> <small>Taken {taken}.</small>
              </p>
            ))
          )}
        </section>
      ))}
      <p className="paper-units">{units}</p>
    </div>
  );
}

/** A group of a report breaks nowhere: `-RA` is no `-` and `RA`. */
function Report({ text }: { readonly text: string }) {
  return text.split(/\s+/).map((group, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a report may say a group twice, and never changes
    <Fragment key={index}>
      {index === 0 ? "" : " "}
      <span>{group}</span>
    </Fragment>
  ));
}

function Said({ said }: { readonly said: readonly SheetSaid[] }) {
  return (
    <dl>
      {said.map(({ label, value }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
