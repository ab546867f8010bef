import { describe, expect, it } from "vitest";
import type { Aspect, Problem } from "./aspect.ts";
import { decodeReports } from "./decode.ts";
import { flightCategory } from "./flight-category.ts";
import { observedConditions } from "./observed-conditions.ts";
import { isKnown, type Report } from "./report.ts";
import { casesOf, type PublishedCase, textInput } from "./testing/published-cases.ts";

const ASKED: readonly Aspect[] = [
  "wind",
  "gust",
  "visibility",
  "ceiling",
  "weather",
  "temperature",
  "dew point",
  "pressure",
];

/** What of a report may be used: true, false, or "all but the wind". */
function usable(report: Report): unknown {
  const known = ASKED.filter((aspect) => isKnown(report, aspect));
  if (known.length === 0) return false;
  const open = ASKED.filter(
    (aspect) => !known.includes(aspect) && !(aspect === "gust" && !known.includes("wind")),
  );
  return open.length === 0 ? true : `all but the ${open.join(", ")}`;
}

function answerTo(name: string, one: PublishedCase, report: Report | undefined): unknown {
  switch (name) {
    case "accepted":
      return report?.accepted ?? false;
    case "usable":
      return report === undefined ? false : usable(report);
    case "ceilingKnown":
      return report !== undefined && isKnown(report, "ceiling");
    case "altimeterKnown":
      return report !== undefined && isKnown(report, "pressure");
    case "visibilityKnown":
      return report !== undefined && isKnown(report, "visibility");
    case "temperatureKnown":
      return report !== undefined && isKnown(report, "temperature");
    case "reports":
      return decodeReports(textInput(one, "report")).reports.map(({ station }) => station);
    case "sameAs":
      expect(decodeReports(textInput(one, "report"))).toEqual(
        decodeReports(textInput(one, "report").toUpperCase()),
      );
      return one.expected["sameAs"];
    default:
      return answerOfObservation(name, report);
  }
}

function answerOfObservation(name: string, report: Report | undefined): unknown {
  if (report?.kind !== "observation") throw new Error(`${name} asks for an observation`);
  const { elements } = report;
  const { ceiling, visibility } = elements;
  switch (name) {
    case "flightCategory":
      return flightCategory(ceiling ?? { kind: "unknown" }, visibility).category ?? null;
    case "ceiling_ft":
      return ceiling?.kind === "height" ? ceiling.height_ft : null;
    case "visibility_SM":
      return visibility?.coded.unit === "mi" ? visibility.coded.value : null;
    case "hazard":
      return observedConditions(report).hazards.some(({ value }) => value === "freezing fog")
        ? "freezing obscuration"
        : "none";
    default:
      throw new Error(`this test does not know what "${name}" asks`);
  }
}

describe("what is wrong with a report is told, with what depends on it", () => {
  it.each(casesOf("bad-reports").map((one) => ({ id: one.id, one })))("$id", ({ one }) => {
    const decoded = decodeReports(textInput(one, "report"));
    const [report] = decoded.reports;
    const told: readonly Problem[] = [
      ...decoded.problems,
      ...decoded.reports.flatMap(({ problems }) => problems),
    ];
    const expected = one.expected["problems"] as readonly { group: string; say: string }[]; // as the file has them
    expect(told.map(({ group }) => group).toSorted()).toEqual(expected.map(({ group }) => group).toSorted());
    for (const { group, say } of expected) {
      const here = told.filter((problem) => problem.group === group).map(({ says }) => says);
      expect(
        here.some((says) => says.includes(say)),
        `${group}: ${here.join(" | ")} should say: ${say}`,
      ).toBe(true);
    }
    for (const [name, value] of Object.entries(one.expected))
      if (name !== "problems") expect(answerTo(name, one, report), name).toEqual(value);
  });

  it("takes every case of the file: 19", () => {
    expect(casesOf("bad-reports").length).toBe(19);
  });
});
