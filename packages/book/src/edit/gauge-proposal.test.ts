import { expect, it } from "vitest";
import { gaugeProposal } from "./gauge-proposal.ts";

// common practice: a tyre gauge is true to about 0.1 bar, a thermometer to 2 °C
it.each([
  ["bar", "0.1 bar", "0.05 bar"],
  ["psi", "1 psi", "0.5 psi"],
  ["°C", "2 °C", "1 °C"],
  ["mm", "2 mm", "1 mm"],
  ["L", "1 L", "0.5 L"],
  ["US qt", "0.5 US qt", "0.2 US qt"],
  ["V", "0.2 V", "0.1 V"],
  ["rpm", "50 rpm", "20 rpm"],
])("a gauge that reads in %s starts from ± %s and %s", (unit, accuracy, resolution) => {
  expect(gaugeProposal(unit)).toEqual({ accuracy, resolution });
});

it("proposes nothing for a unit that is not known, or of which no gauge is common", () => {
  expect(gaugeProposal("cubits")).toBeUndefined();
  expect(gaugeProposal("kg/h")).toBeUndefined();
  expect(gaugeProposal("")).toBeUndefined();
});
