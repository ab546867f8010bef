import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countOf, figure, figureSaid, readFigure, tally } from "./figures.ts";

describe("a figure as it is set in type", () => {
  it.each([
    [5, 2, "5.00"],
    [-4, 0, "−4"],
    [2585, 0, "2,585"],
    [1_234_567.891, 1, "1,234,567.9"],
    [-0.004, 2, "0.00"],
    [0, 0, "0"],
  ])("sets %d to %d decimals as %s", (value, decimals, text) => {
    expect(figure(value, decimals)).toBe(text);
  });

  it("is read back as what it was, to its decimals", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.integer({ min: 0, max: 3 }),
        (whole, decimals) => {
          const value = whole / 10 ** decimals;
          const typed = readFigure(figure(value, decimals).replaceAll(",", ""), "1");
          expect(typed.ok && typed.value).toBe(value === 0 ? 0 : value);
        },
      ),
    );
  });
});

it("is said with no fewer decimals than it has", () => {
  expect([figureSaid(28.5), figureSaid(28, 1), figureSaid(2585)]).toEqual(["28.5", "28.0", "2,585"]);
});

describe("a figure as a person types it", () => {
  it.each([
    ["5,05", 5.05, undefined],
    ["5.05", 5.05, undefined],
    [" −4 ", -4, undefined],
    ["-4", -4, undefined],
    [".5", 0.5, undefined],
    ["72 psi", 72, "psi"],
    ["4°C", 4, "degC"],
    ["0,125", 0.125, undefined],
    ["12,5 psi", 12.5, "psi"],
    ["1,500.5", 1500.5, undefined],
    ["1,500,000", 1_500_000, undefined],
  ])("reads %j", (text, value, unit) => {
    expect(readFigure(text, "1")).toEqual(
      unit === undefined ? { ok: true, value } : { ok: true, value, unit },
    );
  });

  it.each([
    ["", "Type a number, such as 5.20 bar."],
    ["abc", "“abc” is not a number. Type one such as 5.20 bar."],
    ["-", "“-” is not a number. Type one such as 5.20 bar."],
    ["9,000", "“9,000” can be read in two ways. Write 9000 or 9.000."],
    ["−9,000 ft", "“−9,000 ft” can be read in two ways. Write −9000 or −9.000."],
    ["5 stone", "“stone” is not a unit known here. Type a number such as 5.20 bar."],
  ])("refuses %j with a way out", (text, why) => {
    expect(readFigure(text, "5.20 bar")).toEqual({ ok: false, why });
  });

  it("never gives a number that is not one", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const typed = readFigure(text, "1");
        expect(!typed.ok || Number.isFinite(typed.value)).toBe(true);
      }),
    );
  });
});

it("counts in words to twelve, in figures above, and minds one and many", () => {
  expect([countOf(1, "look"), countOf(5, "look"), countOf(13, "look")]).toEqual([
    "One look",
    "Five looks",
    "13 looks",
  ]);
  expect([tally(1, "entry", "entries"), tally(0, "entry", "entries")]).toEqual(["1 entry", "0 entries"]);
});
