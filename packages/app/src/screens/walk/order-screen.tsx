import { WALK_KINDS, type WalkKind } from "@witnessmark/book";
import {
  hasFaults,
  type OrderedStop,
  orderFaults,
  planWalk,
  type WalkPlan,
  walkInOrder,
} from "@witnessmark/planner";
import { useEffect, useMemo, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useSize } from "../../instruments/use-width.ts";
import { useWide } from "../../preferences/wide.ts";
import { href } from "../../routes/route.ts";
import { WALK_NAMES } from "../../walk/open-walk.ts";
import { askOrder } from "../../walk/order/ask-order.ts";
import {
  beginEdit,
  idsIn,
  type OrderEdit,
  replaced,
  stepMoved,
  stopMoved,
  undone,
} from "../../walk/order/edit-order.ts";
import { knownOrder } from "../../walk/order/known-orders.ts";
import { type MyOrder, myOrder, setMyOrder } from "../../walk/order/my-orders.ts";
import { useProof } from "../../walk/order/use-proof.ts";
import { useWalkPlans } from "../../walk/order/use-walk-plan.ts";
import { countOf } from "../../words/figures.ts";
import { OrderHead } from "./order-head.tsx";
import { OrderList } from "./order-list.tsx";
import { WholePlan } from "./whole-plan.tsx";
import "./walk.css";
import "./left.css";
import "./order.css";

/** The whole order of each walk: whose it is, what it costs, and a way to change it by hand. */
export function OrderScreen({ open }: { readonly open: OpenAircraft }) {
  const plans = useWalkPlans(open, WALK_KINDS, undefined);
  const [kind, setKind] = useState<WalkKind>("first-of-day");
  const found = plans.find(({ plan }) => plan.kind === kind);
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="The order of the walk">
      <main className="order-screen">
        <a className="back-row" href={href({ at: "start", registration: open.registration })}>
          Back to which walk
        </a>
        <div className="left-filter order-kinds">
          {WALK_KINDS.map((each) => (
            <button key={each} type="button" aria-pressed={each === kind} onClick={() => setKind(each)}>
              {WALK_NAMES[each]}
            </button>
          ))}
        </div>
        {found === undefined || !found.isPlanned ? (
          <p className="order-said" role="status">
            Finding the order of the walk.
          </p>
        ) : found.plan.stepCount === 0 ? (
          <p className="order-said">The book has no such walk.</p>
        ) : (
          <WholeOrder key={`${kind} ${open.book.sha256}`} open={open} plan={found.plan} />
        )}
      </main>
    </AircraftFrame>
  );
}

const stopsOf = (plan: WalkPlan): readonly OrderedStop[] =>
  plan.stops.map(({ stance, steps }) => ({ stance: stance.id, steps: steps.map(({ id }) => id) }));

