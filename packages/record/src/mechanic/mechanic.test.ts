import { describe, expect, it } from "vitest";
import { readAnswer } from "./answer.ts";
import { type WorkPaper, workPaper } from "./work-paper.ts";

const ID = "01900000-0000-7000-8000-000000000001";
const PAPER: WorkPaper = {
  registration: "ZZ-SKR",
  type: "Skerry 460T",
  bookRevision: 16,
  discrepancy: ID,
  words: `Boot <split> & "torn"`,
  where: "Right wing boot",
  jasc: "3010",
  book: [["Should be", "No cut, no blister"]],
  life: [{ title: "Written down", when: "Thu 12 Nov 07:41, MK", words: "</script><b>split</b>" }],
  photos: ["data:image/jpeg;base64,AAAA"],
  madeOn: "12 Nov 2026",
};
const answer = (changed: Readonly<Record<string, unknown>> = {}) =>
  JSON.stringify({
    witnessmarkAnswer: 1,
    aircraft: "ZZ-SKR",
    discrepancy: ID,
    how: "put-right",
    words: "Patched; on 2026-11-13; WO 118",
    releasedBy: "J. Vane, A&P 123",
    ...changed,
  });
const read = (text: string) => readAnswer(text, "ZZ-SKR", ID);

describe("the paper for a mechanic", () => {
  const page = workPaper(PAPER);
  it("has all that is needed to find and judge it, and nothing that was typed becomes markup", () => {
    for (const part of ["Right wing boot", "JASC 3010", "No cut, no blister", "Thu 12 Nov 07:41, MK"])
      expect(page).toContain(part);
    expect(page).toContain("Boot &lt;split&gt; &amp; &quot;torn&quot;");
    expect(page).not.toContain("<split>");
    expect(page.split("</script>")).toHaveLength(2);
  });

  it("asks the net for nothing", () => {
    expect(page).toContain("default-src 'none'");
    expect(page).not.toMatch(/(src|href)="https?:/);
  });
});

describe("what a mechanic sends back", () => {
  it("is read for the discrepancy that it is of", () => {
    expect(read(answer())).toEqual({
      ok: true,
      answer: {
        aircraft: "ZZ-SKR",
        discrepancy: ID,
        how: "put-right",
        words: "Patched; on 2026-11-13; WO 118",
        releasedBy: "J. Vane, A&P 123",
      },
    });
  });

  it.each([
    ["no JSON", "put right", /does not read as JSON/],
    ["another file", `{"a":1}`, /no answer to a discrepancy/],
    ["another form", answer({ witnessmarkAnswer: 2 }), /another form/],
    ["another aircraft", answer({ aircraft: "ZZ-DUN" }), /of ZZ-DUN, and this is ZZ-SKR/],
    ["another discrepancy", answer({ discrepancy: "x" }), /another discrepancy/],
    ["an outcome that is none", answer({ how: "maybe" }), /put right or no fault/],
    ["no words", answer({ words: "  " }), /what was done/],
    ["nobody who released it", answer({ releasedBy: 7 }), /who released it/],
    ["a file that is far too long", " ".repeat(30_000), /too long/],
  ])("with %s is refused in words", (_what, text, says) => {
    const found = read(text);
    expect(found.ok).toBe(false);
    expect(found.ok ? "" : found.says).toMatch(says);
  });
});
