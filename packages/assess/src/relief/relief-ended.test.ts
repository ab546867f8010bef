import { describe, expect, it } from "vitest";
import { demoBook } from "../testing/demo-book.ts";
import { assessed, flightAt, relieve } from "../testing/relief-story.ts";
import { at, Story } from "../testing/story.ts";
import { nextReliefEnd_ms, reliefsEnded } from "./relief-ended.ts";

const book = await demoBook("zz-dun");
const OFFSET_MIN = 60;

function relieved(until?: string) {
  const story = new Story(book, "21:00");
  const id = story.ada.raise({ words: "Position light is dead" });
  assessed(story, id, "position-lights");
  const sign = () =>
    relieve(story, id, { flight: flightAt("12:00"), ...(until === undefined ? {} : { changed: { until } }) });
  const relief = sign();
  const ended = (now: string, days = 0) => reliefsEnded(story.state, at("23:30"), at(now, days), OFFSET_MIN);
  return { story, id, relief, sign, ended };
}

describe("a relief that ends while somebody walks", () => {
  it("by its last day is told from midnight of the place on, and when that will be is known", () => {
    const { story, ended, id } = relieved("2031-05-08");
    expect(ended("23:59")).toEqual([]);
    expect(nextReliefEnd_ms(story.state, at("23:30"), OFFSET_MIN)).toBe(at("00:00", 1));
    expect(ended("00:00", 1).map(({ discrepancy, why }) => [discrepancy.id, why])).toEqual([[id, undefined]]);
    expect(nextReliefEnd_ms(story.state, at("00:00", 1), OFFSET_MIN)).toBeUndefined();
  });

  it("by a person is told with the reason, and not once it is signed anew", () => {
    const { story, id, relief, sign, ended } = relieved();
    story.at("23:40");
    story.ada.tell({
      type: "discrepancy.reliefEnded",
      body: { discrepancy: id, relief, why: "The placard is gone" },
    });
    expect(ended("23:45").map(({ why }) => why)).toEqual(["The placard is gone"]);
    sign();
    expect(ended("23:50")).toEqual([]);
  });

  it("is not told when it was over before, or when the fault is put right", () => {
    const over = relieved("2031-05-07");
    expect(over.ended("23:59")).toEqual([]);
    const { story, id, ended } = relieved("2031-05-08");
    story.ada.close(id);
    expect(ended("00:10", 1)).toEqual([]);
  });
});
