import { type Flight, type LoadFigures, loadFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import type { PlannedLoad, PlannedRoute } from "@witnessmark/ledger";
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { loadOf, withLoad, withRoute } from "../../flight/plan-load.ts";
import type { FlightEditing } from "../../flight/use-flight-editing.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useWide } from "../../preferences/wide.ts";
import { withPart } from "../conditions/plan-field.ts";
import { amountOf, slideStep } from "./amount.ts";
import { EnvelopeChart } from "./envelope-chart.tsx";
import { loadAnswer } from "./envelope-words.ts";
import { type LoadStep, liveLoad } from "./follow/live-load.ts";
import { placesAround, stepsFrom, useSteps, whenIdle } from "./follow/steps.ts";
import { HandPanel } from "./hand-panel.tsx";
import { firstInHand, type InHand } from "./in-hand.ts";
import { LoadAnswerLine } from "./load-answer-line.tsx";
import { LoadDrawing } from "./load-drawing.tsx";
import { LoadMore, type LoadPart } from "./load-more.tsx";
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

/** Everything of a load. While a finger moves, what it changes is written into it; it is made anew when that rests. */
export function LoadSheet({ open, loading, editing, flight }: LoadSheetProps) {
  const { book, state, assessment } = open;
  const wide = useWide();
  const units = useLoadUnits();
  const [hand, setHand] = useState<InHand>(() => firstInHand(loading));
  const load = loadOf(flight);
  const figures = useMemo(() => figuresOf(book, flight, state), [book, flight, state]);
  const answer = loadAnswer(figures, units);
  const { change, follow, held } = editing;
  const inHand = useRef(flight);
  inHand.current = flight;
  // the same function however the load changes, so that what did not change is not drawn again
  const onLoad = useCallback(
    (next: PlannedLoad) => change(withLoad(inHand.current, state, next)),
    [change, state],
  );
  const onLoadPart = useCallback(
    (part: LoadPart) => onLoad(withPart(loadOf(inHand.current), part)),
    [onLoad],
  );
  const onRoute = useCallback(
    (route: PlannedRoute) => change(withRoute(inHand.current, state, route)),
    [change, state],
  );
  const amount = useMemo(
    () => amountOf(hand, { loading, load, figures, units }),
    [hand, loading, load, figures, units],
  );
  const [live] = useState(liveLoad);
  const made: LoadStep | null = amount === null ? null : { flight, figures, answer, amount };
  // what a finger was ahead by is made now, or was taken back
  useLayoutEffect(() => {
    if (live.ahead()?.flight === flight || !held) live.settle(made);
  });
  const steps = useSteps([book, loading, hand, units, amount?.item?.id, amount?.unit], flight, () =>
    stepsFrom((value): LoadStep | null => {
      if (amount === null) return null;
      const next = withLoad(flight, state, amount.put({ value, unit: amount.unit }));
      const now = figuresOf(book, next, state);
      const nextAmount = amountOf(hand, { loading, load: loadOf(next), figures: now, units });
      return nextAmount === null
        ? null
        : { flight: next, figures: now, answer: loadAnswer(now, units), amount: nextAmount };
    }),
  );
  // where a finger may go is worked out before it goes there
  useEffect(() => {
    if (amount?.value == null) return;
    return whenIdle(placesAround(amount.value, slideStep(amount), amount.max), (value) => {
      const step = steps.at(value);
      if (step !== null) live.prepare(step);
    });
  }, [steps, amount, live]);
  const onDrag = (value: number) => {
    const step = steps.at(value);
    if (step === null) return;
    // the first figure of something makes a thing of it, with its own places on the screen
    if (amount?.value != null && live.step(step)) follow(step.flight);
    else flushSync(() => change(step.flight));
  };
  const shared = { book, loading, units, hand, onHand: setHand };
  const chart = (
    <>
      <LoadAnswerLine answer={answer} live={live} />
      <EnvelopeChart
        loading={loading}
        figures={figures}
        units={units}
        held={held}
        live={live}
        label={`Envelope of mass and centre of gravity: ${answer.headline}`}
      />
    </>
  );
  const table = (
    <PhaseTable figures={figures} units={units} verdicts={assessment.verdicts} wide={wide} live={live} />
  );
  const drawing = <LoadDrawing {...shared} load={load} figures={figures} wide={wide} live={live} />;
  const undo = (
    <button type="button" className="button load-undo" disabled={!editing.canUndo} onClick={editing.undo}>
      Undo
    </button>
  );
  const panel =
    amount === null ? null : (
      <HandPanel
        {...shared}
        load={load}
        figures={figures}
        onLoad={onLoad}
        amount={amount}
        editing={editing}
        live={live}
        onDrag={onDrag}
        undo={wide ? null : undo}
      />
    );
  const rest = (
    <>
      <WhatStillFits
        book={book}
        flight={flight}
        load={load}
        figures={figures}
        units={units}
        onLoad={onLoad}
        held={held}
      />
      <PlaceList {...shared} load={load} figures={figures} />
      <LoadMore
        loading={loading}
        hasTotaliser={book.fuel?.totaliser !== undefined}
        units={units}
        state={state}
        load={load}
        figures={figures}
        flight={flight}
        onLoadPart={onLoadPart}
        onRoute={onRoute}
      />
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
        <div className="load-column">
          {chart}
          {table}
          {rest}
        </div>
      </div>
    </main>
  ) : (
    <main className="load-main">
      <div className="load-scroll">
        <div className="load-column">
          {chart}
          {drawing}
          {table}
          {rest}
        </div>
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
