import type { Book, Check } from "@witnessmark/book";
import { chanceOf, stepsOf, type WalkPlan } from "@witnessmark/planner";
import { type Card, cardOf } from "./cards.ts";

/** What a person has answered of one check so far. */
export interface Learnt {
  readonly asked: number;
  readonly missed: number;
  /** The number of the round in which it was asked last. */
  readonly round: number;
  /** It was missed when it was asked last. */
  readonly missedLast: boolean;
}

export type LearntChecks = Readonly<Record<string, Learnt>>;

/** Cards in one round: ten minutes. */
export const ROUND_CARDS = 12;

const SEVERITY = { high: 0, medium: 1, low: 2 } as const;

/**
 * The cards of a round, in the order of the walk: first what was missed last time, then what was never asked, the
 * gravest of it first, then what was asked longest ago.
 *
 * @param round 1, 2, 3 …; the same round of the same book asks the same
 */
export function cardsOfRound(
  book: Book,
  plan: WalkPlan,
  learnt: LearntChecks,
  round: number,
): readonly Card[] {
  const checks = stepsOf(plan).flatMap((step) => (step.kind === "check" ? [step.check] : []));
  const chance = chanceOf(round * 7919);
  const walked = new Set(checks);
  const cards = new Map<string, Card>();
  // in the order of the book: the cards stay the same when the order of the walk changes
  for (const check of book.checks.filter((each) => walked.has(each))) {
    const card = cardOf(book, check, chance);
    if (card !== undefined) cards.set(check.id, card);
  }
  const need = (check: Check): readonly [number, number] => {
    const known = learnt[check.id];
    if (known === undefined) return [1, SEVERITY[check.hazard.severity]];
    return known.missedLast ? [0, known.round] : [2, known.round];
  };
  const chosen = new Set(
    checks
      .filter(({ id }) => cards.has(id))
      .toSorted((a, b) => need(a)[0] - need(b)[0] || need(a)[1] - need(b)[1])
      .slice(0, ROUND_CARDS)
      .map(({ id }) => id),
  );
  return checks.flatMap(({ id }) => (chosen.has(id) ? (cards.get(id) ?? []) : []));
}

export interface Score {
  /** Checks that were asked at least once, of those that can be asked. */
  readonly asked: number;
  readonly of: number;
  /** How often an answer was wrong, over all rounds. */
  readonly wrong: number;
  /** Checks whose last answer was wrong. */
  readonly stillWrong: number;
}

/** How far a person has come with the checks of a walk, over all rounds. */
export function scoreOf(book: Book, plan: WalkPlan, learnt: LearntChecks): Score {
  const chance = chanceOf(1);
  const checks = stepsOf(plan).filter(
    (step) => step.kind === "check" && cardOf(book, step.check, chance) !== undefined,
  );
  const known = checks.flatMap(({ id }) => learnt[id] ?? []);
  return {
    asked: known.length,
    of: checks.length,
    wrong: known.reduce((sum, { missed }) => sum + missed, 0),
    stillWrong: known.filter(({ missedLast }) => missedLast).length,
  };
}

/** Whether an answer is right: every fault of its own chosen and no other, or the right word on what was found. */
export function isRightAnswer(
  card: Card,
  answer: { readonly chosen: ReadonlySet<string> } | { readonly right: boolean },
): boolean {
  if (card.kind === "judge") return "right" in answer && answer.right === card.isRight;
  return "chosen" in answer && card.choices.every(({ words, isOwn }) => answer.chosen.has(words) === isOwn);
}

/** What would have got past: a fault let pass. To call a good thing bad costs time, and no more. */
export function wouldMiss(
  card: Card,
  answer: { readonly chosen: ReadonlySet<string> } | { readonly right: boolean },
): boolean {
  if (card.kind === "judge") return "right" in answer && answer.right && !card.isRight;
  return "chosen" in answer && card.choices.some(({ words, isOwn }) => isOwn && !answer.chosen.has(words));
}

export function learntWith(
  learnt: LearntChecks,
  check: string,
  round: number,
  isRight: boolean,
): LearntChecks {
  const before = learnt[check] ?? { asked: 0, missed: 0, round, missedLast: false };
  return {
    ...learnt,
    [check]: {
      asked: before.asked + 1,
      missed: before.missed + (isRight ? 0 : 1),
      round,
      missedLast: !isRight,
    },
  };
}
