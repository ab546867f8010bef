import { holdsWhen } from "../relief.ts";
import { type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

const PERMIT_CITATIONS: Citations = [
  {
    title: "14 CFR 21.197: special flight permits",
    locator: "(a)",
    edition: "2021 consolidation",
    status: "published",
  },
  {
    title: "14 CFR 39.23: a directive may forbid the permit",
    edition: "2021 consolidation",
    status: "published",
  },
];

/** What a permit may be issued for. @source 14 CFR 21.197(a) */
export const PERMIT_PURPOSES = {
  "repair-base": "To a base where it is repaired, altered or maintained",
  storage: "To a point of storage",
  delivery: "To deliver or export it",
  "production-test": "Production tests of new aircraft",
  evacuation: "Away from impending danger",
  demonstration: "Demonstration to customers of new aircraft that passed their tests",
} as const;

export type PermitPurpose = keyof typeof PERMIT_PURPOSES;

export interface PermitInput {
  /** `none`: a flight for anything else. */
  readonly purpose?: PermitPurpose | "none" | undefined;
  readonly capableOfSafeFlight?: boolean | undefined;
  /** A directive that is overdue forbids it. */
  readonly directiveForbids?: boolean | undefined;
}

/** Whether a special flight permit may be asked for. Who issues it decides. */
export const specialPermit = ({ purpose, capableOfSafeFlight, directiveForbids }: PermitInput): RuledSteps =>
  ruledSteps(
    [
      {
        rule: "21.197(a)",
        words: "The flight is for one of the purposes that the rule lists",
        holds: purpose === undefined ? "unknown" : purpose !== "none",
      },
      {
        rule: "21.197(a)",
        words: "It is capable of safe flight, though it may not meet all requirements",
        holds: holdsWhen(capableOfSafeFlight, true),
      },
      {
        rule: "39.23",
        words: "No directive that applies forbids it",
        holds: holdsWhen(directiveForbids, false),
      },
    ],
    PERMIT_CITATIONS,
  );
