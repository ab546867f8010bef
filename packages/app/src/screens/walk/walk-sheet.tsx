import { judge } from "@witnessmark/assess";
import type { GroundGearItem } from "@witnessmark/book";
import type { Answer } from "@witnessmark/ledger";
import { useCallback, useMemo, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { painted } from "../../frame/painted.ts";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { Draft } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { useWide } from "../../preferences/wide.ts";
import type { StepAddress } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { justKept, type Said, tellKept } from "../../walk/just-kept.ts";
import { WALK_NAMES } from "../../walk/open-walk.ts";
import { backTold } from "../../walk/presence.ts";
import { usePutOff } from "../../walk/put-off.ts";
import { type LastSaid, lastSaid, withdrawals } from "../../walk/undo.ts";
import {
  lastTouched,
  piecesOffCount,
  type StepView,
  stepInHand,
  stepNameAmong,
  type WalkView,
} from "../../walk/walk-view.ts";
import { ANSWER_WORDS } from "../../words/answers.ts";
import { CheckCard } from "./check-card.tsx";
import { EndOfWalk } from "./end-of-walk.tsx";
import { GearCard } from "./gear-card.tsx";
import { KeptStrip } from "./kept-strip.tsx";
import { PlanPane } from "./plan-pane.tsx";
import { isOutside } from "./reading-entry.tsx";
import { ReliefEnded } from "./relief-ended.tsx";
import type { Sayer } from "./sayer.ts";
import { WalkMore } from "./walk-more.tsx";
import { WalksToo } from "./walks-too.tsx";
import { WelcomeBack } from "./welcome-back.tsx";

interface WalkSheetProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  /** A step that the person went to themselves; otherwise the next one in order. */
  readonly step: StepAddress | undefined;
}

export function WalkSheet({ open, view, step }: WalkSheetProps) {
  const { registration, state, person, book } = open;
  const keep = useKeep();
  const keeping = useKeeping();
  const wide = useWide();
  const putOff = usePutOff(view.walk.id);
  const [said, setSaid] = useState<Said | null>(null);
  const [more, setMore] = useState(false);
  const from = lastTouched(view, state, person.id)?.step.id ?? null;
  const next = useMemo(() => stepInHand(view, from, putOff), [view, from, putOff]);
  const undoable = useMemo(() => lastSaid(state, view.walk, person.id), [state, view.walk, person.id]);
  const held = useHeld(`${undoable?.events[0]} ${putOff.size} ${view.walk.askedAgain[0]}`, next?.step.id);
  const inHand =
    (step === undefined ? undefined : view.byId.get(step.id)) ??
    (held === undefined ? undefined : view.byId.get(held)) ??
    next;

  const nameOf = (found: StepView) => stepNameAmong(view, found.step, book.points);
  const answer = useLastAnswer(state, view, undoable, book);
  const sayer: Sayer = {
    busy: keeping.busy,
    trouble: keeping.trouble,
    dismiss: keeping.dismiss,
    say: (drafts, { first, photo } = {}) =>
      keeping.keep(async () => {
        await first?.();
        const shown = async () => {
          // it is in the storage: that is shown before anything is worked out anew
          if (inHand !== undefined) tellKept(nameOf(inHand), draftWords(drafts, inHand, open, view));
          await painted();
          letGo();
        };
        try {
          await keep.append(registration, drafts, shown, photo);
        } finally {
          // from here on the strip says so by itself, from the ledger
          justKept.set(null);
        }
        setSaid(null);
        if (step !== undefined) go({ at: "walk", registration }, "replace");
      }),
    aside: async (words, task) => {
      const kept = await keeping.keep(task);
      if (kept) setSaid({ words, at_ms: Date.now() });
      return kept;
    },
  };

  const undo = async () => {
    if (undoable === undefined) return;
    const kept = await keeping.keep(() => keep.append(registration, withdrawals(undoable)));
    if (!kept) return;
    const back = view.byId.get(undoable.id);
    if (back === undefined) return;
    setSaid({ name: nameOf(back), words: "taken back", at_ms: Date.now() });
    go({ at: "walk", registration, step: { kind: undoable.kind, id: undoable.id } }, "replace");
  };

  const toPoint = useCallback(
    (point: string) => {
      const there = view.steps.filter(
        ({ step: each }) => (each.kind === "check" ? each.check.point : each.item.point) === point,
      );
      const target = there.find((each) => each.status === "open") ?? there[0];
      if (target !== undefined) {
        go({ at: "walk", registration, step: { kind: target.step.kind, id: target.step.id } });
      }
    },
    [view, registration],
  );

  const under =
    view.walk.finished === undefined ? WALK_NAMES[view.walk.kind] : `${WALK_NAMES[view.walk.kind]}, again`;
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under={under} className="walk">
      <main className="walk-main">
        <PlanPane
          open={open}
          view={view}
          inHand={inHand}
          wide={wide}
          canUndo={undoable !== undefined}
          onUndo={() => void undo()}
          onMore={() => setMore(true)}
          onPoint={toPoint}
          strip={
            <KeptStrip
              said={said ?? answer}
              // Undo takes back an answer; a note, or an answer taken back, has none
              onUndo={undoable === undefined || said !== null ? undefined : () => void undo()}
            />
          }
        />
        <section className="walk-card" aria-label="The check in hand">
          <ReliefEnded open={open} since={view.walk.recordedAt} />
          <WalksToo open={open} view={view} />
          <InHand open={open} view={view} inHand={inHand} sayer={sayer} wide={wide} />
        </section>
      </main>
      {more ? (
        <WalkMore open={open} view={view} inHand={inHand} sayer={sayer} onClose={() => setMore(false)} />
      ) : null}
    </AircraftFrame>
  );
}

