import { type AircraftState, emptyState, type Walk } from "@witnessmark/ledger";
import { expect, it } from "vitest";
import { assess } from "../assess.ts";
import { indexOf } from "../book-index.ts";
import { demoBook } from "../testing/demo-book.ts";
import { askedByChance } from "./by-chance.ts";

const book = await demoBook();
const BEGAN = "2026-11-12T08:00:00Z";
const origin = (hlc: string, recordedAt: string) =>
  ({
    event: `e${hlc}`,
    device: "d",
    deviceSeq: 1,
    author: { id: "p", name: "MK", role: "pilot" },
    hlc,
    recordedAt,
  }) as const;
const walk = (number: number, kind: Walk["kind"] = "first-of-day"): Walk => ({
  ...origin("5", BEGAN),
  id: `walk-${number}`,
  kind,
  bookSha256: book.sha256,
  interruptions: [],
  askedAgain: [],
});
const nothing = emptyState("ZZ-SKR");
const looks = indexOf(book).ofKind["first-of-day"].filter(
  ({ evidence, reading }) => evidence === "look" && reading === undefined,
);
const WALKS = 4000;
/** How often each check is drawn in so many walks. */
function drawn(state: AircraftState): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (let number = 0; number < WALKS; number += 1)
    for (const id of askedByChance(book, state, walk(number))) times.set(id, (times.get(id) ?? 0) + 1);
  return times;
}

it("asks a few of the looks that are a tick alone, the same whoever asks", () => {
  const asked = askedByChance(book, nothing, walk(1));
  expect(asked.size).toBe(Math.floor(looks.length / 40));
  expect(asked.size).toBeGreaterThan(0);
  for (const id of asked) expect(looks.map((check) => check.id)).toContain(id);
  expect([...askedByChance(book, { ...nothing, photos: [] }, walk(1))]).toEqual([...asked]);
});

it("asks nothing of another kind of walk, and nothing without one", () => {
  expect(askedByChance(book, nothing, walk(1, "turnaround")).size).toBe(0);
  expect(askedByChance(book, nothing, null).size).toBe(0);
});

it("draws every look at some time, and those of high hazard about four times as often as those of low", () => {
  const times = drawn(nothing);
  expect(times.size).toBe(looks.length);
  const mean = (severity: string) => {
    const of = looks.filter(({ hazard }) => hazard.severity === severity);
    expect(of.length).toBeGreaterThan(3);
    return of.reduce((sum, { id }) => sum + (times.get(id) ?? 0), 0) / of.length;
  };
  // few of many are drawn, so shares are nearly as the weights: 4, 2 and 1
  expect(mean("high") / mean("low")).toBeGreaterThan(3.3);
  expect(mean("high") / mean("low")).toBeLessThan(4.7);
  expect(mean("medium") / mean("low")).toBeGreaterThan(1.6);
  expect(mean("medium") / mean("low")).toBeLessThan(2.4);
});

it("draws what was shown yesterday seldom: about a seventh as often as what never was", () => {
  const [first] = looks;
  if (first === undefined) throw new Error("expected a look in the demo's book");
  const shown: AircraftState = {
    ...nothing,
    photos: [
      {
        ...origin("4", "2026-11-11T08:00:00Z"),
        subject: { kind: "check", id: first.id },
        sha256: "0".repeat(64),
        mediaType: "image/jpeg",
      },
    ],
  };
  const before = drawn(nothing).get(first.id) ?? 0;
  const after = drawn(shown).get(first.id) ?? 0;
  expect(before).toBeGreaterThan(50);
  expect(after).toBeLessThan(before / 3); // weights 7 and 31/30: a share of 0.15, and room for chance
});

it("leaves a look open until it is shown, or somebody says why not", () => {
  const hand = walk(1);
  const [asked] = askedByChance(book, nothing, hand);
  if (asked === undefined) throw new Error("expected a draw");
  const answer = {
    ...origin("6", "2026-11-12T08:05:00Z"),
    walk: hand.id,
    check: asked,
    answer: "as-it-should-be",
  } as const;
  const state: AircraftState = {
    ...nothing,
    walks: new Map([[hand.id, hand]]),
    answersByWalk: new Map([[hand.id, [answer]]]),
    checks: new Map([[asked, { answers: [answer], readings: [] }]]),
  };
  const now_ms = Date.parse("2026-11-12T08:06:00Z");
  const statusOf = (of: AircraftState) =>
    assess(book, of, null, now_ms).verdicts.find(({ id }) => id === `check:${asked}`);
  expect(statusOf(state)).toMatchObject({ status: "open", missing: ["a photo, or why there is none"] });
  const why = { ...origin("7", "2026-11-12T08:05:30Z"), walk: hand.id, check: asked, why: "No light" };
  expect(statusOf({ ...state, evidenceDeclined: [why] })?.status).toBe("clear");
  const photo = {
    ...origin("7", "2026-11-12T08:05:30Z"),
    subject: { kind: "check", id: asked },
    sha256: "0".repeat(64),
    mediaType: "image/jpeg",
  } as const;
  expect(statusOf({ ...state, photos: [photo] })?.status).toBe("clear");
});
