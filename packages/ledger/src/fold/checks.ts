import type { Bodies, KnownEvent } from "../event.ts";
import type { CheckAnswer, Origin, RecordedReading } from "../state.ts";
import type { Draft } from "./draft.ts";

type Event<T extends KnownEvent["type"]> = Extract<KnownEvent, { type: T }>;

export function foldAnswer(draft: Draft, event: Event<"check.answered">): void {
  const { body } = event;
  const answer: { -readonly [K in keyof CheckAnswer]: CheckAnswer[K] } = {
    event: event.id,
    device: event.device,
    deviceSeq: event.deviceSeq,
    author: event.author,
    hlc: event.hlc,
    recordedAt: event.recordedAt,
    check: body.check,
    walk: body.walk,
    answer: body.answer,
  };
  if (body.reason !== undefined) answer.reason = body.reason;
  clearAskedAgain(draft, body);
  draft.history(body.check).answers.push(answer);
  draft.answersOf(body.walk).push(answer);
}

export function foldReading(draft: Draft, event: Event<"reading.recorded">): void {
  const { body } = event;
  const reading: { -readonly [K in keyof RecordedReading]: RecordedReading[K] } = {
    event: event.id,
    device: event.device,
    deviceSeq: event.deviceSeq,
    author: event.author,
    hlc: event.hlc,
    recordedAt: event.recordedAt,
    walk: body.walk,
    gauge: body.gauge,
    read: body.read,
  };
  if (body.temperature !== undefined) reading.temperature = body.temperature;
  draft.history(body.check).readings.push(reading);
}

/** Marks, or clears, every answer of one walk to one check. */
export function markAnswers(draft: Draft, walk: string, check: string, askedAgainBy: string | null): void {
  const byWalk = draft.answersOf(walk);
  const history = draft.history(check).answers;
  for (const [at, answer] of byWalk.entries()) {
    if (answer.check !== check) continue;
    const { askedAgainBy: _before, ...rest } = answer;
    const marked = askedAgainBy === null ? rest : { ...rest, askedAgainBy };
    byWalk[at] = marked;
    const place = history.findLastIndex((other) => other.event === answer.event);
    if (place >= 0) history[place] = marked;
  }
}

function clearAskedAgain(draft: Draft, body: Bodies["check.answered"]): void {
  const walk = draft.state.walks.get(body.walk);
  if (walk === undefined || !walk.askedAgain.includes(body.check)) return;
  draft
    .map("walks")
    .set(body.walk, { ...walk, askedAgain: walk.askedAgain.filter((check) => check !== body.check) });
  markAnswers(draft, body.walk, body.check, null);
}

/** How far an interruption asks the pilot to step back: three checks. */
const STEP_BACK = 3;

/**
 * The checks an interruption asks for again, oldest first: the last three different ones answered in that walk before
 * it, by the phone that was interrupted; by any phone when that one had answered none.
 */
export function lastAnswered(
  answers: readonly CheckAnswer[],
  device: string,
  isBefore: (answer: Origin) => boolean,
): readonly string[] {
  const before = answers.filter(isBefore);
  const own = before.filter((answer) => answer.device === device);
  const checks = new Set<string>();
  for (const answer of (own.length > 0 ? own : before).toReversed()) {
    checks.add(answer.check);
    if (checks.size === STEP_BACK) break;
  }
  return [...checks].reverse();
}
