import { reliefOnRecord } from "@witnessmark/assess";
import type { Discrepancy } from "@witnessmark/ledger";
import { useState } from "react";
import { flushSync } from "react-dom";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { longDay } from "../../words/dates.ts";
import "./placard.css";

interface PlacardProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
}

/** The placard of a relief that is on record, as it is fitted beside the control: looked at here, and printed alone. */
export function Placard({ open, discrepancy }: PlacardProps) {
  const relief = discrepancy.isOpen ? reliefOnRecord(discrepancy) : undefined;
  const [isPrinting, setIsPrinting] = useState(false);
  if (relief?.placard === undefined) return null;
  const print = () => {
    flushSync(() => setIsPrinting(true)); // what is printed is what stands there when the browser is asked
    try {
      window.print();
    } finally {
      setIsPrinting(false);
    }
  };
  const until =
    relief.until === undefined ? "" : ` Until ${longDay(Date.parse(relief.until))} at the latest.`;
  return (
    <section className={`one-section placard-part${isPrinting ? " is-printing" : ""}`}>
      <h3>The placard</h3>
      <div className="placard">
        <p>{relief.placard}</p>
        <small>
          {open.registration}, {longDay(Date.parse(relief.recordedAt))}, {relief.determinedBy}. {relief.basis}
          .{until}
        </small>
      </div>
      <button type="button" className="button full" onClick={print}>
        Print the placard
      </button>
      <p className="record-small">
        Where it is fitted, and in which words, is for the list, the approved manual and the rules.
      </p>
    </section>
  );
}
