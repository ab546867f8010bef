import { ruleQuestions } from "@witnessmark/assess";
import { expect, it } from "vitest";
import { readAnswers } from "./read-answers.ts";
import { questionsFound } from "./rules-found.ts";

function read(id: string, texts: Readonly<Record<string, string>>) {
  const question = ruleQuestions.get(id);
  if (question === undefined) throw new Error(`read-answers.test: expected a question ${id}`);
  return readAnswers(
    question,
    (name) => texts[name] ?? "",
    ({ askedIn }) => askedIn,
  );
}

it("an empty field is not known, and is not no", () => {
  expect(read("pilot-papers", {}).said).toEqual({});
  expect(read("pilot-papers", { certificate: "yes", medical: "no" }).said).toEqual({
    certificate: true,
    medical: false,
  });
});

it("a figure is taken in the unit it is typed in, to the end of its range", () => {
  // 1 NM = 1,852 m by definition
  const { said, faults } = read("locator-does-not-work", { farthestFromDeparture_m: "50", seats_count: "1" });
  expect(said).toEqual({ farthestFromDeparture_m: 92_600, seats_count: 1 });
  expect(faults.size).toBe(0);
});

it("a figure that cannot be is not known, and says why at its place", () => {
  const { said, faults } = read("locator-does-not-work", { seats_count: "a few", works: "no" });
  expect(said).toEqual({ works: false });
  expect([...faults.keys()]).toEqual(["seats_count 0"]);
});

it("every question is found under its subject, and by its words and its rule", () => {
  const all = questionsFound("").flatMap(({ questions }) => questions);
  expect(new Set(all)).toEqual(new Set(ruleQuestions.values()));
  expect(all).toHaveLength(ruleQuestions.size);
  const ids = (looked: string) =>
    questionsFound(looked).flatMap(({ questions }) => questions.map(({ id }) => id));
  expect(ids("91.407")).toEqual(["after-maintenance"]);
  expect(ids("NCO water")).toContain("nco-over-water");
  expect(ids("no such thing")).toEqual([]);
});
