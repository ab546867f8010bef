import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conformanceBetween, nonconformanceBetween } from "./conformance.ts";
import { standardUncertainty } from "./uncertainty.ts";

const width = fc.double({ min: 0, max: 1e6, noNaN: true });

describe("the standard uncertainty of a gauge", () => {
  // JCGM 100:2008: 4.3.7 (a/√3), 4.3.4 (95 % is 1.960 u), F.2.2.1 (0.29 δ), from memory
  it.each([
    ["a bound", { accuracy: 1, coverage: "bound", resolution: 0 }, 0.57735],
    ["a 95 % interval", { accuracy: 1.96, coverage: "95-percent", resolution: 0 }, 1],
    ["a step alone", { accuracy: 0, coverage: "bound", resolution: 1 }, 0.28868],
    [
      "both: 0.05 bar as a bound, read to 0.05 bar",
      { accuracy: 0.05, coverage: "bound", resolution: 0.05 },
      0.032275,
    ],
    ["nothing", { accuracy: 0, coverage: "95-percent", resolution: 0 }, 0],
  ] as const)("from %s", (_what, statement, expected) => {
    expect(Math.abs(standardUncertainty(statement) - expected)).toBeLessThan(5e-5);
  });

  it("grows with the accuracy stated and with the step", () => {
    fc.assert(
      fc.property(width, width, fc.constantFrom("bound", "95-percent"), (accuracy, resolution, coverage) => {
        const here = standardUncertainty({ accuracy, coverage, resolution });
        expect(standardUncertainty({ accuracy: accuracy + 1, coverage, resolution })).toBeGreaterThanOrEqual(
          here,
        );
        expect(
          standardUncertainty({ accuracy, coverage, resolution: resolution + 1 }),
        ).toBeGreaterThanOrEqual(here);
        expect(here).toBeLessThanOrEqual(accuracy + resolution);
      }),
    );
  });

  it("is refused for a width below zero", () => {
    expect(() => standardUncertainty({ accuracy: -1, coverage: "bound", resolution: 0 })).toThrow(
      "accuracy: expected zero or more, in the gauge's unit, received -1",
    );
    expect(() => standardUncertainty({ accuracy: 0, coverage: "bound", resolution: Number.NaN })).toThrow(
      "resolution: expected zero or more, in the gauge's unit, received NaN",
    );
  });
});

describe("conformance and its opposite", () => {
  it("are one together", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (estimate_1, standardUncertainty_1) => {
          const given = { estimate_1, standardUncertainty_1, lowerLimit_1: -10, upperLimit_1: 12 };
          expect(conformanceBetween.compute(given) + nonconformanceBetween.compute(given)).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it("refuse limits that cross", () => {
    expect(() =>
      conformanceBetween.compute({
        estimate_1: 1,
        standardUncertainty_1: 1,
        lowerLimit_1: 3,
        upperLimit_1: 2,
      }),
    ).toThrow("conformance-between, lowerLimit_1: expected at most the upper limit, 2, received 3");
  });
});
