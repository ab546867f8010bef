import fc from "fast-check";
import { expect, it } from "vitest";
import { type At, hatchOutside, inFrame } from "./hatch.ts";

const FRAME = { left: 0, right: 100, top: 0, bottom: 60 };

/** Even and odd crossings to the right. */
function isInside([x, y]: At, shape: readonly At[]): boolean {
  let inside = false;
  shape.forEach(([bx, by], index) => {
    const [ax, ay] = shape.at(index - 1) ?? [bx, by];
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  });
  return inside;
}

const corner = fc.tuple(
  fc.double({ min: -50, max: 150, noNaN: true }),
  fc.double({ min: -50, max: 110, noNaN: true }),
);
const triangle = fc.tuple(corner, corner, corner);

it("no stroke of the hatching goes into the shape, and none leaves the frame", () => {
  fc.assert(
    fc.property(triangle, (shape) => {
      for (const [[ax, ay], [bx, by]] of hatchOutside(shape, FRAME, 7)) {
        for (const share of [0.1, 0.5, 0.9])
          expect(isInside([ax + (bx - ax) * share, ay + (by - ay) * share], shape)).toBe(false);
        for (const [x, y] of [
          [ax, ay],
          [bx, by],
        ] as const) {
          expect(x).toBeGreaterThanOrEqual(-1e-6);
          expect(x).toBeLessThanOrEqual(100 + 1e-6);
          expect(y).toBeGreaterThanOrEqual(-1e-6);
          expect(y).toBeLessThanOrEqual(60 + 1e-6);
        }
      }
    }),
  );
});

it("what lies outside a shape that reaches beyond the frame is hatched on both sides of it", () => {
  const band: readonly At[] = [
    [40, -20],
    [60, -20],
    [60, 90],
    [40, 90],
  ];
  const strokes = hatchOutside(band, FRAME, 10);
  expect(strokes.some(([, [x]]) => x <= 40 + 1e-9)).toBe(true);
  expect(strokes.some(([[x]]) => x >= 60 - 1e-9)).toBe(true);
});

it("of a shape, what is in the frame stays: corners inside are kept, none is outside", () => {
  fc.assert(
    fc.property(triangle, (shape) => {
      const clipped = inFrame(shape, FRAME);
      for (const [x, y] of clipped) {
        expect(x).toBeGreaterThanOrEqual(-1e-6);
        expect(x).toBeLessThanOrEqual(100 + 1e-6);
        expect(y).toBeGreaterThanOrEqual(-1e-6);
        expect(y).toBeLessThanOrEqual(60 + 1e-6);
      }
      for (const [x, y] of shape) {
        if (x < 0 || x > 100 || y < 0 || y > 60) continue;
        expect(clipped.some(([cx, cy]) => Math.hypot(cx - x, cy - y) < 1e-6)).toBe(true);
      }
    }),
  );
});
