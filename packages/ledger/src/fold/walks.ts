import type { KnownEvent } from "../event.ts";
import { compareOrder } from "../order.ts";
import type { Walk } from "../state.ts";
import { lastAnswered, markAnswers } from "./checks.ts";
import { type Draft, originOf } from "./draft.ts";
import { leaveUnplaced, placeWaiting } from "./unplaced.ts";

type Event<T extends KnownEvent["type"]> = Extract<KnownEvent, { type: T }>;

export function foldWalkStarted(draft: Draft, event: Event<"walk.started">): void {
  const { walk, kind, bookSha256, onPaper } = event.body;
  if (draft.state.walks.has(walk)) {
    leaveUnplaced(draft, walk, event);
    return;
  }
  const started: Walk = { ...originOf(event), id: walk, kind, bookSha256, interruptions: [], askedAgain: [] };
  draft.map("walks").set(walk, onPaper === undefined ? started : datedByPaper(started, onPaper));
  placeWaiting(draft, walk, (waiting) => {
    switch (waiting.type) {
      case "walk.interrupted":
      case "walk.finished":
      case "walk.abandoned":
        foldOfWalk(draft, waiting);
        return true;
      default:
        return false;
    }
  });
}

/** A paper that claims to have been begun after it was typed in is dated by its typing. */
function datedByPaper(
  walk: Walk,
  { begun, ended }: { readonly begun: string; readonly ended: string },
): Walk {
  const typedInAt = walk.recordedAt;
  const recordedAt = Date.parse(begun) <= Date.parse(typedInAt) ? begun : typedInAt;
  return { ...walk, recordedAt, onPaper: { begun: recordedAt, ended, typedInAt } };
}

/** What happens to a walk that has begun; kept unplaced until it has. */
export function foldOfWalk(
  draft: Draft,
  event: Event<"walk.interrupted" | "walk.finished" | "walk.abandoned">,
): void {
  const walk = draft.state.walks.get(event.body.walk);
  if (walk === undefined) {
    leaveUnplaced(draft, event.body.walk, event);
    return;
  }
  switch (event.type) {
    case "walk.interrupted":
      interrupt(draft, walk, event);
      return;
    case "walk.finished":
      draft.map("walks").set(walk.id, { ...walk, finished: originOf(event) });
      return;
    case "walk.abandoned":
      draft.map("walks").set(walk.id, { ...walk, abandoned: { ...originOf(event), why: event.body.why } });
      return;
    default:
      event satisfies never;
  }
}

function interrupt(draft: Draft, walk: Walk, event: Event<"walk.interrupted">): void {
  const answers = draft.state.answersByWalk.get(walk.id) ?? [];
  const asksAgain = lastAnswered(answers, event.device, (answer) => compareOrder(answer, event) < 0);
  // Answers after it are here only when the walk's start sorts after its interruption (a clock far ahead).
  const open = asksAgain.filter(
    (check) => !answers.some((answer) => answer.check === check && compareOrder(answer, event) > 0),
  );
  for (const check of open) markAnswers(draft, walk.id, check, event.id);
  draft.map("walks").set(walk.id, {
    ...walk,
    interruptions: [
      ...walk.interruptions,
      {
        ...originOf(event),
        cause: event.body.cause,
        left: event.body.left,
        back: event.body.back,
        asksAgain,
      },
    ],
    askedAgain: [...walk.askedAgain.filter((check) => !open.includes(check)), ...open],
  });
}
