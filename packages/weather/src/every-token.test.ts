import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ASPECTS, type Aspect } from "./aspect.ts";
import { conditionsAt } from "./conditions-at.ts";
import { type Decoded, decodeReports } from "./decode.ts";
import { observedConditions } from "./observed-conditions.ts";
import { placeReport } from "./placed.ts";
import { readReport } from "./read-report.ts";
import { losses } from "./testing/encode.ts";
import { casesOf } from "./testing/published-cases.ts";
import { forecasts, observations, slips } from "./testing/reports.ts";
import { tokenise } from "./tokens.ts";

const NOON_MS = Date.UTC(2026, 2, 5, 12);
const reportTexts = ["observations", "forecasts", "bad-reports"].flatMap((topic) =>
  casesOf(topic).map(({ inputs }) => String(inputs["report"])),
);

/** Whether every token of a text is in exactly one place of what came out of it, in order. */
function accountedFor(text: string, { reports, before }: Decoded): void {
  expect([...before, ...reports.flatMap(({ tokens }) => tokens)]).toEqual(
    tokenise(text).map((token) => token.text),
  );
  for (const { tokens, groups } of reports) {
    let next = 0;
    for (const { first, count, text: group } of groups) {
      expect(first).toBe(next);
      expect(group).toBe(tokens.slice(first, first + count).join(" "));
      expect(count).toBeGreaterThan(0);
      next += count;
    }
    expect(next).toBe(tokens.length);
  }
}

/** No figure anywhere in an answer is NaN or infinite. */
function finite(value: unknown): void {
  if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
  else if (typeof value === "object" && value !== null) for (const one of Object.values(value)) finite(one);
}

const anyToken = fc.oneof(
  fc.constantFrom(...new Set(reportTexts.flatMap((text) => text.split(" ")))),
  fc.string({ minLength: 1, maxLength: 8 }),
  fc.stringMatching(/^[A-Z0-9/+-]{1,9}$/u),
);
const anyText = fc
  .tuple(
    fc.constantFrom(
      "",
      "METAR ZZTW 051200Z ",
      "TAF ZZTW 051105Z 0512/0612 ",
      "SPECI ",
      "METAR ZZTW 051200Z 22015KT 9999 RMK ",
    ),
    fc.array(anyToken, { maxLength: 25 }),
  )
  .map(([start, tokens]) => `${start}${tokens.join(" ")}`);

describe("whatever is pasted", () => {
  it("nothing throws, and every token is used or told", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const decoded = decodeReports(text);
        accountedFor(text, decoded);
        for (const report of decoded.reports) {
          expect(losses(report)).toEqual([]);
          for (const { outcome, says, text: group, affects } of report.groups)
            if (outcome !== "used") {
              expect(says).not.toBe("");
              expect(report.problems.some((problem) => problem.group === group)).toBe(true);
              for (const aspect of affects) expect(ASPECTS).toContain(aspect);
            }
        }
      }),
      { numRuns: 400 },
    );
  });

  it("conditions come out of it, without a NaN, and open rather than wrong", () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: -10, max: 40 }), fc.nat({ max: 30 }), (text, start_h, hours) => {
        for (const report of decodeReports(text).reports) {
          finite(report);
          if (report.kind === "observation") finite(observedConditions(report));
          const placed = placeReport(report, NOON_MS);
          if (placed.kind !== "forecast") continue;
          const from_ms = NOON_MS + start_h * 3_600_000;
          const conditions = conditionsAt(placed, from_ms, from_ms + hours * 3_600_000);
          finite(conditions);
          if (conditions.covered !== "whole") expect(conditions.open).toEqual(ASPECTS);
        }
      }),
      { numRuns: 200 },
    );
  });

  it.each(reportTexts.map((text) => ({ text })))("$text: nothing of it is lost", ({ text }) => {
    const decoded = decodeReports(text);
    accountedFor(text, decoded);
    expect(decoded.reports.flatMap(losses)).toEqual([]);
  });
});

