import type { Assessment, Verdict } from "@witnessmark/assess";
import { demoFlight } from "@witnessmark/assess/testing/demo-flight";
import { expect, it } from "vitest";
import { worstBySheet } from "./worst-by-sheet.ts";

const verdict = (topic: Verdict["topic"], status: Verdict["status"], subject?: Verdict["subject"]): Verdict =>
  ({ id: `${topic}:${status}`, topic, status, ...(subject === undefined ? {} : { subject }) }) as Verdict; // no more of it is read
const WALK = { id: "w2", kind: "first-of-day", startedAt: "2026-11-12T07:00:00Z", isOver: false } as const;

const given = (
  verdicts: readonly Verdict[],
  more: Partial<Pick<Assessment, "walk" | "flight">> = {},
): Parameters<typeof worstBySheet>[0] => ({
  verdicts,
  status: "open",
  walk: WALK,
  flight: demoFlight,
  ...more,
});

const none = new Map();

it("no flight has no answer: Load and Conditions are open, never clear", () => {
  const seen = worstBySheet(given([verdict("check", "clear")], { flight: null }), none);
  expect(seen).toMatchObject({ load: "open", conditions: "open", walk: "clear" });
});

it("a flight that is only named has none either", () => {
  const { plan: _plan, ...named } = demoFlight;
  expect(worstBySheet(given([], { flight: named }), none)).toMatchObject({
    load: "open",
    conditions: "open",
  });
});

it("a planned flight has the worst of its own", () => {
  const verdicts = [verdict("load", "clear"), verdict("fuel", "caution"), verdict("wind", "clear")];
  expect(worstBySheet(given(verdicts), none)).toMatchObject({ load: "caution", conditions: "clear" });
});

it("a stop found in the walk in hand is the walk's, whatever is still open or warns", () => {
  const verdicts = [
    verdict("discrepancy", "stop", { kind: "discrepancy", id: "d" }),
    verdict("pace", "caution"),
    verdict("check", "open"),
  ];
  expect(worstBySheet(given(verdicts), new Map([["d", { walk: WALK.id }]])).walk).toBe("stop");
  expect(worstBySheet(given(verdicts), new Map([["d", { walk: "w1" }]])).walk).toBe("caution");
});

it("nothing on record about a walk is open, nothing wrong on the record is clear", () => {
  expect(worstBySheet(given([], { walk: null }), none)).toMatchObject({ walk: "open", record: "clear" });
});
