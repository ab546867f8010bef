import { InputError } from "@witnessmark/engine";
import { type Bodies, canonical, type Decision, sha256 } from "@witnessmark/ledger";
import type { Assessment } from "../assessment.ts";
import { decisionFaults, type Reason } from "./needs.ts";

/** SHA-256 over RFC 8785 canonical JSON of an assessment, 64 lower-case hexadecimal figures. */
export const assessmentHash = (assessment: Assessment): Promise<string> => sha256(canonical(assessment));

/**
 * The body of the event that signs a decision: everything that lets it be recomputed and compared years later. It is
 * for the assessment as it was shown; sign that one, not a later one.
 *
 * @param decision a new UUID
 * @param words why, of the decision as a whole; nothing needs them
 * @throws {InputError} `missing` when nothing was walked, or when a reason or a lawful basis is not given
 */
export async function decisionBody(given: {
  readonly assessment: Assessment;
  readonly decision: string;
  readonly answer: Decision["answer"];
  readonly reasons: readonly Reason[];
  readonly words?: string;
}): Promise<Bodies["decision.signed"]> {
  const { assessment, decision, answer, reasons } = given;
  const words = given.words?.trim() ?? "";
  if (assessment.walk === null) {
    throw new InputError("missing", "walk", {
      expected: "a walk to decide on",
      received: "none",
      remedy: "walk round the aircraft first",
    });
  }
  const faults = decisionFaults(assessment, answer, reasons);
  if (faults.length > 0) {
    throw new InputError("missing", "reasons", {
      expected: "a reason for everything that is not clear, and a lawful basis for every stop",
      received: faults.map(({ message }) => message).join("; "),
    });
  }
  return {
    decision,
    walk: assessment.walk.id,
    answer,
    flight: assessment.flight,
    at: assessment.at,
    bookSha256: assessment.book.sha256,
    assessmentSha256: await assessmentHash(assessment),
    counts: assessment.counts,
    restsOn: assessment.verdicts.map(({ id, status }) => ({ verdict: id, status })),
    heads: assessment.heads,
    reasons,
    ...(words === "" ? {} : { words }),
  };
}
