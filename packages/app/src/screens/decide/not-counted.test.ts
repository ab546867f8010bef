import type { Verdict } from "@witnessmark/assess";
import type { AircraftState } from "@witnessmark/ledger";
import { expect, it } from "vitest";
import { notCountedText } from "./not-counted.ts";

const WALK = { id: "w2", kind: "first-of-day", startedAt: "2026-11-26T11:30:00Z", isOver: false } as const;
const verdict = (id: string, status: Verdict["status"]): Verdict =>
  ({
    topic: "check",
    status,
    title: "Right oxygen panel",
    says: "Read the oxygen pressure: it comes after “Turn the valve open”, and was not",
    subject: { kind: "check", id },
  }) as Verdict; // no more of it is read
const readIn = (walk: string): Pick<AircraftState, "checks"> => ({
  checks: new Map([["oxygen", { answers: [], readings: [{ walk }] }]]) as unknown as AircraftState["checks"], // only its walk is read
});

it("says which reading of this walk does not count, and why", () => {
  expect(notCountedText({ walk: WALK, verdicts: [verdict("oxygen", "open")] }, readIn("w2"))).toBe(
    "One reading of this walk does not count yet. Right oxygen panel, Read the oxygen pressure: it comes after “Turn the valve open”, and was not.",
  );
});

it("says nothing of readings that count, nor of those of another walk", () => {
  expect(
    notCountedText({ walk: WALK, verdicts: [verdict("oxygen", "clear")] }, readIn("w2")),
  ).toBeUndefined();
  expect(notCountedText({ walk: WALK, verdicts: [verdict("oxygen", "open")] }, readIn("w1"))).toBeUndefined();
  expect(notCountedText({ walk: null, verdicts: [verdict("oxygen", "open")] }, readIn("w2"))).toBeUndefined();
});
