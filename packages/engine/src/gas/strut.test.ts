import { describe, expect, it } from "vitest";
import { strutExtensionChange } from "./strut.ts";

describe("a strut", () => {
  const strut = { gasVolume_m3: 3.3e-4, pistonArea_m2: 1.9e-3, temperature_K: 293.15 };

  it("stands where it stood at the same temperature, lower when colder, higher when warmer", () => {
    expect(strutExtensionChange.compute({ ...strut, newTemperature_K: 293.15 })).toBe(0);
    expect(strutExtensionChange.compute({ ...strut, newTemperature_K: 263.15 })).toBeLessThan(0);
    expect(strutExtensionChange.compute({ ...strut, newTemperature_K: 313.15 })).toBeGreaterThan(0);
  });
});
