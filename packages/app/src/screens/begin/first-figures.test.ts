import { describe, expect, it } from "vitest";
import { asKind, datumWords, figuresOf, firstArchetype, nothingSaid } from "./first-figures.ts";

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

  it("have a datum at the tip of the nose until another is said, behind it or ahead of it", () => {
    expect(figuresOf(said, []).figures.datumAft_m).toBe(0);
    expect(figuresOf({ ...said, datum: "1,15" }, []).figures.datumAft_m).toBe(1.15);
    expect(figuresOf({ ...said, datum: "−0.5" }, []).figures.datumAft_m).toBe(-0.5);
    // NIST SP 811: 1 in = 0.0254 m, so 3 ft 9.276 in = 1.15 m; here in feet, to a tenth of a millimetre
    expect(figuresOf({ ...said, unit: "ft", datum: "3.773" }, []).figures.datumAft_m).toBeCloseTo(1.15, 3);
    expect(Object.keys(figuresOf({ ...said, datum: "fire-wall" }, []).wrong)).toEqual(["datum"]);
  });

  it("say where the datum is in words", () => {
    expect(datumWords(1.15, "m")).toBe("1.15 m aft of the tip of the nose");
    expect(datumWords(-0.5, "m")).toBe("0.50 m ahead of the tip of the nose");
    expect(datumWords(0, "m")).toBe("the tip of the nose");
    expect(datumWords(1.15, "ft")).toBe("3.77 ft aft of the tip of the nose");
  });

  it("keep what was typed when another kind is taken", () => {
    const other = asKind(
      { ...said, datum: "1.15" },
      {
        ...firstArchetype(),
        figures: { ...firstArchetype().figures, wing: "low" },
      },
    );
    expect(other).toMatchObject({ registration: "zz-fox", span: "11", wing: "low", datum: "1.15" });
  });
});
