import { holdsWhen, type ReliefItem, type RuledStep } from "../relief.ts";

/**
 * What an approved list may never hold, and so never relieves, whatever is printed in it.
 *
 * @source 14 CFR 91.213(b), eCFR issue 2026-08-24
 */
export function listMayHold(item: ReliefItem): readonly RuledStep[] {
  const { essential, directive, ruleRequires, restServes } = item;
  return [
    ...(essential === undefined
      ? []
      : [
          {
            rule: "91.213(b)(1)",
            words: "It is not essential under the type's certification for every operation",
            holds: !essential,
          },
        ]),
    {
      rule: "91.213(b)(2)",
      words: "No airworthiness directive asks that it works, unless the directive itself lets it",
      holds: holdsWhen(directive, false),
    },
    {
      rule: "91.213(b)(3)",
      words: "No rule of part 91 asks for it on this kind of flight, or those that still work serve",
      holds: restServes === true ? true : holdsWhen(ruleRequires, false),
    },
  ];
}
