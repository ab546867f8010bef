import { newId } from "@witnessmark/ledger";
import { expect, it } from "vitest";
import { demoBook, person, ToldLedger } from "../../testing/told-ledger.ts";
import { pastOfPoint } from "./point-past.ts";

it("tells everything that was said of one point, by whom, latest first, and nothing of another", async () => {
  const book = await demoBook("zz-skr");
  const check = book.checks.find((each) => each.reading !== undefined && each.walks.includes("first-of-day"));
  const other = book.checks.find(({ point }) => point !== check?.point);
  const gauge = book.gauges.get(check?.reading?.gauge ?? "");
  if (check === undefined || other === undefined || gauge === undefined)
    throw new Error("expected two checks");
  const [mk, jo] = [person("MK"), person("JO")];
  const ledger = new ToldLedger("ZZ-SKR", Date.parse("2026-11-12T08:00:00Z"));
  const walk = newId();
  const discrepancy = newId();
  await ledger.tell(mk, {
    type: "walk.started",
    body: { walk, kind: "first-of-day", bookSha256: book.sha256 },
  });
  await ledger.tell(
    mk,
    {
      type: "reading.recorded",
      body: { walk, check: check.id, gauge: gauge.id, read: { value: 4.25, unit: gauge.unit } },
    },
    { type: "check.answered", body: { walk, check: check.id, answer: "not-right" } },
    { type: "check.answered", body: { walk, check: other.id, answer: "as-it-should-be" } },
  );
  await ledger.tell(
    mk,
    { type: "discrepancy.raised", body: { discrepancy, words: "It is low", walk, check: check.id } },
    { type: "note.written", body: { subject: { kind: "check", id: check.id }, text: "Cold night" } },
  );
  await ledger.tell(jo, {
    type: "discrepancy.closed",
    body: { discrepancy, how: "put-right", words: "Filled up", releasedBy: "JO" },
  });
  const past = pastOfPoint(book, ledger.state, check.point);
  expect(past.map(({ who, words }) => [who, words])).toEqual([
    ["JO", "Put right: Filled up"],
    expect.arrayContaining(["MK"]),
    expect.arrayContaining(["MK"]),
    expect.arrayContaining(["MK"]),
  ]);
  const words = past.map((line) => line.words).join("; ");
  for (const part of ["Raised", "Cold night", "Not right, read 4.25"]) expect(words).toContain(part);
  const times = past.map(({ at_ms }) => at_ms);
  expect(times).toEqual(times.toSorted((a, b) => b - a));
  expect(pastOfPoint(book, ledger.state, other.point).length).toBe(1);
  expect(pastOfPoint(book, ledger.state, "no-such-point")).toEqual([]);
});
