import { measure } from "@witnessmark/engine";
import type { Decision } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Flight, Standing } from "../assessment.ts";
import { book, check, gear } from "../testing/small-book.ts";
import { at, Story } from "../testing/story.ts";
import { decisionBody } from "./hash.ts";
import { standing } from "./standing.ts";

const theBook = book({
  checks: [
    check("oil", "oil", { until: ["flown"] }),
    check("tank", "tank", { stance: "wing", until: ["fuelled"] }),
    check("cap", "tank", { stance: "wing", until: ["fuelled"] }),
    check("boot", "boot", { stance: "wing", atMost: measure(4, "h") }),
  ],
  gear: [gear("plug", "Plug", 1, "oil")],
});

/** Signs what stands at 09:05, with a reason for all that asks for one. */
async function sign(
  story: Story,
  answer: Decision["answer"] = "go",
  flight: Flight | null = null,
): Promise<Decision> {
  story.at("09:05");
  const assessment = assess(theBook, story.state, flight, story.now_ms);
  const reasons =
    answer === "go"
      ? assessment.verdicts
          .filter(({ status }) => status !== "clear")
          .map(({ id }) => ({ verdict: id, words: "known", basis: "by the list" }))
      : [];
  return story.ada.sign(await decisionBody({ assessment, decision: story.id(), answer, reasons }));
}

function walked(): Story {
  const story = new Story(theBook, "07:39");
  story.ada.start();
  story.ada.remove("plug");
  for (const { id } of theBook.checks) story.ada.answer(id);
  return story;
}

async function signed(answer: Decision["answer"] = "go"): Promise<{ story: Story; decision: Decision }> {
  const story = walked();
  return { story, decision: await sign(story, answer) };
}

/** Signed for a flight that was planned before. */
async function signedFor(planned: Flight): Promise<{ story: Story; decision: Decision; flight: string }> {
  const story = walked();
  const flight = story.id();
  story.at("09:00").ada.tell({ type: "flight.planned", body: { flight, planned } });
  return { story, flight, decision: await sign(story, "go", { ...planned, id: flight }) };
}

const PLANNED: Flight = { from: "ZZTW", to: "ZZQN", offBlocks: "2031-05-08T10:10:00.000+01:00" };

const of = (story: Story, decision: Decision, time = "09:30", by = theBook): Standing =>
  standing(by, story.state, decision, at(time));
const because = (stands: Standing): string => (stands.stands ? "stands" : stands.because);

