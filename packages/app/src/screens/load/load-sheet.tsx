import { type Flight, type LoadFigures, loadFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import type { PlannedLoad } from "@witnessmark/ledger";
import { useCallback, useMemo, useState } from "react";
import { loadOf, withLoad } from "../../flight/plan-load.ts";
import type { FlightEditing } from "../../flight/use-flight-editing.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useWide } from "../../preferences/wide.ts";
import { amountOf } from "./amount.ts";
import { EnvelopeChart } from "./envelope-chart.tsx";
import { loadAnswer } from "./envelope-words.ts";
import { HandPanel } from "./hand-panel.tsx";
import { firstInHand, type InHand } from "./in-hand.ts";
import { LoadAnswerLine } from "./load-answer-line.tsx";
import { LoadDrawing } from "./load-drawing.tsx";
import { LoadMore } from "./load-more.tsx";
import { useLoadUnits } from "./load-units.ts";
import { PhaseTable } from "./phase-table.tsx";
import { PlaceList } from "./place-list.tsx";
import { WhatStillFits } from "./what-still-fits.tsx";

interface LoadSheetProps {
  readonly open: OpenAircraft;
  readonly loading: Loading;
  readonly editing: FlightEditing;
  readonly flight: Flight;
}

/** Everything of a load, worked out anew in the frame in which a finger moves. */
export function LoadSheet({ open, loading, editing, flight }: LoadSheetProps) {
  const { book, state, assessment } = open;
  const wide = useWide();
  const units = useLoadUnits();
  const [hand, setHand] = useState<InHand>(() => firstInHand(loading));
  const load = loadOf(flight);
  const figures = useMemo(() => figuresOf(book, flight, state), [book, flight, state]);
  const answer = loadAnswer(figures, units);
  const { change } = editing;
  const onLoad = useCallback(
    (next: PlannedLoad) => change(withLoad(flight, state, next)),
    [change, flight, state],
  );
  const amount = amountOf(hand, { loading, load, figures, units });
  const shared = { book, loading, load, figures, units, hand, onHand: setHand, onLoad };
  const chart = (
    <>
      <LoadAnswerLine answer={answer} />
      <EnvelopeChart
        loading={loading}
        figures={figures}
        units={units}
        held={editing.held}
        label={`Envelope of mass and centre of gravity: ${answer.headline}`}
      />
    </>
  );
  const table = <PhaseTable figures={figures} units={units} verdicts={assessment.verdicts} wide={wide} />;
  const drawing = <LoadDrawing {...shared} wide={wide} />;
  const undo = (
    <button type="button" className="button load-undo" disabled={!editing.canUndo} onClick={editing.undo}>
      Undo
    </button>
  );
  const panel =
    amount === null ? null : (
      <HandPanel {...shared} amount={amount} editing={editing} undo={wide ? null : undo} />
    );
  const rest = (
    <>
      <WhatStillFits book={book} load={load} figures={figures} units={units} onLoad={onLoad} />
      <PlaceList {...shared} />
      <LoadMore {...shared} open={open} flight={flight} onFlight={change} />
    </>
  );
  return wide ? (
    <main className="load-main">
      <div className="load-left">
        {drawing}
        {undo}
        {panel}
      </div>
      <div className="load-right">
        {chart}
        {table}
        {rest}
      </div>
    </main>
  ) : (
    <main className="load-main">
      <div className="load-scroll">
        {chart}
        {drawing}
        {table}
        {rest}
      </div>
      {panel}
    </main>
  );
}

/** A flight without a plan has its figures too: everything open, nothing guessed. */
function figuresOf(book: OpenAircraft["book"], flight: Flight, state: OpenAircraft["state"]): LoadFigures {
  const { plan } = flight.plan === undefined ? withLoad(flight, state, loadOf(flight)) : flight;
  if (plan === undefined) throw new Error("load: expected a plan"); // withLoad makes one
  return loadFigures(book, plan);
}
