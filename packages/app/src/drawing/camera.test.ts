import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Camera,
  cssBetween,
  fromDatum,
  keptOver,
  type OnPlane,
  type Px,
  panned,
  pinched,
  toPlane,
  toScreen,
  turnedAbout,
  turnedTo,
  wholeCamera,
  wrapped_deg,
  zoomedAbout,
} from "./camera.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const camera: fc.Arbitrary<Camera> = fc.record({
  pxPerMetre: number(5, 400),
  originX_px: number(-2000, 2000),
  originY_px: number(-2000, 2000),
  turn_deg: number(-179, 180),
});
const px: fc.Arbitrary<Px> = fc.tuple(number(0, 1200), number(0, 900));
const place: fc.Arbitrary<OnPlane> = fc.tuple(number(-20, 20), number(-20, 20));
const BOUNDS = { least_pxPerMetre: 5, most_pxPerMetre: 400 };
const ANY = { least_pxPerMetre: 1e-9, most_pxPerMetre: 1e9 };

const near = (a: readonly number[], b: readonly number[], within = 1e-6) => {
  for (const [i, value] of a.entries()) expect(Math.abs(value - (b[i] ?? Number.NaN))).toBeLessThan(within);
};

describe("the view of a drawing", () => {
  it("finds the place that it drew under a pixel", () => {
    fc.assert(fc.property(camera, place, (view, at) => near(toPlane(view, toScreen(view, at)), at)));
  });

  it("turns clockwise: with the right wing up, what was to the right lies up", () => {
    const turned = { pxPerMetre: 10, originX_px: 0, originY_px: 0, turn_deg: -90 };
    near(fromDatum(turned, [1, 0]), [0, -10]);
    near(fromDatum(turned, [0, 1]), [10, 0]);
  });

  it("moves by as much as the finger", () => {
    fc.assert(
      fc.property(camera, place, px, (view, at, [dx, dy]) => {
        const [x, y] = toScreen(view, at);
        near(toScreen(panned(view, dx, dy), at), [x + dx, y + dy]);
      }),
    );
  });

  it("keeps what is under the pointer there while it grows, and stays within its bounds", () => {
    fc.assert(
      fc.property(camera, px, number(0.01, 100), (view, at, factor) => {
        const zoomed = zoomedAbout(view, factor, at, BOUNDS);
        near(toPlane(zoomed, at), toPlane(view, at));
        expect(zoomed.pxPerMetre).toBeGreaterThanOrEqual(BOUNDS.least_pxPerMetre);
        expect(zoomed.pxPerMetre).toBeLessThanOrEqual(BOUNDS.most_pxPerMetre);
      }),
    );
  });

  it("keeps what is under both fingers under them", () => {
    fc.assert(
      fc.property(camera, fc.tuple(px, px, px, px), (view, [a, b, c, d]) => {
        fc.pre(Math.hypot(a[0] - b[0], a[1] - b[1]) > 8 && Math.hypot(c[0] - d[0], c[1] - d[1]) > 8);
        const after = pinched(view, [a, b], [c, d], ANY, true);
        near(toScreen(after, toPlane(view, a)), c, 1e-4);
        near(toScreen(after, toPlane(view, b)), d, 1e-4);
      }),
    );
  });

  it("keeps the place between the fingers between them, at the bounds and without turning", () => {
    fc.assert(
      fc.property(camera, fc.tuple(px, px, px, px), fc.boolean(), (view, [a, b, c, d], turns) => {
        const after = pinched(view, [a, b], [c, d], BOUNDS, turns);
        const was = toPlane(view, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
        near(toScreen(after, was), [(c[0] + d[0]) / 2, (c[1] + d[1]) / 2], 1e-5);
        if (!turns) expect(wrapped_deg((after.turn_deg ?? 0) - (view.turn_deg ?? 0))).toBeCloseTo(0, 6);
      }),
    );
  });

  it("comes back when it is turned there and back, and has the turn that was asked", () => {
    fc.assert(
      fc.property(camera, px, number(-720, 720), place, (view, about, by, at) => {
        const back = turnedAbout(turnedAbout(view, by, about), -by, about);
        near(toScreen(back, at), toScreen(view, at), 1e-5);
        expect(wrapped_deg((turnedTo(view, by, about).turn_deg ?? 0) - by)).toBeCloseTo(0, 6);
        near(toPlane(turnedTo(view, by, about), about), toPlane(view, about));
      }),
    );
  });

  it("cannot be lost: the middle of the room is always over the drawing", () => {
    const box = { fore: -1, aft: 11, left: -7, right: 7 };
    fc.assert(
      fc.property(camera, px, (view, middle) => {
        const [across, down] = toPlane(keptOver(view, box, middle), middle);
        expect(across).toBeGreaterThan(box.left - 1e-6);
        expect(across).toBeLessThan(box.right + 1e-6);
        expect(down).toBeGreaterThan(box.fore - 1e-6);
        expect(down).toBeLessThan(box.aft + 1e-6);
      }),
    );
  });

  it("has every corner of the box inside the margins when it is whole, however it is turned", () => {
    const margin = { side_px: 20, top_px: 30, bottom_px: 10 };
    fc.assert(
      fc.property(number(-180, 180), number(200, 1200), number(200, 900), (turn, width_px, height_px) => {
        const whole = wholeCamera(
          { fore: -1, aft: 11, left: -7, right: 6 },
          { width_px, height_px },
          margin,
          turn,
        );
        for (const corner of [
          [-7, -1],
          [6, -1],
          [6, 11],
          [-7, 11],
        ] as const) {
          const [x, y] = toScreen(whole, corner);
          expect(x).toBeGreaterThan(margin.side_px - 1e-6);
          expect(x).toBeLessThan(width_px - margin.side_px + 1e-6);
          expect(y).toBeGreaterThan(margin.top_px - 1e-6);
          expect(y).toBeLessThan(height_px - margin.bottom_px + 1e-6);
        }
      }),
    );
  });

  it("is shown by one transform of what is drawn already", () => {
    fc.assert(
      fc.property(camera, camera, place, (drawn, seen, at) => {
        fc.pre(seen.pxPerMetre / drawn.pxPerMetre < 10);
        const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = cssBetween(drawn, seen)
          .slice(7, -1)
          .split(",")
          .map(Number);
        const [x, y] = toScreen(drawn, at);
        near([a * x + c * y + e, b * x + d * y + f], toScreen(seen, at), 0.2);
      }),
    );
  });
});
