import fc from "fast-check";
import { expect, it } from "vitest";
import { balloons } from "./balloons.ts";

const SIZE = { width: 384, height: 268, radius: 10, legend: 70 };
const noted = fc
  .array(
    fc.record({
      x: fc.double({ min: 0, max: 384, noNaN: true }),
      y: fc.double({ min: 0, max: 268, noNaN: true }),
    }),
    {
      maxLength: 60,
    },
  )
  .map((places) => places.map((place, index) => ({ ...place, note: index + 1 })));

it("no balloon covers another, and none leaves the drawing", () => {
  fc.assert(
    fc.property(noted, (places) => {
      const drawn = balloons(places, SIZE);
      for (const [index, a] of drawn.entries()) {
        // the legend at the top left is covered by none
        expect(a.by).toBeGreaterThanOrEqual((a.bx < SIZE.width / 2 ? SIZE.legend : 0) + SIZE.radius);
        expect(a.by).toBeLessThanOrEqual(SIZE.height - 10);
        for (const b of drawn.slice(index + 1)) {
          expect(Math.hypot(a.bx - b.bx, a.by - b.by)).toBeGreaterThanOrEqual(20);
        }
      }
    }),
  );
});

it("the first notes get their balloons when there are more than fit", () => {
  const many = Array.from({ length: 40 }, (_, index) => ({ note: index + 1, x: 10, y: 100 }));
  const drawn = balloons(many, SIZE).map(({ note }) => note);
  expect(drawn.length).toBeGreaterThan(5);
  expect(Math.max(...drawn)).toBe(drawn.length);
});
