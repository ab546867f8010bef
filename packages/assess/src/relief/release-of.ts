import type { Book } from "@witnessmark/book";
import type { RulePack } from "../rules/rule-pack.ts";
import type { RuledSteps } from "../rules/ruled-steps.ts";

type Asked = Omit<Parameters<NonNullable<RulePack["release"]>>[0], "maxTakeOff_kg">;

/** What a pack says of a release on this aircraft; undefined where its rules ask nothing beyond the entry. */
export const releaseOf = (
  pack: RulePack,
  { aircraft }: Pick<Book, "aircraft">,
  asked: Asked,
): RuledSteps | undefined =>
  pack.release?.({ ...asked, maxTakeOff_kg: aircraft.certification?.maxTakeOff?.valueSI });
