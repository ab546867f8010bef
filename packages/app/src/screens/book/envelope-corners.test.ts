import { describe, expect, it } from "vitest";
import { axisLabels, cornersOf } from "./envelope-corners.ts";

describe("an envelope while its corners are typed", () => {
  it("is drawn from those that can be read, in any unit, and is not whole until all can", () => {
    const points = [
      { arm: "0.27 m", mass: "500 kg" },
      { arm: "10.63 in", mass: "1301 lb" },
      { arm: "0.36 m", mass: "" },
      { arm: "far", mass: "816 kg" },
    ];
    const { corners, isWhole } = cornersOf({ points });
    expect(isWhole).toBe(false);
    expect(corners).toHaveLength(2);
    expect(corners[0]).toMatchObject({ arm_m: 0.27, mass_kg: 500, armText: "0.27 m", massText: "500 kg" });
    // NIST SP 811: 1 in is 0.0254 m, 1 lb is 0.45359237 kg
    expect(corners[1]?.arm_m).toBeCloseTo(10.63 * 0.0254, 9);
    expect(corners[1]?.mass_kg).toBeCloseTo(1301 * 0.453_592_37, 9);
  });

  it("is whole from three corners on, and nothing where there is none", () => {
    const corner = { arm: "0.27 m", mass: "500 kg" };
    expect(cornersOf({ points: [corner, corner, corner] }).isWhole).toBe(true);
    expect(cornersOf({ points: [corner, corner] }).isWhole).toBe(false);
    expect(cornersOf(undefined)).toEqual({ corners: [], isWhole: false });
  });
});

describe("the figures of an axis", () => {
  const labels = (...at: readonly number[]) => at.map((at_px) => ({ at_px, text: String(at_px) }));

  it("are the two ends, and what between them has room", () => {
    expect(axisLabels(labels(100, 0, 8, 50, 95), 15).map(({ at_px }) => at_px)).toEqual([0, 50, 100]);
  });

  it("stand once where two corners have the same", () => {
    expect(axisLabels(labels(40, 40, 0), 15).map(({ at_px }) => at_px)).toEqual([0, 40]);
  });
});
