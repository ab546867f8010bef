import { expect, it } from "vitest";
import { JASC_CHAPTERS, JASC_CODES } from "./jasc-table.ts";
import { jascChapter, jascTitle } from "./jasc-title.ts";

it.each([
  // from memory of the FAA JASC table, edition of 27 October 2008
  ["3244", "Tire"],
  ["3411", "Pitot/static system"],
  ["6113", "Propeller spinner section"],
  // 00 and 97 of a chapter need no line of their own
  ["3800", "Water/waste"],
  ["3397", "Lights: wiring"],
])("names %s", (code, title) => {
  expect(jascTitle(code)).toBe(title);
});

it.each(["", "32", "3299", "0032", "32444", "constructor", "toString00"])("knows nothing of %o", (code) => {
  expect(jascTitle(code)).toBeUndefined();
});

it("has a chapter for every code, and codes of four figures only", () => {
  expect(Object.keys(JASC_CODES).length).toBeGreaterThan(200);
  for (const code of Object.keys(JASC_CODES)) {
    expect(code).toMatch(/^\d{4}$/);
    expect(jascChapter(code)).toBeDefined();
  }
  expect(Object.keys(JASC_CHAPTERS).every((chapter) => /^\d\d$/.test(chapter))).toBe(true);
});
