import { expect, it } from "vitest";
import { fieldOf } from "./field-of.ts";

it.each([
  [["loading", "empty", "mass"], "Mass"],
  [["loading", "stations", 2, "arm"], "Arm"],
  [["loading", "tanks", 0, "arms", 1, "volume"], "With"],
  [["fuel", "burn", "cruise"], "Cruise"],
  [["checks", 3, "reading", "limit", "service"], "Service pressure"],
  [["timedItems", 0, "limits", 0, "months"], "Months"],
  [["geometry", "wing", "root", "chord"], "Chord"],
])("%j is the field %s", (path, label) => {
  expect(fieldOf(path)?.label).toBe(label);
});

it("is none for what no page shows", () => {
  expect(fieldOf(["witnessmark"])).toBeUndefined();
});
