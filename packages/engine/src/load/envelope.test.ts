import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toSI } from "../units/convert.ts";
import { type Envelope, edgesOf, pointInEnvelope, sideOf } from "./envelope.ts";
import { envelopeFaults } from "./envelope-faults.ts";

const inLbAndIn = (points: readonly (readonly [lb: number, inches: number])[]): Envelope => ({
  points: points.map(([lb, inches]) => ({ mass_kg: toSI(lb, "lb"), arm_m: toSI(inches, "in") })),
});

/** FAA-H-8083-25C, figure 10-9: limits of 2,950 lb, forward 77.0 to 82.1 in, aft 85.7 to 84.7 in. */
const FIGURE_10_9 = inLbAndIn([
  [0, 77],
  [2475, 77],
  [2950, 82.1],
  [2950, 84.7],
  [2525, 85.7],
  [0, 85.7],
]);

/** A notch in its aft side, so that a line along one mass or one arm goes in and out twice. */
const NOTCHED: Envelope = {
  points: [
    { arm_m: 2, mass_kg: 1000 },
    { arm_m: 3, mass_kg: 1000 },
    { arm_m: 3, mass_kg: 1400 },
    { arm_m: 2.5, mass_kg: 1500 },
    { arm_m: 3, mass_kg: 1600 },
    { arm_m: 3, mass_kg: 2000 },
    { arm_m: 2, mass_kg: 2000 },
  ],
};

const at = (lb: number, inches: number) =>
  pointInEnvelope(FIGURE_10_9, { mass_kg: toSI(lb, "lb"), arm_m: toSI(inches, "in") });

describe("a place in an envelope", () => {
  it("has margins to the four edges", () => {
    const { inside, margins } = pointInEnvelope(NOTCHED, { arm_m: 2.25, mass_kg: 1200 });
    expect(inside).toBe(true);
    expect(margins).toEqual({ forward_m: 0.25, aft_m: 0.75, lower_kg: 200, upper_kg: 800 });
  });

  it("is judged by the part of the envelope that it is in", () => {
    expect(pointInEnvelope(NOTCHED, { arm_m: 2.75, mass_kg: 1250 }).margins).toEqual({
      forward_m: 0.75,
      aft_m: 0.25,
      lower_kg: 250,
      upper_kg: 200,
    });
    const inNotch = pointInEnvelope(NOTCHED, { arm_m: 2.75, mass_kg: 1500 });
    expect(inNotch.inside).toBe(false);
    expect(inNotch.margins).toEqual({ forward_m: 0.75, aft_m: -0.25, lower_kg: 500, upper_kg: -50 });
  });

  it("has no forward and aft edge above the greatest mass: there are no limits there", () => {
    const { inside, margins } = at(2951, 83.5);
    expect(inside).toBe(false);
    expect([margins.forward_m, margins.aft_m]).toEqual([undefined, undefined]);
    expect(margins.upper_kg).toBeCloseTo(toSI(-1, "lb"), 9);
  });

  it("has no upper and lower edge ahead of all of it", () => {
    expect(at(2000, 70).margins).toMatchObject({ upper_kg: undefined, lower_kg: undefined });
    expect(at(2000, 70).margins.forward_m).toBeCloseTo(toSI(-7, "in"), 9);
  });
});

/** A simple polygon, with notches: corners at rising bearings from a middle, on whole thousandths. */
const anyEnvelope: fc.Arbitrary<Envelope> = fc
  .array(fc.tuple(fc.integer({ min: 300, max: 1000 }), fc.integer({ min: 1, max: 100 })), {
    minLength: 4,
    maxLength: 9,
  })
  .map((spokes) => {
    const turn = spokes.reduce((sum, [, step]) => sum + step, 0);
    let bearing = 0;
    const points = spokes.map(([reach, step]) => {
      bearing += (step / turn) * 2 * Math.PI;
      return {
        arm_m: Math.round(3000 + reach * Math.cos(bearing)) / 1000,
        mass_kg: Math.round(2_000_000 + 1000 * reach * Math.sin(bearing)) / 1000,
      };
    });
    return { points };
  })
  .filter((envelope) => envelopeFaults(envelope).length === 0);

