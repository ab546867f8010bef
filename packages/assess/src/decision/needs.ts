import type { Decision, Status } from "@witnessmark/ledger";
import type { Assessment } from "../assessment.ts";

/** What the pilot must say about one verdict before going. */
export interface DecisionNeed {
  readonly verdict: string;
  readonly status: Exclude<Status, "clear">;
  readonly title: string;
  readonly says: string;
  /** Whether a lawful basis must be named beside the reason. */
  readonly basis: boolean;
}

export type Reason = Decision["reasons"][number];

/** One thing that is wrong with what was given for a decision. */
export interface DecisionFault {
  readonly verdict: string;
  readonly code: "no-reason" | "no-basis" | "unknown-verdict";
  /** For the person who decides. */
  readonly message: string;
}

/**
 * What a decision needs: to go, a reason for every caution and everything open; for every stop also the lawful basis
 * by name. Not going needs nothing.
 */
export function decisionNeeds(assessment: Assessment, answer: Decision["answer"]): readonly DecisionNeed[] {
  if (answer === "not-going") return [];
  return assessment.verdicts.flatMap(({ id, status, title, says }) =>
    status === "clear" ? [] : [{ verdict: id, status, title, says, basis: status === "stop" }],
  );
}

const isSaid = (text: string | undefined): boolean => text !== undefined && text.trim() !== "";

/** What is still missing from the reasons given, in the order of the verdicts; empty when the decision can be signed. */
export function decisionFaults(
  assessment: Assessment,
  answer: Decision["answer"],
  reasons: readonly Reason[],
): readonly DecisionFault[] {
  const given = new Map(reasons.map((reason) => [reason.verdict, reason]));
  const faults: DecisionFault[] = [];
  for (const { verdict, title, basis } of decisionNeeds(assessment, answer)) {
    const reason = given.get(verdict);
    if (!isSaid(reason?.words)) {
      faults.push({ verdict, code: "no-reason", message: `${title}: say why you go with it` });
    }
    if (basis && !isSaid(reason?.basis)) {
      faults.push({
        verdict,
        code: "no-basis",
        message: `${title}: name the lawful basis on which this flight may be made`,
      });
    }
  }
  const known = new Set(assessment.verdicts.map(({ id }) => id));
  for (const { verdict } of reasons) {
    if (!known.has(verdict)) {
      faults.push({
        verdict,
        code: "unknown-verdict",
        message: `A reason was given for "${verdict}", which this assessment does not have; read it again`,
      });
    }
  }
  return faults;
}
