import { describe, expect, it } from "vitest";
import { InputError } from "../input-error.ts";
import { checkDefinition, checkReads, DefinitionError } from "./check-definition.ts";
import { defineQuantity } from "./define-quantity.ts";
import type { InputSpec, InputValue } from "./quantity.ts";

const HEIGHT = { name: "height_m", unit: "m", range: [-5, 100], meaning: "height of the thing" } as const;

const inverse = defineQuantity({
  id: "inverse-height",
  title: "One over a height",
  inputs: [HEIGHT],
  output: { name: "inverse_1", unit: "1" },
  formula: "1 / h",
  sources: [{ title: "made up by this test", status: "from memory" }],
  compute: ({ height_m }) => 1 / height_m,
});

/** What a call throws, for looking at. */
function caught(call: () => unknown): InputError {
  try {
    call();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error("nothing was thrown");
}

describe("a quantity's compute", () => {
  it("computes from inputs at both ends of their range", () => {
    expect(inverse.compute({ height_m: -5 })).toBe(-0.2);
    expect(inverse.compute({ height_m: 100 })).toBe(0.01);
  });

  it("says which input is out of range, what came, and what would do", () => {
    const error = caught(() => inverse.compute({ height_m: 100.5 }));
    expect(error.message).toBe(
      "inverse-height, height_m: expected −5\u00A0m to 100\u00A0m, received 100.5\u00A0m; " +
        "check the figure and its unit; nothing is computed outside the range",
    );
    expect(error.code).toBe("out-of-range");
    expect(error.field).toBe("height_m");
    expect(error.detail).toMatchObject({ quantity: "inverse-height", value: 100.5, range: [-5, 100] });
  });

  it("takes a value that only a conversion's rounding puts beyond its range, as the end of the range", () => {
    expect(inverse.compute({ height_m: 100 * (1 + Number.EPSILON) })).toBe(0.01);
    expect(() => inverse.compute({ height_m: 100 * (1 + 1e-12) })).toThrow("received 100\u00A0m");
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses %s", (height_m) => {
    const error = caught(() => inverse.compute({ height_m }));
    expect(error.code).toBe("not-a-number");
    expect(error.message).toBe(
      `inverse-height, height_m: expected a number, −5\u00A0m to 100\u00A0m, received ${height_m}`,
    );
  });

  it("refuses a result that is not finite", () => {
    const error = caught(() => inverse.compute({ height_m: 0 }));
    expect(error.message).toBe(
      "inverse-height, inverse_1: expected a finite result, received Infinity; check the inputs; together they lead nowhere",
    );
  });

  it("refuses a missing input", () => {
    // A caller in plain JavaScript, or one that read its inputs from a file.
    const loose: { compute(inputs: Readonly<Record<string, number>>): number } = inverse;
    expect(caught(() => loose.compute({})).message).toBe(
      "inverse-height, height_m: expected height of the thing, −5\u00A0m to 100\u00A0m, received nothing",
    );
    expect(caught(() => loose.compute({ height_m: 1, width_m: 1 })).message).toBe(
      "inverse-height, width_m: expected one of height_m, received width_m",
    );
  });
});

describe("an input that is many", () => {
  const sum = defineQuantity({
    id: "sum-of-heights",
    title: "Heights, one on the other",
    inputs: [{ ...HEIGHT, many: true }],
    output: { name: "sum_m", unit: "m" },
    formula: "sum of h",
    sources: [{ title: "made up by this test", status: "from memory" }],
    compute: ({ height_m }) => height_m.reduce((a, b) => a + b),
  });
  /** As plain JavaScript could call it. */
  const loose: { compute(inputs: Readonly<Record<string, unknown>>): number } = sum as never; // types off, on purpose

  it("computes from a list, each value of which may lie at an end of the range", () => {
    expect(sum.compute({ height_m: [-5, 100, 2] })).toBe(97);
    expect(sum.compute({ height_m: [7] })).toBe(7);
  });

  it("takes a value that only rounding puts beyond the range as the end of the range", () => {
    expect(sum.compute({ height_m: [0, 100 * (1 + Number.EPSILON)] })).toBe(100);
  });

  it("does not hand the caller's own list on", () => {
    const heights = [1, 2];
    const kept = defineQuantity({
      id: "kept",
      title: "Kept",
      inputs: [{ ...HEIGHT, many: true }],
      output: { name: "same_1", unit: "1" },
      formula: "1 when it is the same list",
      sources: [{ title: "made up by this test", status: "from memory" }],
      compute: ({ height_m }) => (height_m === heights ? 1 : 0),
    });
    expect(kept.compute({ height_m: heights })).toBe(0);
  });

  it.each<[string, unknown, string, string]>([
    [
      "a value out of range, with its place",
      [1, 101],
      "out-of-range",
      "expected −5\u00A0m to 100\u00A0m, received 101\u00A0m as value 2; " +
        "check the figure and its unit; nothing is computed outside the range",
    ],
    [
      "a value that is no number",
      [1, 2, Number.NaN],
      "not-a-number",
      "expected a number, −5\u00A0m to 100\u00A0m, received NaN as value 3",
    ],
    [
      "a list in the list",
      [[1, 2]],
      "not-a-number",
      "expected a number, −5\u00A0m to 100\u00A0m, received a list of 2 as value 1",
    ],
    [
      "a hole in the list",
      Array(1),
      "not-a-number",
      "expected a number, −5\u00A0m to 100\u00A0m, received undefined as value 1",
    ],
    [
      "an empty list",
      [],
      "missing",
      "expected height of the thing, at least one value, each −5\u00A0m to 100\u00A0m, received an empty list",
    ],
    [
      "nothing",
      undefined,
      "missing",
      "expected height of the thing, at least one value, each −5\u00A0m to 100\u00A0m, received nothing",
    ],
    ["one number", 4, "not-a-number", "expected a list of numbers, each −5\u00A0m to 100\u00A0m, received 4"],
  ])("refuses %s", (_what, height_m, code, message) => {
    const error = caught(() => loose.compute({ height_m }));
    expect(error.message).toBe(`sum-of-heights, height_m: ${message}`);
    expect([error.code, error.field]).toEqual([code, "height_m"]);
  });

  it("is the only one that takes a list", () => {
    const single: { compute(inputs: Readonly<Record<string, InputValue>>): number } = inverse;
    expect(caught(() => single.compute({ height_m: [1, 2] })).message).toBe(
      "inverse-height, height_m: expected a number, −5\u00A0m to 100\u00A0m, received a list of 2",
    );
  });
});

describe("a definition that its types would refuse does not load either", () => {
  const sound = {
    id: "sound",
    title: "Sound",
    inputs: [HEIGHT] as readonly InputSpec[],
    output: { name: "twice_m", unit: "m" } as const,
    formula: "2 h",
    sources: [{ title: "a source", status: "published" }] as const,
  };
  /** A spec as plain JavaScript could write it. */
  const input = (change: Record<string, unknown>): readonly InputSpec[] => [
    { ...HEIGHT, ...change } as InputSpec,
  ];

  it("loads when it is sound", () => {
    expect(() => checkDefinition(sound)).not.toThrow();
  });

  it.each([
    ["an id that is not kebab-case", { id: "Sound One" }, '"Sound One": expected an id in kebab-case'],
    ["no title", { title: " " }, "sound: no title"],
    ["no formula", { formula: "" }, "sound: no formula"],
    ["no source", { sources: [] }, "sound: no source"],
    [
      "a source without a title",
      { sources: [{ title: "", status: "published" as const }] },
      "sound: no source",
    ],
    ["no inputs", { inputs: [] }, "sound: no inputs"],
    ["an input twice", { inputs: [HEIGHT, HEIGHT] }, "sound, height_m: registered twice"],
    [
      "a suffix that is not the unit",
      { inputs: input({ name: "height_ft" }) },
      'sound, height_ft: expected a name in camelCase that ends in "_m"',
    ],
    [
      "a stem that is not camelCase",
      { inputs: input({ name: "Height_m" }) },
      'sound, Height_m: expected a name in camelCase that ends in "_m"',
    ],
    [
      "a unit that is not SI",
      { inputs: input({ name: "height_ft", unit: "ft" }) },
      'sound, height_ft: "ft" is not an SI unit; use "m"',
    ],
    [
      "a unit with an offset",
      { inputs: input({ name: "t_degC", unit: "degC" }) },
      'sound, t_degC: "degC" is not an SI unit; use "K"',
    ],
    [
      "a unit that is none",
      { inputs: input({ name: "height_cubit", unit: "cubit" }) },
      'sound, height_cubit: "cubit" is no unit of the program',
    ],
    [
      "a many that is not true",
      { inputs: input({ many: false }) },
      'sound, height_m: "many" is true or left out',
    ],
    ["no meaning", { inputs: input({ meaning: "" }) }, "sound, height_m: no meaning"],
    ["a range upside down", { inputs: input({ range: [1, 0] }) }, "sound, height_m: 1 to 0 is no range"],
    [
      "a range without end",
      { inputs: input({ range: [0, Infinity] }) },
      "sound, height_m: 0 to Infinity is no range",
    ],
    [
      "an output that is an input",
      { output: { name: "height_m", unit: "m" } as const },
      "sound, height_m: both an input and the output",
    ],
  ])("%s", (_what, change, message) => {
    expect(() => checkDefinition({ ...sound, ...change })).toThrow(new DefinitionError(message));
  });

  it("an input that compute reads and the definition does not list", () => {
    expect(() => checkReads("sound", [HEIGHT], (inputs) => Number(inputs["width_m"] ?? 0) * 2)).toThrow(
      new DefinitionError("sound: compute reads width_m, which is not registered"),
    );
  });

  it("an input that the definition lists and compute never reads", () => {
    expect(() => checkReads("sound", [HEIGHT], () => 1)).toThrow(
      new DefinitionError("sound: height_m is registered, and compute never reads it"),
    );
  });

  it("a list that compute never reads, and one that it does read", () => {
    const many = [{ ...HEIGHT, many: true }] as const;
    expect(() => checkReads("sound", many, () => 1)).toThrow(
      new DefinitionError("sound: height_m is registered, and compute never reads it"),
    );
    const seen: unknown[] = [];
    checkReads("sound", many, (inputs) => seen.push(inputs["height_m"]));
    expect(seen).toEqual([[47.5, 47.5]]);
  });

  it("but a formula may refuse the middle of its ranges", () => {
    const refuse = (): number => {
      throw new InputError("out-of-range", "height_m", { expected: "anything else", received: "the middle" });
    };
    expect(() => checkReads("sound", [HEIGHT], refuse)).not.toThrow();
  });
});