describe("the side of a line on which a place lies", () => {
  it("is right to the last bit, by whole-number arithmetic, also next to the line", () => {
    const unit = 2 ** -52; // near one, doubles are whole multiples of it
    const near = fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 }));
    fc.assert(
      fc.property(near, near, near, ([ax, ay], [bx, by], [px, py]) => {
        // A line from about (1, 1) to about (1.5, 1.5), and a place at about (1.25, 1.25)
        const at = (base: number, x: number, y: number) => ({
          arm_m: base + x * unit,
          mass_kg: base + y * unit,
        });
        const whole = (base: number, step: number) => BigInt(base * 4) * 2n ** 50n + BigInt(step);
        const [A, B, P] = [
          [whole(1, ax), whole(1, ay)],
          [whole(1.5, bx), whole(1.5, by)],
          [whole(1.25, px), whole(1.25, py)],
        ] as const;
        const exact = (B[0] - A[0]) * (P[1] - A[1]) - (B[1] - A[1]) * (P[0] - A[0]);
        const sign = exact > 0n ? 1 : exact < 0n ? -1 : 0;
        expect(Math.sign(sideOf(at(1, ax, ay), at(1.5, bx, by), at(1.25, px, py)))).toBe(sign);
      }),
      { numRuns: 500 },
    );
  });
});

