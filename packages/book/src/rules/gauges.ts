import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";

/** What a gauge states about itself can be true. */
export const gaugesMakeSense: Rule = (draft, report) => {
  for (const { index, value } of draft.gauges) {
    const { accuracy, resolution, range } = value;
    if (accuracy.valueSI < 0) {
      report(["gauges", index, "accuracy"], {
        expected: "half the width of the interval that the maker states, not below 0",
        found: measureText(accuracy),
        remedy: "leave out the minus: ±0.05 bar is written 0.05 bar",
      });
    }
    if (resolution.valueSI <= 0) {
      report(["gauges", index, "resolution"], {
        expected: "one division of the scale, above 0",
        found: measureText(resolution),
      });
    }
    const [low, high] = range ?? [];
    if (low !== undefined && high !== undefined && low.valueSI >= high.valueSI) {
      report(["gauges", index, "range", 0], {
        expected: `a low end below the high end, ${measureText(high)}`,
        found: measureText(low),
        remedy: "write the lower value first",
      });
    }
  }
};
