import { measure } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { reopenedBy } from "./reopened-by.ts";
import { book, check, gear } from "./testing/small-book.ts";
import { at, Story } from "./testing/story.ts";

const theBook = book({
  checks: [
    check("oil", "oil", { until: ["flown"] }),
    check("tank", "tank", { stance: "wing", until: ["fuelled", "flown"] }),
    check("cap", "tank", { stance: "wing", until: ["fuelled"] }),
    check("old", "boot", { stance: "wing", until: ["fuelled"], atMost: measure(10, "min") }),
  ],
  gear: [gear("plug", "Plug", 1, "oil"), gear("cover", "Cover", 1, "boot")],
});

const walked = (): Story => {
  const story = new Story(theBook, "07:40");
  story.ada.start();
  story.ada.remove("plug");
  for (const id of ["tank", "cap", "oil", "old"]) story.ada.answer(id);
  return story;
};
const by = (story: Story, kind: Parameters<typeof reopenedBy>[2], time: string): readonly string[] => {
  const reopened = reopenedBy(theBook, story.state, kind, at(time));
  return [...reopened.checks, ...reopened.groundGear].map(({ id }) => id);
};

describe("what a happening reopens", () => {
  it("is, before it is recorded, every good look that it would end, in the order of the walk", () => {
    expect(by(walked(), "fuelled", "07:45")).toEqual(["tank", "cap", "old"]);
    expect(by(walked(), "flown", "07:45")).toEqual(["oil", "tank"]);
    expect(by(walked(), "rain", "07:45")).toEqual([]);
  });

  it("is the same once it is recorded, less what was looked at again", () => {
    const story = walked();
    story.at("07:45").ada.happen("fuelled");
    expect(by(story, "fuelled", "07:45")).toEqual(["tank", "cap", "old"]);
    story.ada.answer("tank");
    expect(by(story, "fuelled", "07:45")).toEqual(["cap", "old"]);
  });

  it("is nothing that was looked at after it", () => {
    expect(by(walked(), "fuelled", "07:30")).toEqual([]);
  });

  it("is nothing that is open for another reason", () => {
    const story = walked();
    story.ada.answer("cap", "could-not-check");
    expect(by(story, "fuelled", "08:30")).toEqual(["tank"]); // "old" is too old by then
    story.at("08:00").ada.happen("flown");
    expect(by(story, "fuelled", "08:30")).toEqual([]);
    expect(by(story, "flown", "08:00")).toEqual(["oil", "tank"]);
    story.ada.interrupt(); // asks again for the last three: oil, old, cap
    expect(by(story, "flown", "08:00")).toEqual(["tank"]);
  });

  it("is ground gear that was counted off, when the aircraft was left unattended", () => {
    expect(by(walked(), "unattended", "07:50")).toEqual(["plug"]);
    expect(by(walked(), "unattended", "07:30")).toEqual([]);
    const story = walked();
    story.at("07:50").ada.happen("unattended");
    expect(by(story, "unattended", "07:50")).toEqual(["plug"]);
  });
});
