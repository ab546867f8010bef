import type { WalkKind } from "@witnessmark/book";
import { useMemo, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { latestWalk } from "../../walk/open-walk.ts";
import { useWalkPlans } from "../../walk/order/use-walk-plan.ts";
import { type StepView, type WalkView, walkView } from "../../walk/walk-view.ts";
import { tally } from "../../words/figures.ts";
import { GearList } from "./gear-list.tsx";
import { LeftOrder } from "./left-order.tsx";
import { StepList } from "./step-list.tsx";
import "./walk.css";
import "./left.css";

/** The walk as a list, by stance: what is left by name, and a way to each. */
export function WhatIsLeft({ open, gear }: { readonly open: OpenAircraft; readonly gear: boolean }) {
  const { state, assessment, registration } = open;
  const walk = latestWalk(state);
  const kinds = useMemo((): readonly WalkKind[] => (walk === undefined ? [] : [walk.kind]), [walk]);
  const [found] = useWalkPlans(open, kinds, walk?.id);
  const plan = found?.plan;
  const view = useMemo(
    () => (walk === undefined || plan === undefined ? undefined : walkView(walk, plan, state, assessment)),
    [walk, plan, state, assessment],
  );
  if (view === undefined) {
    return (
      <AircraftFrame open={open} sheet="walk" title="Walk" under="What is left">
        <main className="page">
          <section>
            <p>No walk has begun.</p>
            <a className="button filled tall full" href={href({ at: "walk", registration })}>
              Start the walk
            </a>
          </section>
        </main>
      </AircraftFrame>
    );
  }
  return gear ? (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="Ground gear">
      <main className="left-list">
        <BackRow registration={registration} />
        <div className="gear-page">
          <GearList open={open} view={view} />
        </div>
      </main>
    </AircraftFrame>
  ) : (
    <Left open={open} view={view} />
  );
}

function BackRow({ registration }: { readonly registration: string }) {
  return (
    <a className="back-row" href={href({ at: "walk", registration })}>
      Back to the check in hand
    </a>
  );
}

function Left({ open, view }: { readonly open: OpenAircraft; readonly view: WalkView }) {
  const [all, setAll] = useState(view.left === 0);
  const shown = (step: StepView) => all || step.status === "open";
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under={`${view.left} left of ${view.steps.length}`}>
      <main className="left-list">
        <BackRow registration={open.registration} />
        <div className="left-filter">
          <button type="button" aria-pressed={!all} onClick={() => setAll(false)}>
            Left, {view.left}
          </button>
          <button type="button" aria-pressed={all} onClick={() => setAll(true)}>
            All, {view.steps.length}
          </button>
        </div>
        <LeftOrder open={open} view={view} />
        {view.plan.stops.map((stop) => {
          const steps = stop.steps.flatMap((step) => view.byId.get(step.id) ?? []).filter(shown);
          return steps.length === 0 ? null : (
            <section key={stop.number}>
              <h2>
                <b>{stop.number}</b> {stop.stance.name}
              </h2>
              <StepList open={open} steps={steps} />
            </section>
          );
        })}
        <Finish open={open} view={view} />
      </main>
    </AircraftFrame>
  );
}

/** Closing a walk is an act of its own; with things left it says how many, and they stay open. */
function Finish({ open, view }: { readonly open: OpenAircraft; readonly view: WalkView }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [sure, setSure] = useState(false);
  const { registration } = open;
  if (view.walk.finished !== undefined) return null;
  const finish = async () => {
    if (view.left > 0 && !sure) {
      setSure(true);
      return;
    }
    const kept = await keeping.keep(() =>
      keep.append(registration, [{ type: "walk.finished", body: { walk: view.walk.id } }]),
    );
    if (kept) go({ at: "decide", registration });
  };
  const giveUp = async () => {
    const kept = await keeping.keep(() =>
      keep.append(registration, [
        { type: "walk.abandoned", body: { walk: view.walk.id, why: "Given up before it was finished" } },
      ]),
    );
    if (kept) go({ at: "walk", registration });
  };
  return (
    <section className="left-finish">
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <button
        type="button"
        className={view.left === 0 ? "button filled tall full" : "button tall full"}
        aria-busy={keeping.busy}
        onClick={() => void finish()}
      >
        {view.left === 0
          ? "Finish the walk"
          : sure
            ? `Finish; ${tally(view.left, "step")} stay open`
            : "Finish the walk here"}
      </button>
      {sure ? (
        <button type="button" className="button full" onClick={() => void giveUp()}>
          Give this walk up instead
        </button>
      ) : null}
    </section>
  );
}
