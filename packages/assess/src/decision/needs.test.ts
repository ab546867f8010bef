import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { book, check, tyreReading } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";
import { decisionFaults, decisionNeeds } from "./needs.ts";

const theBook = book({
  checks: [check("oil", "oil"), check("tyre", "tyre", { reading: tyreReading }), check("tank", "tank")],
});
const story = new Story(theBook);
story.ada.start();
story.ada.answer("oil");
story.ada.read("tyre", 5.2, "bar", { value: 15, unit: "degC" });
story.ada.answer("tyre");
const discrepancy = `discrepancy:${story.ada.raise({ words: "Door is loose" })}`;
const assessment = assess(theBook, story.state, null, at("09:00"));
const words = "seen, and known";

describe("what a decision needs", () => {
  it("to go: a reason for everything that is not clear, and a basis for what stops", () => {
    expect(decisionNeeds(assessment, "go").map(({ verdict, basis }) => [verdict, basis])).toEqual([
      [discrepancy, true],
      ["check:tyre", false],
      ["check:tank", false],
    ]);
  });

  it("not to go: nothing", () => {
    expect(decisionNeeds(assessment, "not-going")).toEqual([]);
    expect(decisionFaults(assessment, "not-going", [])).toEqual([]);
  });

  it("is complete with every reason and every basis", () => {
    expect(
      decisionFaults(assessment, "go", [
        { verdict: discrepancy, words, basis: "Minimum equipment list 52-1" },
        { verdict: "check:tyre", words },
        { verdict: "check:tank", words },
      ]),
    ).toEqual([]);
  });

  it("says what is missing in words, verdict by verdict", () => {
    expect(decisionFaults(assessment, "go", []).map(({ code, message }) => `${code}: ${message}`)).toEqual([
      "no-reason: Door is loose: say why you go with it",
      "no-basis: Door is loose: name the lawful basis on which this flight may be made",
      "no-reason: Right main tyre: say why you go with it",
      "no-reason: Right tank: say why you go with it",
    ]);
  });

  it("takes no empty words for a reason, nor for a basis", () => {
    const faults = decisionFaults(assessment, "go", [
      { verdict: discrepancy, words, basis: "  " },
      { verdict: "check:tyre", words: " " },
      { verdict: "check:tank", words },
    ]);
    expect(faults.map(({ verdict, code }) => [verdict, code])).toEqual([
      [discrepancy, "no-basis"],
      ["check:tyre", "no-reason"],
    ]);
  });

  it("refuses a reason for something that the assessment does not have", () => {
    expect(decisionFaults(assessment, "not-going", [{ verdict: "check:gone", words }])).toEqual([
      {
        verdict: "check:gone",
        code: "unknown-verdict",
        message: 'A reason was given for "check:gone", which this assessment does not have; read it again',
      },
    ]);
  });
});
