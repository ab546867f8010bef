import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Ground, isInside, octagon, passesThrough, readyShape, withRoom } from "./convex.ts";
import type { Obstacle } from "./obstacles.ts";
import { walkingPaths } from "./walking-paths.ts";

const box = (x: number, y: number, wide: number, high: number): Obstacle => ({
  name: "box",
  kind: "thing",
  corners: withRoom(
    [
      [x, y],
      [x + wide, y],
      [x + wide, y + high],
      [x, y + high],
    ],
    0,
  ),
});

const metre = fc.integer({ min: 0, max: 16 }).map((half) => half / 2);
const size = fc.integer({ min: 1, max: 8 }).map((half) => half / 2);
const someBoxes = fc
  .array(fc.tuple(metre, metre, size, size), { maxLength: 4 })
  .map((list) => list.map((one) => box(...one)));
const place = fc.tuple(metre, metre);

const NEIGHBOURS = [-0.25, 0, 0.25].flatMap((dx) => [-0.25, 0, 0.25].map((dy) => [dx, dy] as const));
const crosses = (from: Ground, to: Ground, obstacles: readonly Obstacle[]): boolean =>
  obstacles.some(({ corners }) => passesThrough(readyShape(corners), from, to));

/**
 * The shortest way on a fine grid, to the eight neighbours, whose places lie outside or on the edge of every obstacle.
 * It is never shorter than the true way, and at most 1 / cos 22.5° = 1.0824 times as long, as far as it finds a way.
 */
function onGrid(from: Ground, to: Ground, obstacles: readonly Obstacle[]): number {
  const cells = 57; // −2 to 12 m, every 0.25 m
  const at = (i: number): Ground => [(i % cells) / 4 - 2, Math.floor(i / cells) / 4 - 2];
  const index = ([x, y]: Ground): number => (y + 2) * 4 * cells + (x + 2) * 4;
  const distance = new Map([[index(from), 0]]);
  const open = new Set([index(from)]);
  const done = new Set<number>();
  while (open.size > 0) {
    let node = -1;
    for (const one of open) if (node < 0 || (distance.get(one) ?? 0) < (distance.get(node) ?? 0)) node = one;
    if (node === index(to)) return distance.get(node) ?? 0;
    open.delete(node);
    done.add(node);
    const here = at(node);
    for (const [dx, dy] of NEIGHBOURS) {
      const next: Ground = [here[0] + dx, here[1] + dy];
      const isOff = next.some((metre) => metre < -2 || metre > 12);
      if (isOff || done.has(index(next)) || crosses(here, next, obstacles)) continue;
      const length = (distance.get(node) ?? 0) + Math.hypot(dx, dy);
      if (length >= (distance.get(index(next)) ?? Number.POSITIVE_INFINITY)) continue;
      distance.set(index(next), length);
      open.add(index(next));
    }
  }
  return Number.POSITIVE_INFINITY;
}

describe("the shortest way", () => {
  it("goes round a corner: 3-4-5 twice, and not through", () => {
    const paths = walkingPaths(
      [
        [0, 0],
        [6, 0],
      ],
      [box(2.9, -4, 0.2, 8)],
    );
    // by hand: to [2.9, ±4], along 0.2 m, and on to [6, 0]
    expect(paths.metres[1]).toBeCloseTo(2 * Math.hypot(2.9, 4) + 0.2, 9);
  });

  it("never passes through an obstacle, and is as long as its corners say", () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 4 }), someBoxes, (places, obstacles) => {
        const free = places.filter((one) => !obstacles.some(({ corners }) => isInside(corners, one)));
        const paths = walkingPaths(free, obstacles);
        for (const from of free.keys()) {
          for (const to of free.keys()) {
            const way = paths.way(from, to);
            const legs = way.slice(1).map((corner, i) => [way[i] ?? corner, corner] as const);
            for (const [a, b] of legs) {
              expect(obstacles.some(({ corners }) => passesThrough(readyShape(corners), a, b))).toBe(false);
            }
            const length = legs.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);
            const told = paths.metres[from * free.length + to] ?? 0;
            if (told < Number.POSITIVE_INFINITY) expect(length).toBeCloseTo(told, 6);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it("agrees with a search on a grid: never longer, and no shorter than a grid of eight directions allows", () => {
    fc.assert(
      fc.property(place, place, someBoxes, (from, to, obstacles) => {
        fc.pre(![from, to].some((one) => obstacles.some(({ corners }) => isInside(corners, one))));
        const [exact, grid] = [
          walkingPaths([from, to], obstacles).metres[1] ?? 0,
          onGrid(from, to, obstacles),
        ];
        if (grid === Number.POSITIVE_INFINITY) {
          expect(exact).toBe(grid);
          return;
        }
        expect(exact).toBeLessThanOrEqual(grid + 1e-6);
        // corners lie on the grid, so each straight piece is at most 8.24 % longer there
        expect(exact * 1.0824).toBeGreaterThanOrEqual(grid - 1e-3);
      }),
      { numRuns: 12 },
    );
  });

  it("leads out of an obstacle by the nearest edge, and nowhere from where nobody gets out", () => {
    const paths = walkingPaths(
      [
        [1, 3.9],
        [1, 6],
      ],
      [box(0, 0, 4, 4)],
    );
    expect(paths.metres[1]).toBeCloseTo(2.1, 4);
    expect(paths.metres[2]).toBeCloseTo(2.1, 4);
  });
});

describe("room for a body", () => {
  it("holds every place nearer than it, and none a tenth further", () => {
    const corners = withRoom(octagon([0, 0], 1), 0.25);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (turn_rad) => {
        expect(isInside(corners, [1.249 * Math.cos(turn_rad), 1.249 * Math.sin(turn_rad)])).toBe(true);
        expect(isInside(corners, [1.4 * Math.cos(turn_rad), 1.4 * Math.sin(turn_rad)])).toBe(false);
      }),
    );
  });
});
