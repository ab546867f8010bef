import type { Assessment, DecisionNeed, Reason } from "@witnessmark/assess";

/** What was typed so far, by verdict. */
export interface TypedReasons {
  readonly each: Readonly<Record<string, { readonly words: string; readonly basis: string }>>;
  /** One reason for everything that could not be looked at. */
  readonly unseen: string;
}

export const NO_REASONS: TypedReasons = { each: {}, unseen: "" };

/** What must be said, one by one, and what may be said of all together. */
export interface Parted {
  readonly single: readonly DecisionNeed[];
  readonly unseen: readonly DecisionNeed[];
}

/**
 * Checks that are open may share one reason: none of them is confirmed by it, each stays open with the same words. What
 * stops or warns, what the flight leaves open and what may still be fitted are asked one by one.
 */
export function parted(needs: readonly DecisionNeed[], { verdicts }: Pick<Assessment, "verdicts">): Parted {
  const checks = new Set(verdicts.filter(({ topic }) => topic === "check").map(({ id }) => id));
  const isUnseen = ({ verdict, status }: DecisionNeed): boolean => status === "open" && checks.has(verdict);
  const unseen = needs.filter(isUnseen);
  // one alone is asked like all others
  return unseen.length < 2
    ? { single: needs, unseen: [] }
    : { single: needs.filter((need) => !isUnseen(need)), unseen };
}

/** The reasons as they are signed: what was said of one, or else of all that could not be looked at. */
export function givenReasons({ single, unseen }: Parted, typed: TypedReasons): readonly Reason[] {
  const reason = ({ verdict, basis }: DecisionNeed, shared: string): readonly Reason[] => {
    const own = typed.each[verdict];
    const words = (own?.words ?? "").trim() || shared.trim();
    const named = (own?.basis ?? "").trim();
    return words === "" ? [] : [{ verdict, words, ...(basis && named !== "" ? { basis: named } : {}) }];
  };
  return [
    ...single.flatMap((need) => reason(need, "")),
    ...unseen.flatMap((need) => reason(need, typed.unseen)),
  ];
}
