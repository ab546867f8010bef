import { expect, it } from "vitest";
import { revisionFault } from "./revision-fault.ts";

const MK = { id: "mk", name: "MK", role: "pilot" } as const;
const issued = (revision: number, sha256: string) => ({
  revision,
  sha256,
  author: MK,
  recordedAt: "2026-11-12T09:10:00+00:00",
});
const FIRST = [issued(3, "three"), issued(4, "four")];
const fault = (revision: number, sha256: string, before = FIRST) =>
  revisionFault(
    { revision, sha256 },
    `witnessmark: 1\nrevision: ${revision}\nissued: {}\n`,
    "tern.yaml",
    before,
  );

it("a revision that was issued is never adopted with another text: it says whose it is, and what to do", () => {
  expect(fault(4, "other")).toEqual({
    file: "tern.yaml",
    line: 2,
    column: 11,
    path: "revision",
    expected: "a revision above 4: revision 4 is in force",
    found: "revision 4 with another text than the one that MK adopted as 4 on 2026-11-12",
    remedy:
      "an issued revision never changes. If this file is right, give it revision 5 and adopt it again; if it holds a few changes only, make them in the book and issue that",
  });
  expect(fault(3, "other")?.found).toMatch(/^revision 3 with another text than/);
});

it("an older revision is not put in force again", () => {
  expect(fault(3, "three")).toMatchObject({ found: "revision 3, which is older" });
  expect(fault(2, "two")).toMatchObject({ found: "revision 2, which is older" });
});

it("what is in force already, the next one and the first of an aircraft are taken", () => {
  expect(fault(4, "four")).toBeUndefined();
  expect(fault(5, "five")).toBeUndefined();
  expect(fault(9, "nine")).toBeUndefined();
  expect(fault(1, "one", [])).toBeUndefined();
});
