import type { AircraftState, CheckAnswer, RecordedReading } from "@witnessmark/ledger";

/** What was seen of a check before the walk in hand. */
export interface LastLook {
  readonly answer: CheckAnswer | undefined;
  readonly reading: RecordedReading | undefined;
}

export function lastLook(state: AircraftState, check: string, walk: string): LastLook {
  const history = state.checks.get(check);
  return {
    answer: history?.answers.findLast((answer) => answer.walk !== walk),
    reading: history?.readings.findLast((reading) => reading.walk !== walk),
  };
}

/** The reading of this walk, when one was kept. */
export const readingOfWalk = (
  state: AircraftState,
  check: string,
  walk: string,
): RecordedReading | undefined =>
  state.checks.get(check)?.readings.findLast((reading) => reading.walk === walk);
