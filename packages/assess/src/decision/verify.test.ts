import type { Book } from "@witnessmark/book";
import { canonical, type Decision, sha256 } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { book, check, tyreReading } from "../testing/small-book.ts";
import { Story } from "../testing/story.ts";
import { assessmentHash, decisionBody } from "./hash.ts";
import { verifyDecision } from "./verify.ts";

const theBook = book({ checks: [check("oil", "oil"), check("tyre", "tyre", { reading: tyreReading })] });
const reader = (): Book => theBook;

async function decided(): Promise<{ story: Story; decision: Decision }> {
  const story = new Story(theBook, "07:39");
  story.ada.start();
  story.ada.answer("oil");
  story.ada.read("tyre", 5.3, "bar", { value: 15, unit: "degC" });
  story.ada.answer("tyre");
  const assessment = assess(theBook, story.state, null, story.now_ms);
  const body = await decisionBody({ assessment, decision: story.id(), answer: "go", reasons: [] });
  return { story, decision: story.ada.sign(body) };
}

const why = async (...given: Parameters<typeof verifyDecision>): Promise<string> => {
  const checked = await verifyDecision(...given);
  return checked.matches ? "matches" : checked.why;
};

describe("the hash of an assessment", () => {
  it("is SHA-256 of its canonical JSON", async () => {
    const { story } = await decided();
    const assessment = assess(theBook, story.state, null, story.now_ms);
    const hash = await assessmentHash(assessment);
    expect(hash).toMatch(/^[0-9a-f]{64}$/);
    expect(hash).toBe(await sha256(canonical(structuredClone(assessment))));
  });
});

describe("the body of a decision", () => {
  it("is refused where nothing was walked", async () => {
    const assessment = assess(theBook, new Story(theBook).state, null, 0);
    await expect(decisionBody({ assessment, decision: "x", answer: "go", reasons: [] })).rejects.toThrow(
      "walk: expected a walk to decide on, received none; walk round the aircraft first",
    );
  });

  it("is refused without the reasons that it needs, and says which", async () => {
    const story = new Story(theBook);
    story.ada.start();
    story.ada.answer("oil");
    const assessment = assess(theBook, story.state, null, story.now_ms);
    await expect(decisionBody({ assessment, decision: "x", answer: "go", reasons: [] })).rejects.toThrow(
      "Right main tyre: say why you go with it",
    );
  });
});

describe("why not, of a decision as a whole", () => {
  it.each([
    { typed: " The fog is still on the sound ", words: "The fog is still on the sound" },
    { typed: "  ", words: undefined },
  ])("is on the record as “$words”", async ({ typed, words }) => {
    const { story } = await decided();
    const assessment = assess(theBook, story.state, null, story.now_ms);
    const given = { assessment, decision: story.id(), answer: "not-going", reasons: [] } as const;
    const body = await decisionBody({ ...given, words: typed });
    expect(story.ada.sign(body).words).toBe(words);
    expect("words" in body).toBe(words !== undefined);
  });
});

describe("a decision, years later", () => {
  it("is recomputed from its ledger alone, and comes out the same", async () => {
    const { story, decision } = await decided();
    story.at("12:00", 900).ada.start();
    story.ada.answer("oil", "not-right");
    story.ada.raise({ check: "oil" });
    const shuffled = story.events.toReversed();
    const checked = await verifyDecision(reader, shuffled, decision);
    expect(checked.matches).toBe(true);
    expect(checked.matches && checked.assessment.counts.clear).toBe(2);
  });

  it("takes a reader that answers later", async () => {
    const { story, decision } = await decided();
    expect(await why(() => Promise.resolve(theBook), story.events, decision)).toBe("matches");
  });

  it("matches without an entry that has no part in it, such as an answer that was given anew", async () => {
    const story = new Story(theBook, "07:39");
    story.ada.start();
    story.ada.answer("oil", "could-not-check");
    story.ada.answer("oil");
    const assessment = assess(theBook, story.state, null, story.now_ms);
    const tyre = assessment.verdicts.filter(({ status }) => status !== "clear").map(({ id }) => id);
    const reasons = tyre.map((verdict) => ({ verdict, words: "looked at from afar" }));
    const body = await decisionBody({ assessment, decision: story.id(), answer: "not-going", reasons });
    const decision = story.ada.sign(body);
    const [first] = story.events.filter(({ type }) => type === "check.answered");
    expect(
      await why(
        reader,
        story.events.filter((event) => event !== first),
        decision,
      ),
    ).toBe("matches");
  });

  it("does not match when an entry that it had seen is missing", async () => {
    const { story, decision } = await decided();
    const cut = story.events.filter(({ type }) => type !== "reading.recorded");
    expect(await why(reader, cut, decision)).toBe(
      "1 of the entries that the decision had seen is not in this ledger; fetch the rest and try again",
    );
  });

  it("does not match when an entry was changed, and names the verdict that differs", async () => {
    const { story, decision } = await decided();
    const changed = story.events.map((event) =>
      event.type === "check.answered"
        ? { ...event, body: { ...(event.body as object), answer: "not-right" } }
        : event,
    );
    expect(await why(reader, changed, decision)).toBe(
      "The assessment comes out differently: check:oil, check:tyre",
    );
  });

  it("does not match when the hash is another's", async () => {
    const { story, decision } = await decided();
    expect(await why(reader, story.events, { ...decision, assessmentSha256: "0".repeat(64) })).toContain(
      "the same verdicts and another text",
    );
  });

  it("says when the book is not there, cannot be read, or is another", async () => {
    const { story, decision } = await decided();
    expect(await why(reader, story.events, { ...decision, bookSha256: "1".repeat(64) })).toContain(
      "is not among the entries",
    );
    expect(await why(() => undefined, story.events, decision)).toBe(
      "Revision 14 of the book cannot be read by this version of the program",
    );
    const other = book({ checks: theBook.checks, sha256: "1".repeat(64) });
    expect(await why(() => other, story.events, decision)).toContain("its hash differs");
  });

  it("says when its moment cannot be read", async () => {
    const { story, decision } = await decided();
    expect(await why(reader, story.events, { ...decision, at: "noon" })).toContain('"noon"');
  });
});
