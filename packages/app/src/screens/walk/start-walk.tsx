import { WALK_KINDS, type WalkKind } from "@witnessmark/book";
import { newId, type Walk } from "@witnessmark/ledger";
import { estimate_s, stopOf, type WalkPlan } from "@witnessmark/planner";
import { useEffect, useId, useMemo, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useSize } from "../../instruments/use-width.ts";
import { useKeep } from "../../keep/react.ts";
import { useMinute } from "../../preferences/clock.ts";
import { href, type StepAddress } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { learntOf } from "../../walk/learnt.ts";
import { latestWalk, likelyKind, openWalk, WALK_NAMES } from "../../walk/open-walk.ts";
import { plannedOrder } from "../../walk/order/known-orders.ts";
import { shareOut } from "../../walk/order/share-out.ts";
import { useWalkPlans } from "../../walk/order/use-walk-plan.ts";
import { sinceLast } from "../../walk/since-last.ts";
import { lasting, whenShort } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { WholePlan } from "./whole-plan.tsx";

interface StartWalkProps {
  readonly open: OpenAircraft;
  /** What the person went to: it waits until a walk is begun that has it. */
  readonly step?: StepAddress | undefined;
}

/** Which walk to start; the likely one is filled. */
export function StartWalk({ open, step }: StartWalkProps) {
  const { registration, book, state } = open;
  const keep = useKeep();
  const keeping = useKeeping();
  const minute = useMinute();
  const likely = likelyKind(state, minute * 60_000);
  const plans = useWalkPlans(open, WALK_KINDS, undefined).map(({ plan }) => plan);
  const learnt = useMemo(() => learntOf(book, state), [book, state]);
  const [two, setTwo] = useState(false);
  const twoSaid = useId();
  const likelyPlan = plans.find((plan) => plan.kind === likely);
  const last = latestWalk(state);
  const left = useMemo(() => sinceLast(book, state), [book, state]);
  useJoin(registration, last);
  const going = openWalk(state);
  const title = titleOf(book, step);
  const start = async (kind: WalkKind) => {
    const kept = await keeping.keep(async () => {
      const walk = newId();
      // the first step is that of the order that counts, also where it was asked for a moment ago
      await plannedOrder(book, kind, []).catch(() => undefined);
      if (two) await shareOut(book, kind, [], walk, 0);
      return keep.append(registration, [
        { type: "walk.started", body: { walk, kind, bookSha256: book.sha256 } },
      ]);
    });
    if (!kept) return;
    const begun = plans.find((plan) => plan.kind === kind);
    const hasIt = step !== undefined && begun !== undefined && stopOf(begun, step.id) !== undefined;
    go({ at: "walk", registration, ...(hasIt ? { step } : {}) }, "replace");
  };
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="Which walk?" className="start-walk">
      <main className="start">
        <div className="plan">
          {likelyPlan === undefined ? null : <Sized open={open} plan={likelyPlan} />}
        </div>
        <section className="start-card">
          <p className="start-last">
            {last === undefined
              ? "No walk of this aircraft is known here."
              : `Last: ${WALK_NAMES[last.kind].toLowerCase()}, ${whenShort(Date.parse(last.recordedAt), minute * 60_000)}, ${last.author.name}.`}
          </p>
          {title === undefined ? null : (
            <p className="start-asked" role="status">
              {title} is looked at in a walk, and none is begun. It waits: say which walk this is.
            </p>
          )}
          {left.length === 0 ? null : (
            <ul className="start-since" aria-label="What the last flight left">
              {left.map(({ what, words }) => (
                <li key={what}>{words}</li>
              ))}
            </ul>
          )}
          <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
          {going === undefined ? null : (
            <a className="button full start-on" href={href({ at: "walk", registration })}>
              Go on with the walk of {whenShort(Date.parse(going.recordedAt), minute * 60_000)}
            </a>
          )}
          <ul className="start-kinds">
            {plans.map((plan) => (
              <li key={plan.kind}>
                <button
                  type="button"
                  className={plan.kind === likely ? "button filled" : "button"}
                  aria-busy={keeping.busy}
                  disabled={plan.stepCount === 0}
                  onClick={() => void start(plan.kind)}
                >
                  <b>{WALK_NAMES[plan.kind]}</b>
                  <span>
                    {plan.stepCount === 0
                      ? "The book has none"
                      : `${tally(plan.stepCount, "step")} at ${tally(plan.stops.length, "stance")}, about ${lasting(1000 * estimate_s(plan.stops, { learnt, walking_s: plan.walking_s }))}`}
                  </span>
                </button>
              </li>
            ))}
          </ul>
          <div className="start-two">
            <button
              type="button"
              className="quiet"
              aria-pressed={two}
              aria-describedby={two ? twoSaid : undefined}
              onClick={() => setTwo(!two)}
            >
              Two of us walk it
            </button>
            <a className="quiet" href={href({ at: "order", registration })}>
              The order of the walk
            </a>
          </div>
          {two ? (
            <p className="start-two-said" id={twoSaid}>
              You begin with the first half. The other opens this aircraft on a second phone, goes to the walk
              and takes the second half; what one has done disappears for the other.
            </p>
          ) : null}
          <div className="start-said">
            <a className="quiet start-happened" href={href({ at: "after", registration })}>
              It has flown
            </a>
            <a className="quiet start-happened" href={href({ at: "happened", registration })}>
              Something happened
            </a>
          </div>
        </section>
      </main>
    </AircraftFrame>
  );
}

const titleOf = ({ checks, groundGear }: OpenAircraft["book"], step: StepAddress | undefined) =>
  checks.find(({ id }) => step?.kind === "check" && id === step.id)?.title ??
  groundGear.find(({ id }) => step?.kind === "ground-gear" && id === step.id)?.name;

/** Another phone began a walk while one stood here: this one goes along on it. */
function useJoin(registration: string, last: Walk | undefined): void {
  const [before] = useState(last?.id);
  const begun = last !== undefined && last.id !== before && last.finished === undefined;
  useEffect(() => {
    if (begun) go({ at: "walk", registration }, "replace");
  }, [begun, registration]);
}

function Sized({ open, plan }: { readonly open: OpenAircraft; readonly plan: WalkPlan }) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div className="plan-fill" ref={ref}>
      {size.width_px === 0 ? null : <WholePlan book={open.book} plan={plan} width_px={size.width_px} />}
    </div>
  );
}
