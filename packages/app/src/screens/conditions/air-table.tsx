import { quantities } from "@witnessmark/engine";
import { ended } from "@witnessmark/sheet";
import { useState } from "react";
import { Popup } from "../../frame/popup.tsx";
import { href } from "../../routes/route.ts";
import type { AirCell } from "./air-cells.ts";
import { UnitChoice } from "./unit-choice.tsx";

/** Figures side by side; each opens what is behind it. */
export function AirTable({ label, cells }: { readonly label: string; readonly cells: readonly AirCell[] }) {
  const [shown, setShown] = useState<string | null>(null);
  const behind = cells.find(({ name }) => name === shown);
  return (
    <section className="cond-air" aria-label={label}>
      {cells.map((cell) => (
        <button key={cell.name} type="button" onClick={() => setShown(cell.name)}>
          <span>{cell.name}</span> <b className={cell.isKnown ? undefined : "open"}>{cell.text}</b>
          {cell.under === undefined ? null : <small> {cell.under}</small>}
          {cell.isKnown || cell.text === "not known" ? null : <small> not settled</small>}
        </button>
      ))}
      {behind === undefined ? null : (
        <Popup title={behind.name} onClose={() => setShown(null)}>
          <Behind cell={behind} />
        </Popup>
      )}
    </section>
  );
}

function Behind({ cell }: { readonly cell: AirCell }) {
  const quantity = cell.quantity === undefined ? undefined : quantities.get(cell.quantity);
  return (
    <div className="popup-body cond-behind">
      <p>
        <b>{cell.text}</b>
      </p>
      {cell.from.map((from) => (
        <p key={from}>{from}</p>
      ))}
      {cell.missing.length === 0 ? null : (
        <p className="open">{ended(`Missing: ${cell.missing.join("; ")}`)}</p>
      )}
      {cell.note === undefined ? null : <p>{cell.note}</p>}
      {cell.choice === undefined ? null : <UnitChoice choice={cell.choice} />}
      {quantity === undefined ? null : (
        <>
          <p className="cond-formula">{quantity.formula}</p>
          <p className="note">
            {quantity.sources
              .map(
                ({ title, locator, status }) =>
                  `${title}${locator === undefined ? "" : `, ${locator}`} (${status})`,
              )
              .join(". ")}
            .
          </p>
          <a className="button full" href={href({ at: "calculators", quantity: quantity.id })}>
            Work it out by hand
          </a>
        </>
      )}
    </div>
  );
}
