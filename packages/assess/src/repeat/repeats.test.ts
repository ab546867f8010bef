import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { demoBook } from "../testing/demo-book.ts";
import { has, plain, verdictOf } from "../testing/plain.ts";
import { assessed } from "../testing/relief-story.ts";
import { book, check } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";

const twin = await demoBook("zz-dun");
const small = book({
  checks: [check("boot", "boot", { stance: "wing" }), check("tyre", "tyre", { stance: "wing" })],
});

const repeats = (story: Story, id: string, days: number): boolean =>
  has(assess(story.book, story.state, null, at("09:00", days)), `repeat:${id}`);

describe("a discrepancy that comes back", () => {
  /** The same check not right twice, so many days apart. */
  function twice(days: number, second = "boot") {
    const story = new Story(small, "07:00");
    const first = story.ada.raise({ words: "Boot is torn", check: "boot" });
    story.at("08:00").ada.close(first);
    story.at("07:00", days);
    const id = story.ada.raise({ words: "Boot is torn again", check: second });
    return { story, first, id };
  }

  it("within 90 days is a caution with the earlier ones as evidence, and what was done then", () => {
    const { story, first, id } = twice(30);
    const verdict = verdictOf(assess(small, story.state, null, at("09:00", 30)), `repeat:${id}`);
    expect(verdict.status).toBe("caution");
    expect(plain(verdict.says)).toBe("Boot is torn again. Before, 8 May: Boot is torn");
    expect(verdict.evidence).toEqual([
      story.state.discrepancies.get(id)?.raised.event,
      story.state.discrepancies.get(first)?.raised.event,
    ]);
    expect(verdict.working.lines.map(({ value }) => value)).toEqual(["Boot is torn; done"]);
    expect(plain(verdict.margin?.text)).toBe("2 times");
  });

  it("on the 90th day is told, on the 91st not; of another check not", () => {
    const on90 = twice(89);
    expect(repeats(on90.story, on90.id, 90)).toBe(true);
    const late = twice(91);
    expect(repeats(late.story, late.id, 92)).toBe(false);
    const other = twice(30, "tyre");
    expect(repeats(other.story, other.id, 30)).toBe(false);
  });

  it("is told no more when it is put right, and the first of them is never told", () => {
    const { story, first, id } = twice(30);
    expect(repeats(story, first, 30)).toBe(false);
    story.ada.close(id);
    expect(repeats(story, id, 30)).toBe(false);
  });

  it("is of the same equipment, from whichever point and words it was raised", () => {
    const story = new Story(twin, "07:00");
    const first = story.ada.raise({ words: "Left light is dark", point: "left-tip-light" });
    assessed(story, first, "position-lights");
    story.ada.close(first);
    story.at("07:00", 20);
    const id = story.ada.raise({ words: "Right light is dark", point: "right-tip-light" });
    expect(repeats(story, id, 20)).toBe(false); // two pieces are at that point: nobody has said which
    assessed(story, id, "position-lights");
    expect(repeats(story, id, 20)).toBe(true);
  });

  it("that stands open from before is told as what may be one fault told twice", () => {
    const story = new Story(small, "07:00");
    story.ada.raise({ words: "Boot is torn", check: "boot" });
    const id = story.ada.raise({ words: "Boot is torn at its end", check: "boot" });
    const verdict = verdictOf(assess(small, story.state, null, at("09:00")), `repeat:${id}`);
    expect(verdict.title).toBe("Told before");
    expect(verdict.status === "caution" ? verdict.because[0] : "").toContain("stands open from before");
  });

  it("at a point is of the same system there", () => {
    const story = new Story(small, "07:00");
    const at_ = (words: string, jasc: string) => {
      const discrepancy = story.id();
      story.ada.tell({ type: "discrepancy.raised", body: { discrepancy, words, point: "oil", jasc } });
      return discrepancy;
    };
    const first = at_("Weeps", "7261");
    story.ada.close(first);
    const other = at_("Loose", "7110");
    const same = at_("Weeps once more", "7261");
    expect(repeats(story, other, 0)).toBe(false);
    expect(repeats(story, same, 0)).toBe(true);
  });
});
