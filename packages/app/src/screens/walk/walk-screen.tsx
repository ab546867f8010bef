import type { WalkKind } from "@witnessmark/book";
import { useMemo } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import type { StepAddress } from "../../routes/route.ts";
import { latestWalk } from "../../walk/open-walk.ts";
import { useWalkPlans } from "../../walk/order/use-walk-plan.ts";
import { leaving } from "../../walk/presence.ts";
import { walkView } from "../../walk/walk-view.ts";
import { AwayScreen } from "./away-screen.tsx";
import { StartWalk } from "./start-walk.tsx";
import { WalkSheet } from "./walk-sheet.tsx";
import "./walk.css";

interface WalkScreenProps {
  readonly open: OpenAircraft;
  readonly step: StepAddress | undefined;
}

const NONE: readonly WalkKind[] = [];

/** The walk in hand; without one, which walk to start. */
export function WalkScreen({ open, step }: WalkScreenProps) {
  const { state, assessment } = open;
  const walk = latestWalk(state);
  const kinds = useMemo(() => (walk === undefined ? NONE : [walk.kind]), [walk]);
  const [found] = useWalkPlans(open, kinds, walk?.id);
  const plan = found?.plan;
  const view = useMemo(
    () => (walk === undefined || plan === undefined ? undefined : walkView(walk, plan, state, assessment)),
    [walk, plan, state, assessment],
  );
  const left = leaving.use();
  if (walk === undefined || view === undefined) return <StartWalk open={open} step={step} />;
  if (left !== null && left.walk === walk.id) return <AwayScreen open={open} view={view} left={left} />;
  const isDone = walk.finished !== undefined && view.left === 0;
  // what is looked at now belongs to the next walk, never to one that was flown on
  if (assessment.walk?.isOver === true || (step === undefined && isDone))
    return <StartWalk open={open} step={step} />;
  if (found?.isPlanned === false) return <Planning open={open} />;
  return <WalkSheet open={open} view={view} step={step} />;
}

/** For a moment, the first time that a book is walked on this phone. */
function Planning({ open }: { readonly open: OpenAircraft }) {
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="Finding the order">
      <main className="away">
        <p role="status">Finding the order of the walk.</p>
      </main>
    </AircraftFrame>
  );
}
