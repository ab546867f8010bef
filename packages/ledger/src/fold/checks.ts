import type { Bodies, KnownEvent } from "../event.ts";
import { hlcTime_ms } from "../hlc.ts";
import type { CheckAnswer, Origin, RecordedReading } from "../state.ts";
import { type Draft, originOf, present, seenAt } from "./draft.ts";
import { saidMoment_ms } from "./timed.ts";

type Event<T extends KnownEvent["type"]> = Extract<KnownEvent, { type: T }>;

export function foldAnswer(draft: Draft, event: Event<"check.answered">): void {
  const { body } = event;
  const answer: { -readonly [K in keyof CheckAnswer]: CheckAnswer[K] } = {
    event: event.id,
    device: event.device,
    deviceSeq: event.deviceSeq,
    author: event.author,
    hlc: event.hlc,
    recordedAt: seenAt(draft, body.walk, event),
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
    recordedAt: seenAt(draft, body.walk, event),
    walk: body.walk,
    gauge: body.gauge,
    read: body.read,
  };
  if (body.temperature !== undefined) reading.temperature = body.temperature;
  draft.history(body.check).readings.push(reading);
}

/** A reading whose text of the time does not read is taken at its stamp. */
function moment_ms(reading: RecordedReading): number {
  const read_ms = Date.parse(reading.recordedAt);
  return Number.isNaN(read_ms) ? hlcTime_ms(reading.hlc) : read_ms;
}

/** The place after every reading that is not later, in a list that is oldest first. */
function placeOf(readings: readonly RecordedReading[], at_ms: number): number {
  let low = 0;
  let high = readings.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const found = readings[middle];
    if (found !== undefined && moment_ms(found) <= at_ms) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Puts a reading from a file where its moment belongs; the same value at the same moment counts once. */
export function foldImported(draft: Draft, event: Event<"reading.imported">): void {
  const { check, gauge, at, read, temperature, by, words, import: from } = event.body;
  const { readings } = draft.history(check);
  const at_ms = saidMoment_ms(at, event);
  const place = placeOf(readings, at_ms);
  for (let before = place - 1; before >= 0; before -= 1) {
    const other = readings[before];
    if (other === undefined || moment_ms(other) !== at_ms) break;
    if (other.read.value === read.value && other.read.unit === read.unit) return;
  }
  readings.splice(place, 0, {
    ...originOf(event),
    recordedAt: at,
    walk: event.id,
    gauge,
    read,
    ...present({ temperature }),
    imported: { import: from, broughtInAt: event.recordedAt, ...present({ by, words }) },
  });
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
