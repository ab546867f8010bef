import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Verdict } from "../assessment.ts";
import { plain, verdictOf } from "../testing/plain.ts";
import { book, check, gear } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";

const theBook = book({
  checks: [check("oil", "oil")],
  gear: [gear("pitot-cover", "Pitot cover", 1, "pitot"), gear("static-covers", "Static covers", 2, "boot")],
});

const told = (story: Story, id = "static-covers"): Verdict =>
  verdictOf(assess(theBook, story.state, null, at("09:00")), `gear:${id}`);
const line = (verdict: Verdict): string => `${verdict.status}: ${plain(verdict.says)}`;

describe("before a flight", () => {
  it("what nobody counted is open, and says where it is and how many are off in all", () => {
    const story = new Story(theBook);
    story.ada.start();
    expect(line(told(story, "pitot-cover"))).toBe("open: Not counted off, right wing");
    expect(told(story, "pitot-cover").margin).toEqual({ value: -3, unit: "", text: "0 of 3 off" });
    story.ada.remove("static-covers", 2);
    expect(told(story, "pitot-cover").margin?.text).toBe("2 of 3 off");
  });

  it("counted off is clear, and says when and where it was stowed", () => {
    const story = new Story(theBook);
    story.ada.start();
    const event = story.at("07:29").ada.remove("static-covers", 2, "Nose locker");
    const verdict = told(story);
    expect(line(verdict)).toBe("clear: Off, 07:29, in nose locker");
    expect(verdict.margin?.text).toBe("2 of 2 off");
    expect(verdict.evidence).toEqual([event]);
    expect(verdict.working.lines).toContainEqual({ label: "Stowed in", value: "Nose locker" });
    expect(verdict.working.lines).toContainEqual({ label: "Taken off", value: "2 of 2, 07:29" });
  });

  it("some of it is not all of it", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.remove("static-covers", 1);
    expect(line(told(story))).toBe("open: 1 of 2 counted off, right wing");
    expect(told(story).margin?.text).toBe("1 of 3 off");
    story.ada.remove("static-covers", 1, "Cabin");
    expect(line(told(story))).toContain("clear: Off");
    expect(line(told(story))).toContain("cover bag, Cabin");
  });

  it("what was taken off in an earlier walk has to be counted in this one", () => {
    const story = new Story(theBook, "06:00");
    story.ada.start();
    story.ada.remove("pitot-cover");
    story.ada.finish();
    story.at("08:00").ada.start("turnaround");
    expect(told(story, "pitot-cover").status).toBe("open");
    story.ada.remove("pitot-cover");
    expect(told(story, "pitot-cover").status).toBe("clear");
  });

  it("what was fitted last night and not counted yet is open; it says since when it is on", () => {
    const story = new Story(theBook).at("18:20", -4);
    story.ada.fit("pitot-cover");
    story.at("07:00").ada.start();
    expect(line(told(story, "pitot-cover"))).toBe("open: Fitted Sunday 18:20, not counted off, right wing");
    story.ada.remove("pitot-cover");
    expect(told(story, "pitot-cover").status).toBe("clear");
  });

  it("what was fitted again in this walk is known to be on: a stop", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.remove("pitot-cover");
    story.at("07:50").ada.fit("pitot-cover");
    const verdict = told(story, "pitot-cover");
    expect(line(verdict)).toBe("stop: Still fitted: put on 07:50 and not taken off since");
    expect(verdict.margin?.text).toBe("still fitted");
    expect(verdict.status === "stop" ? verdict.wayOut : []).toEqual(["Take it off and count it"]);
  });

  it("one of two fitted again is a stop as well, and off again when it is taken off", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.remove("static-covers", 2);
    story.ada.fit("static-covers", 1);
    expect(told(story).status).toBe("stop");
    story.ada.remove("static-covers", 1);
    expect(told(story).status).toBe("clear");
  });

  it("more fitted in the record than was counted off is not off", () => {
    const story = new Story(theBook).at("18:20", -1);
    story.ada.fit("pitot-cover");
    story.ada.fit("pitot-cover");
    story.at("07:00").ada.start();
    story.ada.remove("pitot-cover");
    expect(line(told(story, "pitot-cover"))).toBe(
      "open: Counted off, but the record has 1 more still fitted: count again",
    );
  });

  it("left unattended, it has to be counted again", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.remove("pitot-cover");
    story.at("08:10").ada.happen("unattended");
    expect(line(told(story, "pitot-cover"))).toBe(
      "open: Left unattended at 08:10, after it was counted: count it again",
    );
    expect(told(story).margin?.text).toBe("0 of 3 off");
    story.ada.remove("pitot-cover");
    expect(told(story, "pitot-cover").status).toBe("clear");
  });

  it("left unattended before it was counted, it is just not counted", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.remove("static-covers", 1);
    story.ada.happen("unattended");
    expect(line(told(story))).toBe("open: 1 of 2 counted off, right wing");
    expect(line(told(story, "pitot-cover"))).toBe("open: Not counted off, right wing");
  });

  it("says how many are left to count off", () => {
    const story = new Story(theBook);
    story.ada.start();
    const missing = (): readonly string[] => {
      const verdict = told(story);
      return verdict.status === "open" ? verdict.missing : [];
    };
    expect(missing()).toEqual(["2 to count off"]);
    story.ada.remove("static-covers", 1);
    expect(missing()).toEqual(["1 to count off"]);
  });

  it("what the book no longer names and the record has fitted is a stop", () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.fit("tow-bar");
    expect(told(story, "tow-bar").status).toBe("stop");
    story.ada.remove("tow-bar");
    expect(() => told(story, "tow-bar")).toThrow("0 verdicts");
  });

  it("is open when there never was a walk", () => {
    expect(told(new Story(theBook)).status).toBe("open");
  });
});

describe("after a flight", () => {
  it("it is there to be fitted", () => {
    const story = new Story(theBook, "06:00");
    story.ada.start();
    story.ada.remove("static-covers", 2);
    story.ada.finish();
    story.at("08:00").ada.start("after-flight");
    expect(line(told(story))).toBe("open: 0 of 2 said to be fitted in this walk");
    story.ada.fit("static-covers", 1);
    expect(line(told(story))).toBe("open: 1 of 2 said to be fitted in this walk");
    story.at("08:20").ada.fit("static-covers", 1);
    expect(line(told(story))).toBe("clear: Fitted, 08:20");
    expect(told(story).margin?.text).toBe("2 of 2 fitted");
  });
});
