import { expect, it } from "vitest";
import { listed } from "./listed.ts";

it.each([
  [[], ""],
  [["two tanks"], "two tanks"],
  [["a seat", "two tanks"], "a seat and two tanks"],
  [["a seat", "two tanks", "an envelope"], "a seat, two tanks and an envelope"],
])("%j is listed as: %s", (words, text) => {
  expect(listed(words)).toBe(text);
});
