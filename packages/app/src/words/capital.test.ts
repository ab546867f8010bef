import { expect, it } from "vitest";
import { capital, lower } from "./capital.ts";

it.each([
  ["Aft bay", "aft bay"],
  ["A bag", "a bag"],
  ["seat 2", "seat 2"],
  ["ELT off", "ELT off"],
  ["V-belt worn", "V-belt worn"],
  ["", ""],
])("%j stands inside a sentence as %j", (text, inside) => {
  expect(lower(text)).toBe(inside);
});

it("a capital is put first, and the rest is left", () => {
  expect(capital("tail locker, ELT")).toBe("Tail locker, ELT");
});
