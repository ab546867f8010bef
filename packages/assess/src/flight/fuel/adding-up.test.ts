import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addingUp_kg } from "./adding-up.ts";

describe("parts that are shown in tenths", () => {
  it("add up to their sum rounded up, and none is a tenth off", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 400, noNaN: true }), { maxLength: 7 }), (parts_kg) => {
        const shown = addingUp_kg(parts_kg);
        const exact_kg = parts_kg.reduce((sum, one) => sum + one, 0);
        const shown_kg = shown.reduce((sum, one) => sum + one, 0);
        expect(shown_kg).toBeGreaterThan(exact_kg - 1e-8);
        expect(shown_kg).toBeLessThan(exact_kg + 0.1);
        shown.forEach((one, index) => {
          expect(Math.abs(one - (parts_kg[index] ?? 0))).toBeLessThan(0.1 + 1e-5);
        });
      }),
    );
  });

  it("are shown as they are where tenths are all there is", () => {
    expect(addingUp_kg([124, 77.5, 10, 6.2, 64.6])).toEqual([124, 77.5, 10, 6.2, 64.6]);
  });
});
