import { quantities } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { type Case, CaseFile, isGiven, readCases } from "./case-file.ts";
import { faultsOf, requireFloor, runCase } from "./run-case.ts";

const filed = readCases(import.meta.dirname);
const FLOOR = 300;

describe("the published cases", () => {
  it(`are all read: at least ${FLOOR}`, () => {
    requireFloor(filed.length, FLOOR);
  });

  it.each(filed.map(({ file, case: one }) => ({ file, one, id: one.id })))("$file $id holds", ({ one }) => {
    expect(faultsOf(one)).toEqual([]);
  });

  it("leave no quantity of the registry without a case", () => {
    const covered = new Set<string>();
    const note = (quantity: string, inputs: Case["inputs"]): void => {
      covered.add(quantity);
      for (const input of Object.values(inputs)) if (!isGiven(input)) note(input.quantity, input.inputs);
    };
    for (const { case: one } of filed) note(one.quantity, one.inputs);
    expect([...quantities.keys()].filter((id) => !covered.has(id))).toEqual([]);
  });
});

describe("the runner", () => {
  const sound: Case = {
    id: "planted",
    quantity: "standard-pressure",
    inputs: { geopotentialAltitude_ft: 0 },
    expected: { pressure_hPa: 1013.25 },
    tolerance: { pressure_hPa: 0.005 },
    source: { title: "planted by this test" },
    status: "from memory",
  };

  it("finds nothing wrong with a sound case", () => {
    expect(faultsOf(sound)).toEqual([]);
  });

  it("catches a wrong figure", () => {
    const wrong = { ...sound, expected: { pressure_hPa: 1013.3 } };
    expect(faultsOf(wrong)).toEqual(["pressure_hPa 1013.25, expected 1013.3 ± 0.005"]);
  });

  it("catches a figure that was said to disagree and agrees", () => {
    const told = { ...sound, disagrees: { computed: { pressure_hPa: 1000 }, why: "planted by this test" } };
    expect(faultsOf(told)).toEqual([
      "pressure_hPa 1013.25, expected 1013.25 ± 0.005: said to disagree, and agrees",
    ]);
  });

  it("catches a disagreement that is not the one explained", () => {
    const told = {
      ...sound,
      expected: { pressure_hPa: 990 },
      disagrees: { computed: { pressure_hPa: 1000 }, why: "planted by this test" },
    };
    expect(faultsOf(told)).toEqual(["pressure_hPa 1013.25, expected 990 ± 0.005: explained as 1000"]);
  });

  it("accepts a disagreement that is the one explained", () => {
    const told = {
      ...sound,
      expected: { pressure_hPa: 990 },
      disagrees: { computed: { pressure_hPa: 1013.25 }, why: "planted by this test" },
    };
    expect(faultsOf(told)).toEqual([]);
  });

  it("hands a list on as a list", () => {
    const list = { ...sound, inputs: { geopotentialAltitude_ft: [0, 1000] } };
    expect(CaseFile.safeParse({ about: "planted by a test", cases: [list] }).success).toBe(true);
    expect(() => runCase(list)).toThrow("received a list of 2");
    expect(() => runCase({ ...list, quantity: "conversion" })).toThrow("a conversion has one number");
  });

  it("refuses a figure that the quantity does not give", () => {
    const other = { ...sound, expected: { density_kgPerM3: 1.225 }, tolerance: { density_kgPerM3: 0.001 } };
    expect(() => runCase(other)).toThrow(
      "planted, density_kgPerM3: standard-pressure gives pressure, a pressure",
    );
  });

  it("refuses a quantity that is not registered", () => {
    expect(() => runCase({ ...sound, quantity: "no-such" })).toThrow("no-such: expected one of the");
  });

  it("refuses to have read nothing", () => {
    expect(() => requireFloor(0, 1)).toThrow("0 cases were read; at least 1 are expected");
  });

  it.each([
    ["no source", { source: undefined }],
    ["a key that is not known", { extra: 1 }],
    ["an expected figure without a tolerance", { tolerance: {} }],
    ["no expected figure", { expected: {}, tolerance: {} }],
    ["an empty list", { inputs: { geopotentialAltitude_ft: [] } }],
    ["a name without a unit", { expected: { pressure: 1 }, tolerance: { pressure: 1 } }],
    ["a status that is none of the three", { status: "trust me" }],
  ])("refuses a case file with %s", (_what, change) => {
    expect(CaseFile.safeParse({ about: "planted by a test", cases: [{ ...sound, ...change }] }).success).toBe(
      false,
    );
    expect(CaseFile.safeParse({ about: "planted by a test", cases: [sound] }).success).toBe(true);
  });
});