function WholeOrder({ open, plan }: { readonly open: OpenAircraft; readonly plan: WalkPlan }) {
  const { book, registration } = open;
  const { kind } = plan;
  const [edit, setEdit] = useState<OrderEdit>(() => beginEdit(stopsOf(plan)));
  const [trouble, setTrouble] = useState<string | null>(null);
  const wide = useWide();
  const proof = useProof(book, kind, true);
  const counts = knownOrder(book, kind, []);
  const kept = myOrder(registration, kind);
  const faults = useMemo(() => orderFaults(book, kind, idsIn(edit.stops)), [book, kind, edit.stops]);
  const walked = useWalked(open, kind, edit.stops);
  const isChanged = JSON.stringify(edit.stops) !== JSON.stringify(stopsOf(plan));
  const isFaulty = hasFaults(faults);
  const keepIt = async () => {
    try {
      const order = await askOrder({ ask: "by-hand", book, kind, also: [], order: idsIn(edit.stops) });
      setMyOrder(registration, kind, order);
      setEdit({ ...edit, stops: order.stops });
    } catch (error) {
      setTrouble(`The order was not kept: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
  const backToPlanned = () => {
    if (counts === undefined) return;
    setMyOrder(registration, kind, undefined);
    setEdit(replaced(edit, counts.stops));
  };
  const shown = useMemo(
    () => walkInOrder(planWalk(book, kind), book, { stops: edit.stops }),
    [book, kind, edit.stops],
  );
  return (
    <div className="order-whole">
      {wide ? <Drawn open={open} plan={shown} /> : null}
      <div className="order-sheet">
        <OrderHead
          book={book}
          kind={kind}
          counts={counts}
          isByHand={kept !== undefined}
          walked={walked}
          proof={proof}
          onTake={(stops) => setEdit(replaced(edit, stops))}
        />
        <OrderList
          open={open}
          plan={plan}
          stops={edit.stops}
          faults={faults}
          onStop={(from, to) => setEdit((now) => stopMoved(now, from, to))}
          onStep={(id, way) => setEdit((now) => stepMoved(now, id, way, isOwn(plan)))}
        />
        <div className="order-foot">
          <Trouble words={trouble} onDismiss={() => setTrouble(null)} />
          <p className="order-state" role="status">
            {faultWords(faults) ??
              (isChanged ? "Changed, not kept yet" : kept === undefined ? "" : "Kept on this phone")}
          </p>
          <div className="order-acts">
            <button
              type="button"
              className="button"
              disabled={edit.before.length === 0}
              onClick={() => setEdit(undone(edit))}
            >
              Undo
            </button>
            {kept === undefined && !isChanged ? null : (
              <button type="button" className="button" onClick={backToPlanned}>
                {counts?.follows === "manual" ? "Back to the manual’s" : "Back to the planned"}
              </button>
            )}
            <button
              type="button"
              className="button filled"
              disabled={!isChanged || isFaulty}
              onClick={() => void keepIt()}
            >
              Walk it like this
            </button>
          </div>
        </div>
      </div>
    </div>
  );
}

/** The walk as it would be walked, from above. */
function Drawn({ open, plan }: { readonly open: OpenAircraft; readonly plan: WalkPlan }) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div className="order-plan">
      <div className="plan-fill" ref={ref}>
        {size.width_px === 0 ? null : <WholePlan book={open.book} plan={plan} {...size} />}
      </div>
    </div>
  );
}

/** A step can be taken into a stop at its own stance; which others serve it, the planner says when it is kept. */
const isOwn =
  (plan: WalkPlan) =>
  (id: string, stance: string): boolean =>
    plan.stops.some((stop) => stop.stance.id === stance && stop.steps.some((step) => step.id === id));

/** What the order under the fingers costs, as soon as the planner has said so. */
function useWalked(open: OpenAircraft, kind: WalkKind, stops: readonly OrderedStop[]): MyOrder | null {
  const [walked, setWalked] = useState<MyOrder | null>(null);
  const { book } = open;
  useEffect(() => {
    let isCurrent = true;
    askOrder({ ask: "by-hand", book, kind, also: [], order: idsIn(stops) }).then(
      (order) => isCurrent && setWalked(order),
      () => isCurrent && setWalked(null), // an order with faults has no cost: the faults are told
    );
    return () => {
      isCurrent = false;
    };
  }, [book, kind, stops]);
  return walked;
}

function faultWords({
  missed,
  twice,
  unknown,
  tooEarly,
  afterLast,
}: ReturnType<typeof orderFaults>): string | undefined {
  const parts = [
    missed.length > 0 ? `${countOf(missed.length, "step")} left out` : undefined,
    twice.length > 0 ? `${countOf(twice.length, "step")} walked twice` : undefined,
    unknown.length > 0 ? `${countOf(unknown.length, "step")} not in the book` : undefined,
    tooEarly.length > 0 ? `${countOf(tooEarly.length, "step")} too early` : undefined,
    afterLast.length > 0 ? `${countOf(afterLast.length, "step")} after the last look` : undefined,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? undefined : `${parts.join(", ")}: put that right first`;
}
