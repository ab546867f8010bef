import { measure, type UnitId } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Verdict } from "../assessment.ts";
import { has, plain, verdictOf } from "../testing/plain.ts";
import { book, check, tyreReading } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";

const split = {
  id: "split",
  name: "Split or torn",
  measure: { of: "length of the split", allowed: measure(10, "mm"), upTo: measure(50, "mm") },
};
const theBook = book({
  checks: [
    check("boot", "boot", { stance: "wing", faults: [split, { id: "hole", name: "Hole" }] }),
    check("tyre", "tyre", { stance: "wing", reading: tyreReading }),
  ],
});

const raised = (parts: Parameters<Story["ada"]["raise"]>[0]): Verdict => {
  const story = new Story(theBook, "07:30");
  story.at("07:44");
  const id = story.ada.raise(parts);
  return verdictOf(assess(theBook, story.state, null, at("09:00")), `discrepancy:${id}`);
};
const measuredAt = (value: number, unit: UnitId = "mm"): Verdict =>
  raised({ words: "Right boot is split", check: "boot", fault: "split", measured: { value, unit } });

describe("an open discrepancy", () => {
  it("stops, with a way out", () => {
    const verdict = raised({ words: "Right boot is split.", check: "boot", fault: "split" });
    expect(verdict.status).toBe("stop");
    expect(verdict.title).toBe("Right boot is split");
    expect(plain(verdict.says)).toBe("Raised 07:44, by Ada");
    expect(verdict.margin).toBeUndefined();
    expect(verdict.status === "stop" ? verdict.wayOut : []).toEqual([
      "Put it right: licensed mechanic, then look again",
    ]);
  });

  // The design's picture: 38 mm long, 10 allowed, 28 mm over.
  it.each<[number, UnitId, string, string]>([
    [38, "mm", "stop", "28 mm over"],
    [3.8, "cm", "stop", "2.8 cm over"],
    [10.5, "mm", "stop", "0.5 mm over"],
    [10, "mm", "caution", "0 mm left"],
    [1, "cm", "caution", "0 cm left"],
    [8, "mm", "caution", "2 mm left"],
    [0, "mm", "caution", "10 mm left"],
  ])("measured at %d %s against 10 mm allowed: %s, %s", (value, unit, status, margin) => {
    const verdict = measuredAt(value, unit);
    expect(verdict.status).toBe(status);
    expect(plain(verdict.margin?.text)).toBe(margin);
  });

  it("says the size, what is allowed, and what that means", () => {
    const over = measuredAt(38);
    expect(plain(over.says)).toBe("38 mm, 10 mm allowed, raised 07:44, by Ada");
    expect(over.status === "stop" ? plain(over.because[0]) : "").toBe("28 mm over what the book allows");
    expect(over.margin?.value).toBe(-28);
    const under = measuredAt(8);
    expect(under.status === "caution" ? plain(under.because[0]) : "").toBe(
      "Inside what the book allows, 2 mm left",
    );
    expect(over.working.lines.map(({ label, value }) => plain(`${label}: ${value}`))).toEqual([
      "Raised: 07:44, by Ada",
      "Measured: 38 mm",
      "Book allows: 10 mm",
    ]);
  });

  it("stops where the size says nothing: no allowance, another kind of unit, below nothing, no such check", () => {
    const size = { value: 1, unit: "mm" } as const;
    expect(raised({ check: "boot", fault: "hole", measured: size }).status).toBe("stop");
    expect(raised({ check: "boot", measured: size }).status).toBe("stop");
    expect(raised({ check: "boot", fault: "split", measured: { value: 1, unit: "V" } }).status).toBe("stop");
    expect(raised({ check: "boot", fault: "split", measured: { value: -1, unit: "mm" } }).status).toBe(
      "stop",
    );
    expect(raised({ check: "gone", fault: "split", measured: size }).status).toBe("stop");
    expect(raised({}).status).toBe("stop");
  });

  it("of many words is titled by what it is and where, and tells the words in its line", () => {
    const words = "The outboard half has come away from the leading edge and can be lifted with a finger";
    expect(raised({ words, check: "boot", fault: "split" }).title).toBe("Right boot: split or torn");
    expect(raised({ words, check: "boot" }).title).toBe("Right boot");
    expect(raised({ words, point: "oil" }).title).toBe("Oil filler");
    expect(raised({ words, point: "oil" }).says).toContain(words);
    expect(raised({ words }).title).toBe("The outboard half has come away from the leadin…");
  });

  it("names its point where its words do not", () => {
    expect(plain(raised({ words: "Split", check: "boot" }).says)).toBe("Right boot, raised 07:44, by Ada");
  });

  it("shows the working of the reading that found it", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.read("tyre", 4, "bar", { value: 15, unit: "degC" });
    story.ada.answer("tyre", "not-right");
    const id = story.ada.raise({ check: "tyre" });
    const verdict = verdictOf(assess(theBook, story.state, null, at("09:00")), `discrepancy:${id}`);
    expect(verdict.working.lines.map(({ value }) => plain(value))).toContain("4.00 bar");
  });

  it("is gone when it is closed", () => {
    const story = new Story(theBook);
    const id = story.ada.raise({ check: "boot" });
    story.ada.close(id);
    expect(has(assess(theBook, story.state, null, at("09:00")), `discrepancy:${id}`)).toBe(false);
  });
});

describe("a discrepancy closed twice", () => {
  const closedBy = (second: "put-right" | "no-fault-found", name: string) => {
    const story = new Story(theBook);
    const id = story.ada.raise({ words: "Right boot is split", check: "boot" });
    story.at("08:00").ada.close(id, "put-right");
    story.at("08:05").phone(name).close(id, second);
    return { id, assessment: assess(theBook, story.state, null, at("09:00")) };
  };

  it("in two ways by two phones is a caution that names both", () => {
    const { id, assessment } = closedBy("no-fault-found", "Ben");
    const verdict = verdictOf(assessment, `disagreement:${id}`);
    expect(verdict.status).toBe("caution");
    expect(verdict.says).toBe("Closed in two ways. Ada, 08:00: put right. Ben, 08:05: no fault found");
    expect(verdict.evidence).toHaveLength(2);
    expect(verdict.subject).toEqual({ kind: "discrepancy", id });
  });

  it("is settled when whoever was wrong closes it once more", () => {
    const story = new Story(theBook);
    const id = story.ada.raise({ check: "boot" });
    story.ada.close(id, "put-right");
    story.phone("Ben").close(id, "no-fault-found");
    expect(has(assess(theBook, story.state, null, at("09:00")), `disagreement:${id}`)).toBe(true);
    story.phone("Ben").close(id, "put-right");
    expect(has(assess(theBook, story.state, null, at("09:00")), `disagreement:${id}`)).toBe(false);
  });

  it("in one way, or by one phone, is nothing to remark", () => {
    for (const { id, assessment } of [closedBy("put-right", "Ben"), closedBy("no-fault-found", "Ada")]) {
      expect(has(assessment, `disagreement:${id}`)).toBe(false);
    }
  });
});
