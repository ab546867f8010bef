import { useMemo } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import type { StepAddress } from "../../routes/route.ts";
import { latestWalk } from "../../walk/open-walk.ts";
import { leaving } from "../../walk/presence.ts";
import { planOf } from "../../walk/walk-plan.ts";
import { walkView } from "../../walk/walk-view.ts";
import { AwayScreen } from "./away-screen.tsx";
import { StartWalk } from "./start-walk.tsx";
import { WalkSheet } from "./walk-sheet.tsx";
import "./walk.css";

interface WalkScreenProps {
  readonly open: OpenAircraft;
  readonly step: StepAddress | undefined;
}

/** The walk in hand; without one, which walk to start. */
export function WalkScreen({ open, step }: WalkScreenProps) {
  const { book, state, assessment } = open;
  const walk = latestWalk(state);
  const plan = useMemo(
    () => (walk === undefined ? undefined : planOf(book, walk.kind, walk.id, state, assessment)),
    [book, walk, state, assessment],
  );
  const view = useMemo(
    () => (walk === undefined || plan === undefined ? undefined : walkView(walk, plan, state, assessment)),
    [walk, plan, state, assessment],
  );
  const left = leaving.use();
  if (walk === undefined || view === undefined) return <StartWalk open={open} />;
  if (left !== null && left.walk === walk.id) return <AwayScreen open={open} view={view} left={left} />;
  const isDone = walk.finished !== undefined && view.left === 0;
  if (step === undefined && (isDone || assessment.walk?.isOver === true)) return <StartWalk open={open} />;
  return <WalkSheet open={open} view={view} step={step} />;
}
