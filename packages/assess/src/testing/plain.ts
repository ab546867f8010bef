import type { Assessment, Verdict } from "../assessment.ts";

/** No-break spaces as plain ones, so that a test reads as it is written. */
export const plain = (text: string | undefined): string => (text ?? "").replaceAll("\u00A0", " ");

/** The one verdict of this id. @throws when there is none, or more than one */
export function verdictOf(assessment: Assessment, id: string): Verdict {
  const found = assessment.verdicts.filter((verdict) => verdict.id === id);
  const [verdict] = found;
  if (verdict === undefined || found.length > 1) {
    throw new Error(
      `${found.length} verdicts of id ${id}; there are ${assessment.verdicts.map((each) => each.id).join(", ")}`,
    );
  }
  return verdict;
}

export const has = (assessment: Assessment, id: string): boolean =>
  assessment.verdicts.some((verdict) => verdict.id === id);
