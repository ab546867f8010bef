import { readFile } from "node:fs/promises";
import { type Book, type Check, rangeShown, readBook } from "@witnessmark/book";
import { fromSI, roundToSafeSide } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import { decisionBody } from "./decision/hash.ts";
import { standing } from "./decision/standing.ts";
import { verifyDecision } from "./decision/verify.ts";
import { askedByChance } from "./evidence/by-chance.ts";
import { band } from "./reading/judge.ts";
import { reopenedBy } from "./reopened-by.ts";
import { at, atText, Story } from "./testing/story.ts";

const FILE = new URL("../../../books/zz-skr.yaml", import.meta.url);
const at15 = { value: 15, unit: "degC" } as const;

async function demoBook(): Promise<Book> {
  const result = await readBook(await readFile(FILE, "utf8"), "zz-skr.yaml");
  if (!result.ok) throw new Error(`the demo book has faults: ${JSON.stringify(result.faults[0])}`);
  return result.book;
}

const book = await demoBook();

/** A reading well inside its limits at 15 °C, in the gauge's own unit and steps. */
function goodReading(story: Story, check: Check): void {
  const gauge = check.reading === undefined ? undefined : book.gauges.get(check.reading.gauge);
  if (check.reading === undefined || gauge === undefined) return;
  const now = band(check, book, at15);
  const low = now?.low ?? rangeShown(gauge, check.reading)[0];
  const high = now?.high ?? rangeShown(gauge, check.reading)[1];
  const value = roundToSafeSide(fromSI((low + high) / 2, gauge.unit), gauge.resolution.value, "down");
  story.ada.read(check.id, value, gauge.unit, check.reading.limit.by === "fixed" ? undefined : at15);
}

/** Everything that runs out by the book was done on the morning of that day, on which a data cycle begins, and the counters have been read since. */
function keptUp(story: Story): void {
  const [on, until] = [atText("05:00").slice(0, 10), atText("07:00", 300).slice(0, 10)];
  const counters = Object.fromEntries(book.counters.map(({ id }) => [id, 100]));
  for (const { id: item } of book.timedItems) {
    const body = { item, on, until, counters, by: "a licensed mechanic" };
    story.ada.tell({ type: "timedItem.done", body });
  }
  story.ada.tell({ type: "counters.read", body: { at: atText("06:30"), counters } });
}

/** A whole first walk of the day, in the book's order, nothing wrong anywhere. */
function walked(): Story {
  const story = new Story(book, "07:00");
  keptUp(story);
  story.ada.start();
  for (const { id, count, stowedIn } of book.groundGear) story.ada.remove(id, count, stowedIn[0]);
  const drawn = askedByChance(book, story.state, [...story.state.walks.values()].at(-1) ?? null);
  for (const check of book.checks.filter(({ walks }) => walks.includes("first-of-day"))) {
    story.now_ms += check.least.valueSI * 1000;
    goodReading(story, check);
    if (check.evidence === "photo" || drawn.has(check.id)) story.ada.photo(check.id);
    story.ada.answer(check.id);
  }
  story.ada.finish();
  return story;
}

describe("the turboprop of the demo", () => {
  it("is clear of everything after a whole walk in the book's own order, and tells until when", () => {
    const story = walked();
    const assessment = assess(book, story.state, null, story.now_ms);
    const notClear = assessment.verdicts.filter(({ status }) => status !== "clear");
    expect(notClear.map(({ id, says }) => `${id}: ${says}`)).toEqual([]);
    expect(assessment.line).toMatch(/^Nothing in the way\. Holds until \d\d:\d\d\.$/);
    expect(assessment.restsOn.checks).toBe(
      book.checks.filter(({ walks }) => walks.includes("first-of-day")).length,
    );
  });

  it("is signed, lapses when it is fuelled, and its decision is recomputed from its ledger", async () => {
    const story = walked();
    const assessment = assess(book, story.state, null, story.now_ms);
    const body = await decisionBody({ assessment, decision: story.id(), answer: "go", reasons: [] });
    const decision = story.ada.sign(body);
    expect(standing(book, story.state, decision, story.now_ms).stands).toBe(true);
    const would = reopenedBy(book, story.state, "fuelled", story.now_ms).checks.map(({ id }) => id);
    expect(would).toContain("fuel-sample.left-tank-drain");
    story.ada.happen("fuelled");
    const lapsed = standing(book, story.state, decision, story.now_ms);
    expect(lapsed.stands).toBe(false);
    expect(lapsed.stands ? [] : lapsed.worse.map(({ verdict }) => verdict).toSorted()).toEqual(
      would.map((id) => `check:${id}`).toSorted(),
    );
    expect((await verifyDecision(() => book, story.events, decision)).matches).toBe(true);
  });

  it("is stopped by a soft tyre on a cold morning, and says by how much", () => {
    const story = walked();
    story.ada.read("main-tyre-pressure.right-main-tyre", 4.6, "bar", { value: 4, unit: "degC" });
    const assessment = assess(book, story.state, null, story.now_ms);
    expect(assessment.headline).toBe("One thing stops this flight");
    // (5.2 + 1.01325) × 277.15 / 288.15 − 1.01325 = 4.963 bar by hand; 4.963 − 4.60 = 0.363, rounded away from zero
    expect(assessment.line.replaceAll("\u00A0", " ")).toBe("Right main tyre, 0.37 bar under.");
  });

  it("leaves everything open when nobody has walked", () => {
    const assessment = assess(book, new Story(book).state, null, at("09:00"));
    expect(assessment.counts.clear).toBe(0);
    expect(assessment.counts.open).toBe(assessment.verdicts.length);
  });
});