describe("a decision to go", () => {
  it("stands while everything that it rests on does, and says until when", async () => {
    const { story, decision } = await signed();
    expect(decision.counts).toEqual({ clear: 5, caution: 0, stop: 0, open: 0 });
    expect(of(story, decision)).toEqual({
      stands: true,
      until: { at_ms: at("11:41"), because: "the look at Right boot is then too old" },
    });
  });

  it("lapses when its flight is planned anew, and not when the same is said again", async () => {
    const { story, decision, flight } = await signedFor(PLANNED);
    const plan = (planned: Flight) => story.ada.tell({ type: "flight.planned", body: { flight, planned } });
    story.at("09:11");
    plan(PLANNED);
    expect(of(story, decision).stands).toBe(true);
    story.at("09:12");
    plan({ ...PLANNED, to: "ZZPK" });
    expect(because(of(story, decision))).toBe("The flight was planned anew at 09:12.");
  });

  it("stands when another flight is planned beside its own", async () => {
    const { story, decision } = await signedFor(PLANNED);
    story.at("09:12").ada.tell({
      type: "flight.planned",
      body: { flight: story.id(), planned: { ...PLANNED, to: "ZZPK" } },
    });
    expect(of(story, decision).stands).toBe(true);
  });

  it("lapses by a happening, from that moment on, and counts what no longer counts", async () => {
    const { story, decision } = await signed();
    story.at("09:07").ada.happen("fuelled");
    expect(of(story, decision)).toEqual({
      stands: false,
      since_ms: at("09:07"),
      because: "Fuelled at 09:07. Two checks no longer count.",
      worse: [
        { verdict: "check:tank", was: "clear", now: "open" },
        { verdict: "check:cap", was: "clear", now: "open" },
      ],
    });
  });

  it("does not rise again when somebody looks again: that asks for a new signature", async () => {
    const { story, decision } = await signed();
    story.at("09:07").ada.happen("fuelled");
    story.at("09:20").ada.answer("tank");
    story.ada.answer("cap");
    expect(assess(theBook, story.state, null, at("09:30")).status).toBe("clear");
    expect(because(of(story, decision))).toBe("Fuelled at 09:07. Two checks no longer count.");
  });

  it("lapses by age just after its last moment, and is not saved by a newer look", async () => {
    const { story, decision } = await signed();
    story.at("10:00").ada.answer("boot");
    expect(of(story, decision, "11:41").stands).toBe(true);
    const after = standing(theBook, story.state, decision, at("11:41") + 1);
    expect(after).toMatchObject({ stands: false, since_ms: at("11:41") });
    expect(because(after)).toBe("Right boot: the look at 07:41 counted until 11:41.");
  });

  it("lapses by a discrepancy raised since", async () => {
    const { story, decision } = await signed();
    story.at("09:20").ada.raise({ words: "Right boot is split", check: "boot" });
    expect(of(story, decision)).toMatchObject({ stands: false, since_ms: at("09:20") });
    expect(because(of(story, decision))).toBe("Right boot is split, raised at 09:20.");
  });

  it("lapses by a worse answer since, and by ground gear fitted since", async () => {
    const { story, decision } = await signed();
    story.at("09:10").ada.answer("oil", "not-right");
    story.at("09:15").ada.fit("plug");
    expect(because(of(story, decision))).toBe("Oil filler: not right, said at 09:10. Plug fitted at 09:15.");
  });

  it("lapses by an entry that was taken back", async () => {
    const { story, decision } = await signed();
    const answer = story.state.checks.get("oil")?.answers.at(-1)?.event ?? "";
    story.at("09:12").ada.withdraw(answer);
    expect(of(story, decision)).toMatchObject({ stands: false, since_ms: at("09:12") });
    expect(because(of(story, decision))).toBe(
      "An entry that it rested on was taken back. One check no longer counts.",
    );
  });

  it("lapses by a new walk, and by the book", async () => {
    const { story, decision } = await signed();
    const newer = book({
      checks: theBook.checks,
      gear: theBook.groundGear,
      revision: 15,
      sha256: "b1".repeat(32),
    });
    story.at("09:11").ada.tell({
      type: "book.adopted",
      body: { sha256: newer.sha256, revision: 15, registration: "ZZ-TST", type: "Test", text: "newer" },
    });
    story.at("09:15").ada.happen("rain");
    expect(of(story, decision, "09:30", newer)).toMatchObject({ stands: false, since_ms: at("09:11") });
    expect(because(of(story, decision, "09:30", newer))).toBe("The book changed to revision 15 at 09:11.");
    story.at("09:25").ada.start("turnaround");
    expect(because(of(story, decision, "09:30", newer))).toBe("A new walk began at 09:25.");
  });

  it("lapses when its walk is abandoned after all", async () => {
    const story = new Story(theBook, "06:00");
    story.ada.start();
    story.ada.finish();
    story.at("07:40").ada.start();
    const decision = await sign(story);
    story.at("09:20").ada.abandon();
    expect(of(story, decision)).toMatchObject({ stands: false, since_ms: at("09:20") });
    expect(because(of(story, decision))).toBe("The walk that it rests on is no longer the one in hand.");
  });

  it("lapses when no walk is left", async () => {
    const { story, decision } = await signed();
    story.at("09:20").ada.abandon();
    expect(because(of(story, decision))).toBe("The walk that it rests on is no longer the one in hand.");
  });

  it("lapses by what happened before it was signed and was told after, from the signature on", async () => {
    const { story, decision } = await signed();
    story.at("09:30").ada.happen("fuelled", "2031-05-08T09:00:00.000+01:00");
    expect(of(story, decision)).toMatchObject({ stands: false, since_ms: at("09:05") });
  });

  it("lapses when it was taken back, or when a newer one was signed", async () => {
    const { story, decision } = await signed();
    const newer = await sign(story.at("09:20"), "not-going");
    expect(because(of(story, decision))).toBe("A newer decision was signed at 09:05: not going yet.");
    story.ada.withdraw(newer.event);
    expect(because(of(story, decision))).toBe("stands");
    story.ada.withdraw(decision.event);
    expect(because(of(story, decision))).toBe("The decision was taken back.");
  });

  it("still stands with what was open or stopping when it was signed, and lapses when that gets worse", async () => {
    const story = new Story(theBook, "07:39");
    story.ada.start();
    story.ada.remove("plug");
    for (const id of ["oil", "tank", "cap"]) story.ada.answer(id);
    story.ada.raise({ words: "Door is loose" });
    const decision = await sign(story);
    expect(decision.counts).toEqual({ clear: 4, caution: 0, stop: 1, open: 1 });
    expect(of(story, decision).stands).toBe(true);
    story.ada.answer("boot", "could-not-check");
    expect(of(story, decision).stands).toBe(true); // it was open, and is
    story.ada.answer("boot", "not-right");
    expect(of(story, decision).stands).toBe(false);
  });

  it("tells two causes and counts the rest", async () => {
    const { story, decision } = await signed();
    story.at("09:06").ada.happen("fuelled");
    story.at("09:07").ada.happen("flown");
    story.at("09:08").ada.happen("unattended");
    story.at("09:09").ada.raise({ words: "Door is loose" });
    expect(because(of(story, decision))).toBe(
      "Fuelled at 09:06. Two checks no longer count. Flown at 09:07. One check no longer counts. And 2 more changes.",
    );
  });

  it("lapses by looks that were answered again faster than they can be made, from the last of them on", async () => {
    const { story, decision } = await signed();
    for (const [id, time] of [
      ["oil", "09:10:00"],
      ["boot", "09:10:01"],
      ["cap", "09:10:02"],
      ["tank", "09:10:02.5"],
    ] as const) {
      story.at(time).ada.answer(id);
    }
    expect(of(story, decision)).toMatchObject({
      stands: false,
      since_ms: at("09:10:02.5"),
      because: "Looks were answered faster than they can be made.",
    });
  });

  it("counts ground gear that has to be counted again", async () => {
    const { story, decision } = await signed();
    story.at("09:08").ada.happen("unattended");
    expect(because(of(story, decision))).toBe(
      "Left unattended at 09:08. One item of ground gear no longer counts.",
    );
  });

  it("is not ended by a happening that it does not rest on", async () => {
    const { story, decision } = await signed();
    story.ada.happen("rain");
    expect(of(story, decision).stands).toBe(true);
  });
});

