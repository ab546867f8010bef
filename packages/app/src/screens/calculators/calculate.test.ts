import { quantities, quantityOf, UNITS } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { calculate, placeOf, type Typed } from "./calculate.ts";
import { startUnit } from "./unit-choice.ts";

const pressureAltitude = quantityOf("pressure-altitude");
const IN_TRADE = { elevation_m: "ft", altimeterSetting_Pa: "inHg" } as const;
const typed = (elevation: string, setting: string): Typed => ({
  texts: { elevation_m: [elevation], altimeterSetting_Pa: [setting] },
  units: IN_TRADE,
});

describe("a calculator", () => {
  it("works out what the handbook works out, in the units typed", () => {
    // FAA-H-8083-25C, Chapter 11, figure 11-3: 29.92 inHg leaves a field at its elevation
    const { outcome, faults } = calculate(pressureAltitude, typed("5000", "29.92"));
    expect(faults.size).toBe(0);
    if (outcome.kind !== "worked") throw new Error(outcome.kind);
    expect(Math.abs(outcome.worked.outputSI / 0.3048 - 5000)).toBeLessThan(5);
    expect(outcome.worked.inputs[0]?.given).toEqual({ value: 5000, unit: "ft" });
  });

  it("waits for what is not there yet, by what it means", () => {
    expect(calculate(pressureAltitude, typed("5000", " ")).outcome).toEqual({
      kind: "waiting",
      missing: ["altimeter setting (QNH)"],
    });
  });

  it("takes a unit typed behind the figure", () => {
    const { outcome } = calculate(pressureAltitude, typed("1524 m", "1013.25 hPa"));
    if (outcome.kind !== "worked") throw new Error(outcome.kind);
    expect(outcome.worked.outputSI).toBeCloseTo(1524, 6);
    expect(outcome.worked.inputs[0]?.given.unit).toBe("ft");
  });

  it.each([
    ["abc", "“abc” is not a number. Type one such as 14,000."],
    ["50 kg", "kg is no unit of length. Give it in ft."],
    ["50 parsec", "“parsec” is not a unit known here. Type a number such as 14,000."],
    ["1,500", "“1,500” can be read in two ways. Write 1500 or 1.500."],
    [
      "295000",
      "295,000\u00A0ft is outside −1,968.5 to 29,527.6\u00A0ft. Check the figure and its unit; nothing is worked out beyond.",
    ],
  ])("says of %s, at its field, what to do", (elevation, says) => {
    const { outcome, faults } = calculate(pressureAltitude, typed(elevation, "29.92"));
    expect(outcome.kind).toBe("faulty");
    expect(faults.get(placeOf("elevation_m"))).toBe(says);
  });

  it("a figure in the wrong unit is not taken: inches of mercury as hectopascals", () => {
    const { faults } = calculate(pressureAltitude, {
      ...typed("5000", "29.92"),
      units: { ...IN_TRADE, altimeterSetting_Pa: "hPa" },
    });
    expect(faults.get(placeOf("altimeterSetting_Pa"))).toMatch(
      /^29.92\u00A0hPa is outside 850 to 1,100\u00A0hPa/,
    );
  });
});

describe("a calculator with lists", () => {
  const centre = quantityOf("centre-of-gravity");
  const units = { mass_kg: "lb", arm_m: "in" } as const;

  it("takes the rows in which something stands", () => {
    const { outcome } = calculate(centre, {
      texts: { mass_kg: ["100", "", "300"], arm_m: ["10", "", "20"] },
      units,
    });
    if (outcome.kind !== "worked") throw new Error(outcome.kind);
    expect(outcome.worked.outputSI / 0.0254).toBeCloseTo(17.5, 9);
  });

  it("a row half filled is waited for, so that no value slides to another row", () => {
    const { outcome } = calculate(centre, {
      texts: { mass_kg: ["100", "300"], arm_m: ["", "20"] },
      units,
    });
    expect(outcome).toMatchObject({ kind: "waiting", missing: [expect.stringMatching(/row 1$/)] });
  });
});

it("what the inputs refuse together is told, and nothing is thrown: every quantity, at both ends of its ranges", () => {
  for (const quantity of quantities.values()) {
    for (const end of [0, 1] as const) {
      const texts = Object.fromEntries(
        quantity.inputs.map(({ name, range }) => [name, [String(range[end])]]),
      );
      const units = Object.fromEntries(quantity.inputs.map(({ name, unit }) => [name, unit]));
      const { outcome, faults } = calculate(quantity, { texts, units });
      if (outcome.kind === "faulty") expect([...faults.values()].join("")).not.toBe("");
      else expect(["worked", "refused"]).toContain(outcome.kind);
      if (outcome.kind === "worked") expect(Number.isFinite(outcome.worked.outputSI)).toBe(true);
    }
  }
});

it("a field begins with a unit of its own kind", () => {
  for (const { inputs, output } of quantities.values()) {
    for (const { name, unit } of [...inputs, output]) {
      expect(UNITS[startUnit(name, unit, {})].dimension).toBe(UNITS[unit].dimension);
    }
  }
  expect(startUnit("elevation_m", "m", { length: "mm" })).toBe("ft");
  expect(startUnit("mass_kg", "kg", { mass: "lb" })).toBe("lb");
  expect(startUnit("altimeterSetting_Pa", "Pa", { pressure: "psi" })).toBe("hPa");
});
