import type { BookField, Plain } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { unitsOfField, withUnit } from "./with-unit.ts";

const CRUISE: BookField = { is: "measure", key: "cruise", label: "Cruise", unit: "kg/h", or: "L/h" };
const LOW: BookField = { is: "gauge-measure", key: "low", label: "At least" };

describe("a figure typed without a unit", () => {
  it("keeps the unit that stands there", () => {
    expect(withUnit("521", "1 lb", ["kg"])).toBe("521 lb");
    expect(withUnit("0,5", "30 L/h", ["kg/h", "L/h"])).toBe("0.5 L/h");
    expect(withUnit("−4", "3 °C", ["°C"])).toBe("-4 °C");
  });

  it("gets the usual one where none stands there, or one that was refused", () => {
    expect(withUnit("521", "", ["kg"])).toBe("521 kg");
    expect(withUnit("2.88", "4 L", ["kg"])).toBe("2.88 kg");
    expect(withUnit("23", "32 m", ["kg/h"])).toBe("23 kg/h");
    expect(withUnit("23", "32 cubits", ["kg/h"])).toBe("23 kg/h");
  });

  it("stays bare where kilograms may be meant or litres, and where the comma may be read in two ways", () => {
    expect(withUnit("32", "", ["kg/h", "L/h"])).toBe("32");
    expect(withUnit("32", "32 m", ["kg/h", "L/h"])).toBe("32");
    expect(withUnit("1,900", "1 lb", ["kg"])).toBe("1,900");
    expect(withUnit("0,900", "1 lb", ["kg"])).toBe("0.900 lb");
  });

  it("stays bare where no unit is known, and what has a unit stays as it was typed", () => {
    expect(withUnit("5", "", [])).toBe("5");
    expect(withUnit(" 5 psi ", "", ["bar"])).toBe("5 psi");
  });
});

describe("the usual units of a field", () => {
  const plain: Plain = {
    gauges: [{ id: "tyre-gauge", unit: "psi" }],
    checks: [{ reading: { gauge: "tyre-gauge" } }, { reading: { gauge: "gone" } }],
  };

  it("are its own, or its gauge's", () => {
    expect(unitsOfField(CRUISE, plain, ["fuel", "burn", "cruise"])).toEqual(["kg/h", "L/h"]);
    expect(unitsOfField(LOW, plain, ["gauges", 0, "accuracy"])).toEqual(["psi"]);
    expect(unitsOfField(LOW, plain, ["checks", 0, "reading", "limit", "low"])).toEqual(["psi"]);
    expect(unitsOfField(LOW, plain, ["checks", 1, "reading", "limit", "low"])).toEqual([]);
  });
});
