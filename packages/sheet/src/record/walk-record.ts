import type { AircraftState, CheckAnswer, Walk } from "@witnessmark/ledger";
import { WALK_NAMES } from "../walk-names.ts";
import type { RecordWalk } from "./aircraft-record.ts";
import { momentWords } from "./day-words.ts";
import { checkName, type Names, personWords } from "./names.ts";

const WHY = {
  "too-dark": "too dark",
  "out-of-reach": "out of reach",
  "too-hot": "too hot",
  "no-tool": "no tool",
  weather: "weather",
  "something-else": "something else",
} as const;

function endWords(walk: Walk, state: AircraftState): string {
  if (walk.abandoned !== undefined)
    return `Given up ${momentWords(walk.abandoned.recordedAt)}: ${walk.abandoned.why}`;
  if (walk.finished !== undefined) return `Finished ${momentWords(walk.finished.recordedAt)}`;
  const decision = state.decisions.find((each) => each.walk === walk.id);
  return decision === undefined ? "Not finished" : `Decided ${momentWords(decision.recordedAt)}`;
}

/** The last answer to each check in a walk. */
const lastAnswers = (answers: readonly CheckAnswer[]): readonly CheckAnswer[] => [
  ...new Map(answers.map((answer) => [answer.check, answer])).values(),
];

function exceptionWords({ check, answer, reason }: CheckAnswer, names: Names): readonly string[] {
  const name = checkName(check, names);
  if (answer === "not-right") return [`Not right: ${name}`];
  if (answer === "could-not-check")
    return [`Could not check: ${name}${reason === undefined ? "" : ` (${WHY[reason]})`}`];
  return [];
}

/** Readings by walk, so that a long ledger is gone through once. */
function readingsByWalk(state: AircraftState): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { readings } of state.checks.values())
    for (const { walk } of readings) counts.set(walk, (counts.get(walk) ?? 0) + 1);
  return counts;
}

/** Walks in the order in which they began, each with what was not as it should be. */
export function walksOf(
  state: AircraftState,
  names: Names,
  isIn: (at: string) => boolean,
): readonly RecordWalk[] {
  const readings = readingsByWalk(state);
  return [...state.walks.values()]
    .filter(({ recordedAt }) => isIn(recordedAt))
    .map((walk) => {
      const answers = lastAnswers(state.answersByWalk.get(walk.id) ?? []);
      const count = (answer: CheckAnswer["answer"]) =>
        answers.filter((each) => each.answer === answer).length;
      return {
        id: walk.id,
        at: walk.recordedAt,
        by: personWords(walk.author),
        entry: walk.event,
        kind: WALK_NAMES[walk.kind],
        ended: endWords(walk, state),
        answers: {
          "as-it-should-be": count("as-it-should-be"),
          "not-right": count("not-right"),
          "could-not-check": count("could-not-check"),
        },
        readings: readings.get(walk.id) ?? 0,
        exceptions: [
          ...answers.flatMap((answer) => exceptionWords(answer, names)),
          ...walk.interruptions.map(
            ({ left, back }) => `Interrupted from ${momentWords(left)} to ${momentWords(back)}`,
          ),
        ],
      };
    });
}
