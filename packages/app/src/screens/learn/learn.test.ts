import { band } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { toSI } from "@witnessmark/engine";
import { chanceOf, planWalk } from "@witnessmark/planner";
import { beforeAll, describe, expect, it } from "vitest";
import { demoBook } from "../../testing/told-ledger.ts";
import { type Card, cardOf } from "./cards.ts";
import { faultWords } from "./explained.tsx";
import {
  cardsOfRound,
  isRightAnswer,
  type LearntChecks,
  learntWith,
  ROUND_CARDS,
  scoreOf,
  wouldMiss,
} from "./round.ts";

let books: readonly Book[];

beforeAll(async () => {
  books = await Promise.all(["zz-skr", "zz-dun", "zz-brk"].map(demoBook));
});

const manyCards = (): readonly { readonly book: Book; readonly card: Card }[] =>
  books.flatMap((book) =>
    [1, 2, 3].flatMap((seed) => {
      const chance = chanceOf(seed);
      return book.checks.flatMap((check) => {
        const card = cardOf(book, check, chance);
        return card === undefined ? [] : [{ book, card }];
      });
    }),
  );

const right = (card: Card) =>
  card.kind === "judge"
    ? { right: card.isRight }
    : { chosen: new Set(card.choices.filter(({ isOwn }) => isOwn).map(({ words }) => words)) };

describe("a card", () => {
  it("mixes the check's own faults with those of others, and says of each truly whose it is", () => {
    const cards = manyCards().flatMap(({ card }) => (card.kind === "look-for" ? [card] : []));
    expect(cards.length).toBeGreaterThan(100);
    for (const { check, choices } of cards) {
      const own = new Set(check.faults.map(({ name }) => name.toLowerCase()));
      for (const { words, isOwn } of choices) expect(own.has(words.toLowerCase())).toBe(isOwn);
      expect(choices.some(({ isOwn }) => isOwn)).toBe(true);
      expect(choices.filter(({ isOwn }) => !isOwn).length).toBeGreaterThanOrEqual(2);
      expect(new Set(choices.map(({ words }) => words)).size).toBe(choices.length);
    }
  });

  it("of a gauge is right or not by the book's own limit at that temperature", () => {
    let both = 0;
    for (const { book, card } of manyCards()) {
      const shown = card.kind === "judge" ? /shows (.*?)(?: at (.*))?\.$/.exec(card.found) : null;
      if (card.kind !== "judge" || shown === null) continue;
      const gauge = book.gauges.get(card.check.reading?.gauge ?? "");
      if (gauge === undefined) throw new Error(`${card.check.id}: expected its gauge`);
      const number = (text: string) => Number(text.replace("−", "-").replaceAll(",", "").split("\u00A0")[0]);
      const limits = band(
        card.check,
        book,
        shown[2] === undefined ? undefined : { value: number(shown[2]), unit: "degC" },
      );
      const valueSI = toSI(number(shown[1] ?? ""), gauge.unit);
      const isInside =
        valueSI >= (limits?.low ?? Number.NEGATIVE_INFINITY) &&
        valueSI <= (limits?.high ?? Number.POSITIVE_INFINITY);
      expect(isInside, `${card.check.id}: ${card.found}`).toBe(card.isRight);
      both |= card.isRight ? 1 : 2;
    }
    expect(both).toBe(3);
  });

  it("is answered right by what is right alone", () => {
    for (const { card } of manyCards()) {
      expect(isRightAnswer(card, right(card))).toBe(true);
      expect(wouldMiss(card, right(card))).toBe(false);
      const nothing = card.kind === "judge" ? { right: !card.isRight } : { chosen: new Set<string>() };
      expect(isRightAnswer(card, nothing)).toBe(false);
      expect(wouldMiss(card, nothing)).toBe(card.kind === "look-for" || !card.isRight);
    }
  });
});

it("the faults of a check read as one sentence, and keep the capitals that are not its beginning", () => {
  const faults = ["Pressure low", "Falls while I watch", "ELT off", "V-belt worn"].map((name) => ({ name }));
  expect(faultWords({ faults })).toBe("Pressure low; falls while I watch; ELT off; V-belt worn");
});

describe("a round", () => {
  it("asks the same when it is asked for again", () => {
    for (const book of books) {
      expect(cardsOfRound(book, planWalk(book, "first-of-day"), {}, 3)).toEqual(
        cardsOfRound(book, planWalk(book, "first-of-day"), {}, 3),
      );
    }
  });

  it("brings back what was missed, and comes to every check in time", () => {
    for (const book of books) {
      let learnt: LearntChecks = {};
      const missed = cardsOfRound(book, planWalk(book, "first-of-day"), learnt, 1)[0]?.check.id ?? "";
      const seen = new Set<string>();
      for (let round = 1; round <= 12; round += 1) {
        const cards = cardsOfRound(book, planWalk(book, "first-of-day"), learnt, round);
        expect(cards.length).toBeLessThanOrEqual(ROUND_CARDS);
        if (round === 2) expect(cards.map(({ check }) => check.id)).toContain(missed);
        for (const { check } of cards) {
          seen.add(check.id);
          learnt = learntWith(learnt, check.id, round, !(round === 1 && check.id === missed));
        }
      }
      const walked = book.checks.filter(
        ({ walks, faults }) => walks.includes("first-of-day") && faults.length > 0,
      );
      expect(walked.filter(({ id }) => !seen.has(id)).map(({ id }) => id)).toEqual([]);
      expect(learnt[missed]).toMatchObject({ missed: 1, missedLast: false });
    }
  });

  it("keeps the score over all rounds: what was asked, how often it was wrong, and what is still wrong", () => {
    for (const book of books) {
      const plan = planWalk(book, "first-of-day");
      const [one, two, three] = cardsOfRound(book, plan, {}, 1).map(({ check }) => check.id);
      if (one === undefined || two === undefined || three === undefined) throw new Error("expected cards");
      let learnt: LearntChecks = {};
      for (const [id, isRight] of [
        [one, true],
        [two, false],
        [three, false],
        [two, true],
      ] as const)
        learnt = learntWith(learnt, id, 1, isRight);
      const score = scoreOf(book, plan, {
        ...learnt,
        "no-such": { asked: 9, missed: 9, round: 1, missedLast: true },
      });
      expect(score).toMatchObject({ asked: 3, wrong: 2, stillWrong: 1 });
      const askable = book.checks.filter(({ walks }) => walks.includes("first-of-day")).length;
      expect(score.of).toBeLessThanOrEqual(askable);
      expect(score.of).toBeGreaterThan(askable / 2);
    }
  });
});
