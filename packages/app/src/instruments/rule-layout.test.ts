import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layoutRule } from "./rule-layout.ts";
import { multiples, roundTo, straightScale, tickIntervals } from "./scale.ts";

// the design's own rule: 336 px, 4.72 to 5.5 bar, band 4.963 to 5.251, read 5.00 ±0.05, last 5.047
const DESIGN = { min: 4.72, max: 5.5, low: 4.963, high: 5.251, doubt: 0.05, last: 5.047, now: 5.0 };
const TEXTS = { low: "4.97", high: "5.25", band: "band at 4 °C", last: "9 Nov" };

describe("a two-part rule", () => {
  it("stands as the design draws it", () => {
    const layout = layoutRule(DESIGN, TEXTS, 336, 20);
    // (4.963 − 4.72) / 0.78 × 336
    expect(layout.lowX_px).toBeCloseTo(104.68, 1);
    expect(layout.nutX_px).toBeCloseTo(120.62, 1);
    expect(layout.lowLabel).toEqual({ text: "4.97", x_px: (layout.lowX_px ?? 0) - 5, anchor: "end" });
    expect(layout.highLabel?.anchor).toBe("start");
    expect(layout.bandLabel?.text).toBe("band at 4 °C");
    expect(layout.lastLabel?.anchor).toBe("start");
    expect(layout.majors.filter((major) => major.numbered).map((major) => major.value)).toEqual([
      4.8, 4.9, 5.1, 5.2, 5.3, 5.4,
    ]);
  });

  it("shows the gauge's doubt reaching into the hatching when it is too close to call", () => {
    const { doubt_px, lowX_px } = layoutRule(DESIGN, TEXTS, 336, 20);
    expect(doubt_px?.[0]).toBeLessThan(lowX_px ?? 0);
  });

  it("drops the band's name where there is no room, and keeps the limits", () => {
    const layout = layoutRule({ ...DESIGN, low: 5.0, high: 5.05 }, TEXTS, 336, 20);
    expect(layout.bandLabel).toBeNull();
    expect(layout.lowLabel?.text).toBe("4.97");
  });

  it("says what the band waits for while there is none", () => {
    const layout = layoutRule({ min: 0, max: 10, now: null }, { band: "the band waits" }, 336, 20);
    expect(layout.bandLabel).toMatchObject({ text: "the band waits", x_px: 168 });
  });

  it("keeps everything on the rule, whatever the values", () => {
    const value = fc.double({ min: -50, max: 150, noNaN: true });
    fc.assert(
      fc.property(value, value, value, fc.integer({ min: 120, max: 900 }), (now, last, low, width) => {
        const layout = layoutRule(
          { min: 0, max: 100, low, now, last },
          { low: "low", last: "9 Nov" },
          width,
          20,
        );
        for (const x of [layout.nutX_px, layout.lastX_px, layout.lowX_px]) {
          expect(x === null || (x >= 0 && x <= width)).toBe(true);
        }
      }),
    );
  });
});

describe("a scale", () => {
  it("gives back, under a pixel, the value that stands there, to a step", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 100, max: 1000 }), (value, width) => {
        const scale = straightScale(0, 100, width);
        expect(scale.under(scale.at(value), 1)).toBe(value);
      }),
    );
  });

  it("is free of the dust of binary fractions", () => {
    expect(roundTo(5.1 + 0.05 + 0.05, 0.05)).toBe(5.2);
    expect(multiples(4.8, 5.1, 0.1)).toEqual([4.8, 4.9, 5, 5.1]);
  });

  it("numbers no closer than there is room for", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        fc.integer({ min: 150, max: 900 }),
        (span, width) => {
          const { major, minor } = tickIntervals(span, width, 43);
          expect((major / span) * width).toBeGreaterThanOrEqual(42.9);
          expect(major / minor).toBeGreaterThanOrEqual(2 - 1e-9);
        },
      ),
    );
  });
});
