import { measure } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Assessment } from "../assessment.ts";
import { has, verdictOf } from "../testing/plain.ts";
import { book, check } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";

const cut = {
  id: "cut",
  name: "Cut",
  measure: { of: "length", allowed: measure(5, "mm"), upTo: measure(20, "mm") },
};
const theBook = book({
  checks: [check("boot", "boot", { title: "Look at the boot", faults: [cut] }), check("oil", "oil")],
});

const twoPhones = () => {
  const story = new Story(theBook);
  const walk = story.ada.start();
  const ben = story.phone("Ben");
  ben.walk = walk;
  const assessment = (): Assessment => assess(theBook, story.state, null, at("09:00"));
  return { story, ada: story.ada, ben, assessment };
};

describe("two phones that answer one check differently in one walk", () => {
  it("are a verdict that names who said what, as bad as the worse of them", () => {
    const { story, ada, ben, assessment } = twoPhones();
    story.at("07:40");
    ada.answer("boot", "not-right");
    story.at("07:42");
    ben.answer("boot");
    const verdict = verdictOf(assessment(), "disagreement:boot");
    expect(verdict.status).toBe("stop");
    expect(verdict.says).toBe("Look at the boot: Ada, 07:40: not right; Ben, 07:42: as it should be");
    expect(verdict.title).toBe("Right boot");
    expect(verdict.evidence).toHaveLength(2);
  });

  it("leave the check its own verdict, by the latest answer", () => {
    const { ada, ben, assessment } = twoPhones();
    ada.answer("boot", "not-right");
    ben.answer("boot");
    expect(verdictOf(assessment(), "check:boot").status).toBe("clear");
  });

  it("are found though they were out of touch for hours", () => {
    const { story, ada, ben, assessment } = twoPhones();
    ada.isAlone = true;
    ben.isAlone = true;
    ada.answer("boot");
    story.at("08:30");
    ben.answer("boot", "not-right");
    expect(verdictOf(assessment(), "disagreement:boot").status).toBe("stop");
  });

  it("agree again when whoever was wrong answers again", () => {
    const { ada, ben, assessment } = twoPhones();
    ada.answer("boot", "not-right");
    ben.answer("boot");
    ada.answer("boot");
    expect(has(assessment(), "disagreement:boot")).toBe(false);
  });

  it("are only a caution where the book allows what was found", () => {
    const { ada, ben, assessment } = twoPhones();
    ada.answer("boot", "not-right");
    ada.raise({ check: "boot", fault: "cut", measured: { value: 3, unit: "mm" } });
    ben.answer("boot");
    expect(verdictOf(assessment(), "disagreement:boot").status).toBe("caution");
  });

  it("are a stop where one of its discrepancies is", () => {
    const { ada, ben, assessment } = twoPhones();
    ada.answer("boot", "not-right");
    ada.raise({ check: "boot", fault: "cut", measured: { value: 3, unit: "mm" } });
    ada.raise({ check: "boot", fault: "cut", measured: { value: 9, unit: "mm" } });
    ben.answer("boot");
    expect(verdictOf(assessment(), "disagreement:boot").status).toBe("stop");
  });

  it("no longer differ when what one of them found is put right", () => {
    const { ada, ben, assessment } = twoPhones();
    ada.answer("boot", "not-right");
    const id = ada.raise({ check: "boot" });
    ben.answer("boot");
    ada.close(id);
    expect(has(assessment(), "disagreement:boot")).toBe(false);
    expect(verdictOf(assessment(), "check:boot").status).toBe("open");
  });

  it("do not differ when one of them could not check: that claims nothing", () => {
    const { ada, ben, assessment } = twoPhones();
    ada.answer("boot", "could-not-check", "too-dark");
    ben.answer("boot");
    expect(has(assessment(), "disagreement:boot")).toBe(false);
    expect(verdictOf(assessment(), "check:boot").status).toBe("clear");
  });

  it("do not differ when they answer different checks, or in different walks, or are one phone", () => {
    const { ada, ben, assessment } = twoPhones();
    ada.answer("boot", "not-right");
    ben.answer("oil");
    ada.answer("boot");
    expect(assessment().verdicts.some(({ topic }) => topic === "disagreement")).toBe(false);
    ada.finish();
    ada.start();
    ada.answer("oil", "not-right");
    expect(assessment().verdicts.some(({ topic }) => topic === "disagreement")).toBe(false);
  });
});
