import type { Verdict } from "../assessment.ts";
import { NOWHERE } from "../book-index.ts";
import { type Cause, type Finding, LaterFinding, type Worth } from "../finding.ts";

/** What a flight's verdicts are told in: before other verdicts that stand nowhere on the aircraft. */
export const finding = (verdict: Verdict, cause?: Cause): Finding => ({
  verdict,
  severity: 0,
  place: NOWHERE,
  ...(cause === undefined ? {} : { cause }),
});

/** The same, with the verdict told when somebody reads it. */
export const findingLater = (worth: Worth, tell: () => Verdict, cause?: Cause): Finding =>
  new LaterFinding(worth, { severity: 0, place: NOWHERE, ...(cause === undefined ? {} : { cause }) }, tell);

/** The list with at least one entry that a verdict needs. */
export const some = (all: readonly string[], otherwise: string): readonly [string, ...string[]] => {
  const [first, ...more] = all;
  return first === undefined ? [otherwise] : [first, ...more];
};
