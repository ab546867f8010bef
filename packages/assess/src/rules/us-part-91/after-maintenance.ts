import { holdsWhen } from "../relief.ts";
import { any, type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

const AFTER_WORK_CITATIONS: Citations = [
  {
    title: "14 CFR 91.407: operation after maintenance, preventive maintenance, rebuilding or alteration",
    edition: "2021 consolidation",
    status: "published",
  },
];

export interface AfterWorkInput {
  readonly released?: boolean | undefined;
  readonly recorded?: boolean | undefined;
  /** The work may have changed how it flies, to be felt in the air. */
  readonly mayFlyOtherwise?: boolean | undefined;
  readonly passengers?: boolean | undefined;
  /** A rated pilot, private at least, has flown it, checked it and written that down. */
  readonly flownAndLogged?: boolean | undefined;
  /** Tests on the ground show conclusively that nothing changed. */
  readonly groundTestsConclusive?: boolean | undefined;
}

export function afterMaintenance(input: AfterWorkInput): RuledSteps {
  const { released, recorded, mayFlyOtherwise, passengers, flownAndLogged, groundTestsConclusive } = input;
  const not = (said: boolean | undefined): boolean | undefined => (said === undefined ? undefined : !said);
  return ruledSteps(
    [
      {
        rule: "91.407(a)(1)",
        words: "It was released by a person who may",
        holds: holdsWhen(released, true),
      },
      { rule: "91.407(a)(2)", words: "The entry in the record was made", holds: holdsWhen(recorded, true) },
      {
        rule: "91.407(b)",
        words:
          "Passengers are carried only after a check flight, where the work may have changed how it flies",
        holds: holdsWhen(
          any(not(mayFlyOtherwise), not(passengers), flownAndLogged, groundTestsConclusive),
          true,
        ),
      },
    ],
    AFTER_WORK_CITATIONS,
  );
}