describe("a decision on a turnaround", () => {
  const both = book({
    checks: [
      check("oil", "oil", { until: ["rain"] }),
      check("tank", "tank", { stance: "wing", walks: ["first-of-day", "turnaround"] }),
    ],
  });

  /** Oil is looked at in the first walk only: first it cannot be, then it is. */
  async function turnedRound(): Promise<{ story: Story; decision: Decision }> {
    const story = new Story(both, "06:00");
    story.ada.start();
    story.ada.answer("oil", "could-not-check");
    story.ada.answer("oil");
    story.ada.answer("tank");
    story.ada.finish();
    story.at("08:30").ada.start("turnaround");
    story.ada.answer("tank");
    story.at("09:05");
    const assessment = assess(both, story.state, null, story.now_ms);
    const body = await decisionBody({ assessment, decision: story.id(), answer: "go", reasons: [] });
    return { story, decision: story.ada.sign(body) };
  }

  it("rests on the last look of the first walk that it had seen", async () => {
    const { story, decision } = await turnedRound();
    expect(of(story, decision, "09:30", both).stands).toBe(true);
  });

  it("is not revived by a look at it after the signature", async () => {
    const { story, decision } = await turnedRound();
    story.at("09:10").ada.happen("rain");
    story.ada.answer("oil");
    expect(assess(both, story.state, null, at("09:30")).counts.open).toBe(0);
    expect(because(of(story, decision, "09:30", both))).toBe(
      "Rained on at 09:10. One check no longer counts.",
    );
  });
});

describe("a decision not to go", () => {
  it("stands whatever happens, until a newer one is signed", async () => {
    const { story, decision } = await signed("not-going");
    story.at("09:07").ada.happen("fuelled");
    story.ada.start();
    expect(of(story, decision)).toEqual({ stands: true });
    await sign(story);
    expect(of(story, decision).stands).toBe(false);
  });
});
