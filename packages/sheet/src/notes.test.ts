import { assess } from "@witnessmark/assess";
import { fold } from "@witnessmark/ledger";
import { beforeAll, expect, it } from "vitest";
import { makeSheet, type Sheet } from "./sheet.ts";
import { demoLedger } from "./testing/demo-ledger.ts";
import { goodFlight } from "./testing/flights.ts";

type Given = Parameters<typeof makeSheet>[0];
let given: Given;

/** A walk that was begun, and in which nothing was looked at yet: more is open than a sheet tells one by one. */
beforeAll(async () => {
  const { book, events } = await demoLedger(goodFlight);
  const begun = events.filter(({ type }) => type === "book.adopted" || type === "walk.started");
  const state = fold(begun);
  const assessment = assess(book, state, goodFlight, Date.UTC(2026, 10, 12, 8, 20));
  given = { book, state, assessment, decision: null, east_min: 0 };
});

/** The decision to go, with reasons for the checks that are open. */
const withReasons = (reasons: readonly { readonly verdict: string; readonly words: string }[]): Sheet =>
  makeSheet({
    ...given,
    decision: {
      answer: "go",
      reasons,
      counts: given.assessment.counts,
      recordedAt: given.assessment.at,
      hash: "0".repeat(64),
      author: { name: "MK", role: "pilot" },
      flight: given.assessment.flight,
    } as unknown as NonNullable<Given["decision"]>, // no more of it is printed
  });

const openIds = () => given.assessment.verdicts.filter(({ status }) => status === "open").map(({ id }) => id);

it("every number on the drawing is that of a note, and what is only named has none", () => {
  const { notes, marks, alsoOpen } = makeSheet(given);
  const numbers = new Set(notes.map(({ number }) => number));
  const drawn = marks.flatMap(({ note }) => note ?? []);
  expect(drawn.length).toBeGreaterThan(0);
  for (const number of drawn) expect(numbers).toContain(number);
  expect(marks.some(({ note, status }) => status === "open" && note === undefined)).toBe(true);
  expect(alsoOpen).toHaveLength(1);
  expect(notes.map(({ number }) => number)).toEqual(notes.map((_, index) => index + 1));
});

it("nothing that is open is left out: told, or named with how many things it stands for", () => {
  const { notes, alsoOpen } = makeSheet(given);
  const named = alsoOpen.flatMap(({ titles }) =>
    titles.map((title) => Number(/, (\d+) things$/.exec(title)?.[1] ?? 1)),
  );
  const told = notes.filter(({ status }) => status === "open").length;
  expect(told + named.reduce((sum, count) => sum + count, 0)).toBe(given.assessment.counts.open);
});

it("a reason that many share stands once beside their names; one of its own is told", () => {
  const ids = openIds();
  const own = ids.at(-1) ?? "";
  const shared = ids.slice(0, -1).map((verdict) => ({ verdict, words: "Seen an hour ago" }));
  const sheet = withReasons([...shared, { verdict: own, words: "No lamp" }]);
  expect(sheet.alsoOpen.map(({ reason }) => reason)).toEqual(["Seen an hour ago"]);
  expect(sheet.notes.map(({ reason }) => reason)).toContain("No lamp");
});