describe("a valid report", () => {
  it.each([
    { kind: "observation", reports: observations },
    { kind: "forecast", reports: forecasts },
  ])("gives back the values that it was written from: $kind", ({ reports }) => {
    fc.assert(
      fc.property(reports, ({ text, parts }) => {
        const { reports: decoded, problems } = decodeReports(text);
        expect(problems).toEqual([]);
        expect(decoded.length).toBe(1);
        expect(decoded[0]?.groups.flatMap(({ part }) => (part === undefined ? [] : [part]))).toEqual(parts);
        expect(decoded[0]?.problems.map(({ group, says }) => `${group}: ${says}`)).toEqual([]);
        expect(decoded[0]?.open).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it("says the same in lower case, over several lines, with tabs and a closing sign", () => {
    fc.assert(
      fc.property(
        observations,
        fc.constantFrom("\n", "\t", "  ", "\u00A0", "\r\n  "),
        ({ text, tokens }, gap) => {
          expect(decodeReports(`${tokens.join(gap).toLowerCase()}=`)).toEqual(decodeReports(text));
        },
      ),
      { numRuns: 50 },
    );
  });
});

const whatIsSaid = (decoded: Decoded): unknown =>
  decoded.reports.map(({ groups, station, issued, kind, open }) => ({
    kind,
    station,
    issued,
    open,
    groups: groups.map(({ part, text, section, period }) => part ?? `${section} ${period ?? ""} ${text}`),
  }));

describe("a slip in one token of a valid report", () => {
  it.each([
    { kind: "observation", reports: observations },
    { kind: "forecast", reports: forecasts },
  ])(
    "is told with something open, or is another valid report that says something else: $kind",
    ({ reports }) => {
      fc.assert(
        fc.property(
          reports.chain((report) => slips(report).map((slip) => ({ report, slip }))),
          ({ report, slip }) => {
            const text = slip.tokens.join(" ");
            fc.pre(text !== report.text);
            const decoded = decodeReports(text);
            accountedFor(text, decoded);
            expect(decoded.reports.flatMap(losses)).toEqual([]);
            const told = [...decoded.problems, ...decoded.reports.flatMap(({ problems }) => problems)];
            const open = told.some(({ affects }) => affects.length > 0);
            if (!open) expect(whatIsSaid(decoded)).not.toEqual(whatIsSaid(decodeReports(report.text)));
          },
        ),
        { numRuns: 1000 },
      );
    },
  );

  const NEEDED: readonly { readonly is: string; readonly aspect: Aspect }[] = [
    { is: "wind", aspect: "wind" },
    { is: "visibility", aspect: "visibility" },
    { is: "temperature", aspect: "temperature" },
    { is: "pressure", aspect: "pressure" },
  ];
  it.each(NEEDED)("a report without its $is group leaves the $aspect open", ({ is, aspect }) => {
    fc.assert(
      fc.property(observations, ({ text }) => {
        const [report] = decodeReports(text).reports;
        const kept = report?.groups.filter(({ part }) => part?.is !== is).map((group) => group.text) ?? [];
        expect(decodeReports(kept.join(" ")).reports[0]?.open).toContain(aspect);
      }),
      { numRuns: 50 },
    );
  });

  it("a report without any group of the sky leaves the ceiling open", () => {
    fc.assert(
      fc.property(observations, ({ text }) => {
        const [report] = decodeReports(text).reports;
        const sky = ["cloud", "sky", "vertical visibility"];
        const kept =
          report?.groups.filter(({ part }) => !sky.includes(part?.is ?? "")).map((group) => group.text) ?? [];
        expect(decodeReports(kept.join(" ")).reports[0]?.open).toContain("ceiling");
      }),
      { numRuns: 50 },
    );
  });
});

describe("a text in which the asked report is not", () => {
  it("never gives another one in its place", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const ask = { station: "ZZQN", received_ms: NOON_MS, now_ms: NOON_MS } as const;
        const read = readReport(text, { kind: "observation", ...ask });
        if (read.placed !== undefined) expect(read.placed.report.station).toBe("ZZQN");
        else expect(read.open).toEqual(ASPECTS);
      }),
      { numRuns: 100 },
    );
  });
});