/**
 * The step in hand stays in hand until this person does something: another phone's answer to it must not take it away
 * while one looks.
 */
function useHeld(ownDoing: string, next: string | undefined): string | undefined {
  const [held, setHeld] = useState({ ownDoing, step: next });
  if (held.ownDoing === ownDoing) return held.step;
  setHeld({ ownDoing, step: next });
  return next;
}

/** What this person said last in this walk, when it was said on this screen: the strip tells it as the ledger has it. */
function useLastAnswer(
  state: OpenAircraft["state"],
  view: WalkView,
  last: LastSaid | undefined,
  book: OpenAircraft["book"],
): Said | null {
  const [before] = useState(last?.events[0]);
  return useMemo(() => {
    if (last === undefined || last.events[0] === before) return null;
    const step = view.byId.get(last.id);
    if (step === undefined) return null;
    const name = stepNameAmong(view, step.step, book.points);
    return { name, words: saidWords(step, state, view), at_ms: last.at_ms };
  }, [last, before, state, view, book]);
}

/** A look is kept as it was said; where its reading says otherwise, that is not passed over in silence. */
const answerWords = (answer: Answer, isOut: boolean): string =>
  isOut && answer === "as-it-should-be"
    ? `${ANSWER_WORDS[answer]}, but its reading is outside the limit: it stays a stop`
    : ANSWER_WORDS[answer];

function saidWords({ step, answer, status }: StepView, state: OpenAircraft["state"], view: WalkView): string {
  if (step.kind === "check") {
    return answer === undefined ? "answered" : answerWords(answer.answer, status === "stop");
  }
  return piecesWords(step.item, state, view, 0);
}

/** The same of drafts that were kept a moment ago and are not in the state yet. */
function draftWords(
  drafts: readonly Draft[],
  { step }: StepView,
  { state, book }: OpenAircraft,
  view: WalkView,
): string {
  let isOut = false;
  for (const { type, body } of drafts) {
    if (type === "check.answered") return answerWords(body.answer, isOut);
    if (step.kind === "check") {
      if (type === "reading.recorded") isOut = isOutside(judge(step.check, book, body));
      continue;
    }
    if (type === "groundGear.removed" || type === "groundGear.fitted") {
      return piecesWords(step.item, state, view, body.count);
    }
  }
  return "kept";
}

function piecesWords(
  item: GroundGearItem,
  state: OpenAircraft["state"],
  view: WalkView,
  more: number,
): string {
  const { id, count } = item;
  return view.walk.kind === "after-flight"
    ? `${Math.min(count, (state.groundGear.get(id)?.fitted ?? 0) + more)} of ${count} on`
    : `${Math.min(count, piecesOffCount(state, view.walk, id) + more)} of ${count} off`;
}

interface InHandProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly inHand: StepView | undefined;
  readonly sayer: Sayer;
  readonly wide: boolean;
}

function InHand({ open, view, inHand, sayer, wide }: InHandProps) {
  const told = backTold.use();
  const interruption = view.walk.interruptions.at(-1);
  if (interruption !== undefined && interruption.event !== told && view.walk.askedAgain.length > 0) {
    return <WelcomeBack open={open} view={view} interruption={interruption} />;
  }
  if (inHand === undefined) return <EndOfWalk open={open} view={view} sayer={sayer} />;
  const { step } = inHand;
  return step.kind === "check" ? (
    <CheckCard
      key={step.id}
      open={open}
      view={view}
      inHand={inHand}
      check={step.check}
      sayer={sayer}
      wide={wide}
    />
  ) : (
    <GearCard
      key={step.id}
      open={open}
      view={view}
      inHand={inHand}
      item={step.item}
      sayer={sayer}
      wide={wide}
    />
  );
}

/**
 * Takes the focus off what was tapped: the card goes, and a browser takes long to remove what has the focus. The next
 * card's heading takes it.
 */
function letGo(): void {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
}
