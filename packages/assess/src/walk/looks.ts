import type { Check } from "@witnessmark/book";
import {
  type AircraftState,
  type CheckAnswer,
  compareOrder,
  type Origin,
  type RecordedReading,
  type Walk,
} from "@witnessmark/ledger";

/** What counts as the look at one check, and what it left. */
export interface Look {
  readonly answer: CheckAnswer;
  readonly reading: RecordedReading | undefined;
}

/** Only what had been seen up to these heads (highest deviceSeq of each device) counts; everything when absent. */
export type Heads = Readonly<Record<string, number>>;

/** How many readings of one check are gone through, newest first, to find that of a walk. */
const READINGS_BACK = 256;

/**
 * The walk in hand: the one begun last and not abandoned, finished or not. A walk that was left behind is in hand no
 * more once another has begun.
 */
export function walkInHand({ walks }: Pick<AircraftState, "walks">): Walk | null {
  let last: Walk | null = null;
  for (const walk of walks.values()) {
    if (walk.abandoned === undefined) last = walk; // a state has its walks in the order in which they began
  }
  return last;
}

export const isSeen = (origin: Pick<Origin, "device" | "deviceSeq">, heads: Heads | undefined): boolean =>
  heads === undefined || origin.deviceSeq <= (heads[origin.device] ?? 0);

/** The answers of a walk: the latest to each check, and the latest of each device where there are several. */
export interface WalkAnswers {
  readonly latest: ReadonlyMap<string, CheckAnswer>;
  /** Only for checks that more than one device answered. */
  readonly byDevice: ReadonlyMap<string, ReadonlyMap<string, CheckAnswer>>;
  /** The earliest that is no "could not check". */
  readonly first: ReadonlyMap<string, CheckAnswer>;
}

export function answersIn(state: AircraftState, walk: Walk | null, heads: Heads | undefined): WalkAnswers {
  const latest = new Map<string, CheckAnswer>();
  const first = new Map<string, CheckAnswer>();
  const byDevice = new Map<string, Map<string, CheckAnswer>>();
  for (const answer of walk === null ? [] : (state.answersByWalk.get(walk.id) ?? [])) {
    if (!isSeen(answer, heads)) continue;
    const { check } = answer;
    const before = latest.get(check);
    latest.set(check, answer);
    if (answer.answer !== "could-not-check" && !first.has(check)) first.set(check, answer);
    const devices = byDevice.get(check);
    if (devices !== undefined) devices.set(answer.device, answer);
    else if (before !== undefined && before.device !== answer.device) {
      byDevice.set(
        check,
        new Map([
          [before.device, before],
          [answer.device, answer],
        ]),
      );
    }
  }
  return { latest, byDevice, first };
}

/** The reading of a check that was recorded last in a walk. */
export function readingIn(
  state: AircraftState,
  check: string,
  walk: string,
  heads: Heads | undefined,
): RecordedReading | undefined {
  const readings = state.checks.get(check)?.readings ?? [];
  const stop = Math.max(0, readings.length - READINGS_BACK);
  for (let at = readings.length - 1; at >= stop; at -= 1) {
    const reading = readings[at];
    if (reading !== undefined && reading.walk === walk && isSeen(reading, heads)) return reading;
  }
  return undefined;
}

const lastSeen = (answers: readonly CheckAnswer[], heads: Heads | undefined): CheckAnswer | undefined =>
  heads === undefined ? answers.at(-1) : answers.findLast((answer) => isSeen(answer, heads));

/**
 * The look that counts for a check.
 *
 * A check of the walk's own kind is looked at in that walk; a later answer of another walk counts only when it is the
 * worse news. Any other check rests on its last answer, of whatever walk.
 */
export function lookAt(
  state: AircraftState,
  check: Check,
  inWalk: WalkAnswers,
  isOfWalk: boolean,
  heads: Heads | undefined,
): Look | undefined {
  const last = lastSeen(state.checks.get(check.id)?.answers ?? [], heads);
  const own = isOfWalk ? inWalk.latest.get(check.id) : last;
  if (own === undefined) return undefined;
  const worse =
    last !== undefined && last.answer !== "as-it-should-be" && compareOrder(last, own) > 0 ? last : own;
  const reading = check.reading === undefined ? undefined : readingIn(state, check.id, worse.walk, heads);
  return { answer: worse, reading };
}
