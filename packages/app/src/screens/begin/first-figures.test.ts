import { describe, expect, it } from "vitest";
import { asKind, figuresOf, firstArchetype, nothingSaid } from "./first-figures.ts";

const said = {
  ...nothingSaid(firstArchetype()),
  registration: "zz-fox",
  type: "Foxglove 2",
  span: "11",
  length: "7.5",
};

describe("the first figures of an aircraft", () => {
  it("are taken as they are typed: with a decimal comma, in feet, in small letters", () => {
    const { figures, wrong } = figuresOf({ ...said, span: "10,4", length: "22.5 ft" }, []);
    expect(wrong).toEqual({});
    expect(figures.registration).toBe("ZZ-FOX");
    expect(figures.span_m).toBeCloseTo(10.4, 9);
    // NIST SP 811: 1 ft = 0.3048 m
    expect(figures.length_m).toBeCloseTo(22.5 * 0.3048, 9);
    expect(figuresOf({ ...said, unit: "ft", span: "36.5" }, []).figures.span_m).toBeCloseTo(36.5 * 0.3048, 9);
  });

  it("are wanted, each with a word of where it is found, and the drawing goes on meanwhile", () => {
    const { figures, wrong } = figuresOf(nothingSaid(firstArchetype()), []);
    expect(Object.keys(wrong).sort()).toEqual(["length", "registration", "span", "type"]);
    expect(figures.span_m).toBe(firstArchetype().figures.span_m);
  });

  it.each([
    ["letters for a length", { span: "plenty" }, "span"],
    ["no seat", { seats: "0" }, "seats"],
    ["half a seat", { seats: "2.5" }, "seats"],
    ["a registration with a space in it", { registration: "ZZ FOX" }, "registration"],
    ["a registration that is here already", { registration: "zz-skr" }, "registration"],
  ] as const)("are refused at their place: %s", (_, part, field) => {
    expect(Object.keys(figuresOf({ ...said, ...part }, ["ZZ-SKR"]).wrong)).toEqual([field]);
  });

  it("keep what was typed when another kind is taken", () => {
    const other = asKind(said, {
      ...firstArchetype(),
      figures: { ...firstArchetype().figures, wing: "low" },
    });
    expect(other).toMatchObject({ registration: "zz-fox", span: "11", wing: "low" });
  });
});