describe("on the line", () => {
  it("counts as inside: every corner, and every edge at any share of it", () => {
    fc.assert(
      fc.property(
        anyEnvelope,
        fc.integer({ min: 0, max: 8 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (envelope, n, share) => {
          const edges = edgesOf(envelope);
          const [a, b] = edges[n % edges.length] ?? expect.unreachable();
          for (const point of [a, b]) expect(pointInEnvelope(envelope, point).inside).toBe(true);
          const place = {
            arm_m: a.arm_m + share * (b.arm_m - a.arm_m),
            mass_kg: a.mass_kg + share * (b.mass_kg - a.mass_kg),
          };
          const { inside, margins } = pointInEnvelope(envelope, place);
          expect(inside).toBe(true);
          expect(
            Math.min(
              margins.forward_m ?? 0,
              margins.aft_m ?? 0,
              margins.upper_kg ?? 0,
              margins.lower_kg ?? 0,
            ),
          ).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  it("has a margin of exactly zero; a hundredth of a micrometre further it is gone", () => {
    const edge_m = toSI(77, "in");
    const mass_kg = toSI(2000, "lb");
    const place = (arm_m: number) => pointInEnvelope(FIGURE_10_9, { arm_m, mass_kg });
    expect(place(edge_m)).toMatchObject({ inside: true, margins: { forward_m: 0 } });
    expect(place(edge_m - 1e-8).inside).toBe(false);
    expect(place(edge_m - 1e-8).margins.forward_m).toBeCloseTo(-1e-8, 11);
    expect(place(edge_m + 1e-8).margins.forward_m).toBeCloseTo(1e-8, 11);
  });

  it("holds when the place was reached by conversion and division", () => {
    // 2,475 lb at 77 in, through the moment and back: the same corner, but for the last bits
    const mass_kg = toSI(2475, "lb");
    const arm_m = toSI(2475 * 77, "lbin") / mass_kg;
    expect(pointInEnvelope(FIGURE_10_9, { arm_m, mass_kg }).inside).toBe(true);
  });

  it("changes the margin's sign exactly where inside changes", () => {
    fc.assert(
      fc.property(
        anyEnvelope,
        fc.double({ min: 2, max: 4, noNaN: true }),
        fc.double({ min: 1000, max: 3000, noNaN: true }),
        (envelope, arm_m, mass_kg) => {
          const { inside, margins } = pointInEnvelope(envelope, { arm_m, mass_kg });
          for (const [one, other] of [
            [margins.forward_m, margins.aft_m],
            [margins.lower_kg, margins.upper_kg],
          ] as const) {
            if (one === undefined || other === undefined) expect(inside).toBe(false);
            else expect(one >= 0 && other >= 0).toBe(inside);
          }
        },
      ),
    );
  });

  it("does not depend on which way round the corners are given, nor where they begin", () => {
    fc.assert(
      fc.property(
        anyEnvelope,
        fc.double({ min: 2, max: 4, noNaN: true }),
        fc.double({ min: 1000, max: 3000, noNaN: true }),
        fc.integer({ min: 0, max: 8 }),
        (envelope, arm_m, mass_kg, start) => {
          const place = { arm_m, mass_kg };
          const { points } = envelope;
          const turned = {
            points: [...points.slice(start % points.length), ...points.slice(0, start % points.length)],
          };
          const backwards = { points: points.toReversed() };
          expect(pointInEnvelope(turned, place)).toEqual(pointInEnvelope(envelope, place));
          expect(pointInEnvelope(backwards, place).inside).toBe(pointInEnvelope(envelope, place).inside);
        },
      ),
    );
  });

  it("is where bisection along the arm finds it", () => {
    fc.assert(
      fc.property(anyEnvelope, fc.integer({ min: 0, max: 8 }), (envelope, n) => {
        const { points } = envelope;
        const [a, b, c] = [0, 2, 4].map((step) => points[(n + step) % points.length] ?? expect.unreachable());
        const place = {
          arm_m: ((a?.arm_m ?? 0) + (b?.arm_m ?? 0) + (c?.arm_m ?? 0)) / 3,
          mass_kg: ((a?.mass_kg ?? 0) + (b?.mass_kg ?? 0) + (c?.mass_kg ?? 0)) / 3,
        };
        const { inside, margins } = pointInEnvelope(envelope, place);
        if (!inside || margins.aft_m === undefined) return;
        const further = (by: number) =>
          pointInEnvelope(envelope, { ...place, arm_m: place.arm_m + by }).inside;
        expect(further(margins.aft_m)).toBe(true);
        expect(further(margins.aft_m + 1e-9)).toBe(false);
      }),
    );
  });
});

describe("the faults of an envelope", () => {
  const square = [
    { arm_m: 2, mass_kg: 1000 },
    { arm_m: 3, mass_kg: 1000 },
    { arm_m: 3, mass_kg: 2000 },
    { arm_m: 2, mass_kg: 2000 },
  ] as const;

  it("are none in a polygon, either way round, with a corner in line", () => {
    expect(envelopeFaults({ points: square })).toEqual([]);
    expect(envelopeFaults({ points: square.toReversed() })).toEqual([]);
    expect(envelopeFaults({ points: [...square, { arm_m: 2, mass_kg: 1500 }] })).toEqual([]);
    expect(envelopeFaults(FIGURE_10_9)).toEqual([]);
    expect(envelopeFaults(NOTCHED)).toEqual([]);
  });

  const [one, two, three, four] = square;
  it.each([
    ["too few points", [one, two], "too-few-points", "expected at least 3 points, received 2"],
    [
      "a number that is none",
      [one, two, { arm_m: Number.NaN, mass_kg: 1 }],
      "not-a-number",
      "point 3: expected finite numbers",
    ],
    [
      "a mass below zero",
      [one, two, { arm_m: 3, mass_kg: -1 }],
      "mass-not-positive",
      "point 3: expected a mass of zero or more, received -1 kg",
    ],
    [
      "a point twice",
      [one, two, two, three],
      "point-twice",
      "points 2 and 3 are the same, (3 m, 1000 kg); leave one out",
    ],
    ["the last point as the first", [...square, one], "point-twice", "points 5 and 1 are the same"],
    [
      "edges that cross",
      [one, three, two, four],
      "crosses-itself",
      "the edges 1–2 and 3–4 cross or touch; give the points in order",
    ],
    [
      "a corner on another edge",
      [one, two, three, { arm_m: 2.5, mass_kg: 1000 }, four],
      "crosses-itself",
      "cross or touch",
    ],
    [
      "an edge that runs back",
      [one, two, three, { arm_m: 3, mass_kg: 1500 }, four],
      "folds-back",
      "at point 3 the edge runs back over the one before",
    ],
    ["all corners in one line", [one, two, { arm_m: 4, mass_kg: 1000 }], "folds-back", "runs back"],
  ])("%s", (_what, points, code, says) => {
    const faults = envelopeFaults({ points });
    expect(faults.map((fault) => fault.code)).toContain(code);
    expect(faults.map((fault) => fault.says).join("\n")).toContain(says);
  });
});
