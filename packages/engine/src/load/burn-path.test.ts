import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSI, toSI } from "../units/convert.ts";
import { type BurnPlan, burnPath } from "./burn-path.ts";
import { type Envelope, pointInEnvelope } from "./envelope.ts";
import { envelopeAlongBurn, isInsideAlongBurn } from "./envelope-along-burn.ts";
import { loadedState } from "./loaded-state.ts";
import { type TankFuel, tankArm_m } from "./tank.ts";

const GASOLINE = toSI(6, "lbPerUSgal");
const lb = (value: number) => toSI(value, "lb");
const inch = (value: number) => toSI(value, "in");

const tank = (change: Partial<TankFuel> = {}): TankFuel => ({
  id: "main",
  side: "centre",
  arms: [
    { volume_m3: 0, arm_m: inch(75) },
    { volume_m3: toSI(100, "USgal"), arm_m: inch(75) },
  ],
  lateralArm_m: 0,
  unusable_m3: 0,
  volume_m3: toSI(75, "USgal"),
  ...change,
});

/** FAA-H-8083-25C, figure 10-5: 2,870 lb and 247,680 lb-in without fuel, 450 lb of fuel at 75 in. */
const FIGURE_10_5: BurnPlan = {
  withoutFuel: [
    { mass_kg: lb(2100), arm_m: inch(78.3) },
    { mass_kg: lb(340), arm_m: inch(85) },
    { mass_kg: lb(350), arm_m: inch(121) },
    { mass_kg: lb(80), arm_m: inch(150) },
  ],
  tanks: [tank()],
  density_kgPerM3: GASOLINE,
  order: [["main"]],
  burns: [
    { id: "taxi", mass_kg: lb(6) },
    { id: "trip", mass_kg: lb(300) },
  ],
};

const BETWEEN_78_AND_86: Envelope = {
  points: [
    { arm_m: inch(78), mass_kg: 0 },
    { arm_m: inch(78), mass_kg: lb(3400) },
    { arm_m: inch(86), mass_kg: lb(3400) },
    { arm_m: inch(86), mass_kg: 0 },
  ],
};

describe("the burn of the handbook's computational example", () => {
  const path = burnPath(FIGURE_10_5);

  it("begins at the printed 3,320 lb and 84.8 in, and ends dry at 86.3 in", () => {
    const [ramp] = path.states;
    const dry = path.states.at(-1);
    expect(fromSI(ramp?.mass_kg ?? 0, "lb")).toBeCloseTo(3320, 9);
    expect(fromSI(ramp?.moment_kgm ?? 0, "lbin")).toBeCloseTo(281_430, 6);
    expect(fromSI(ramp?.arm_m ?? 0, "in")).toBeCloseTo(84.8, 1);
    expect(fromSI(dry?.arm_m ?? 0, "in")).toBeCloseTo(86.3, 2);
    expect(dry?.fuel_kg).toBe(0);
  });

  it("marks the end of each part of the flight", () => {
    expect(fromSI(path.marks["taxi"]?.mass_kg ?? 0, "lb")).toBeCloseTo(3314, 9);
    expect(fromSI(path.marks["trip"]?.fuel_kg ?? 0, "lb")).toBeCloseTo(144, 9);
    expect(path.short_kg).toBe(0);
  });

  it("goes outside where 371.8 lb have burnt and 13 gal are left, which the handbook does not say", () => {
    // 281,430 − 75 f = 86 (3,320 − f) at f = 371.8 lb
    const { inside, outside, aft } = envelopeAlongBurn(path, BETWEEN_78_AND_86);
    expect(inside).toBe(false);
    expect(outside).toHaveLength(1);
    expect(fromSI(outside[0]?.from.burnt_kg ?? 0, "lb")).toBeCloseTo(371.8, 1);
    expect(fromSI(outside[0]?.to.burnt_kg ?? 0, "lb")).toBeCloseTo(450, 9);
    expect(fromSI(aft?.margin_m ?? 0, "in")).toBeCloseTo(-0.3, 2);
    expect(fromSI((lb(450) - (outside[0]?.from.burnt_kg ?? 0)) / GASOLINE, "USgal")).toBeCloseTo(13, 1);
  });

  it("says how much fuel is short", () => {
    const { short_kg, marks } = burnPath({ ...FIGURE_10_5, burns: [{ id: "trip", mass_kg: lb(500) }] });
    expect(fromSI(short_kg, "lb")).toBeCloseTo(50, 9);
    expect(marks["trip"]).toBeUndefined();
  });
});

/** Evenly spread, unlike doubles, of which most are next to nothing. */
const thousandths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);

const anyTank = (id: string, side: TankFuel["side"]): fc.Arbitrary<TankFuel> =>
  fc
    .tuple(
      fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 4 }),
      fc.array(fc.integer({ min: 3000, max: 4500 }), { minLength: 5, maxLength: 5 }),
      thousandths(0, 1),
      thousandths(0, 0.1),
    )
    .map(([steps, arms, filled, unusable]) => {
      let volume = 0;
      const rows = [{ volume_m3: 0, arm_m: (arms[0] ?? 0) / 1000 }];
      steps.forEach((step, index) => {
        volume += step;
        rows.push({ volume_m3: volume / 1000, arm_m: (arms[index + 1] ?? 0) / 1000 });
      });
      return {
        id,
        side,
        arms: rows,
        lateralArm_m: side === "left" ? -2 : side === "right" ? 2 : 0,
        unusable_m3: (unusable * volume) / 1000,
        volume_m3: (filled * volume) / 1000,
      };
    });

const anyPlan: fc.Arbitrary<BurnPlan> = fc
  .record({
    left: anyTank("left", "left"),
    right: anyTank("right", "right"),
    aux: anyTank("aux", "centre"),
    order: fc.constantFrom(
      [["left", "right"], ["aux"]],
      [["aux"], ["left"], ["right"]],
      [["left", "right", "aux"]],
    ),
    trip: thousandths(0, 400),
    payload: thousandths(0, 500),
    payloadArm: thousandths(2, 6),
  })
  .map(({ left, right, aux, order, trip, payload, payloadArm }) => ({
    withoutFuel: [
      { mass_kg: 1200, arm_m: 3.6 },
      { mass_kg: payload, arm_m: payloadArm },
    ],
    tanks: [left, right, aux],
    density_kgPerM3: 720,
    order,
    burns: [
      { id: "taxi", mass_kg: 5 },
      { id: "trip", mass_kg: trip },
    ],
  }));

/** The state after a burn, worked out apart from the path: tank by tank in the order, in tiny sips. */
function stepped(plan: BurnPlan, sips: number): { burnt_kg: number; mass_kg: number; arm_m: number }[] {
  const volumes = new Map(plan.tanks.map((one) => [one.id, one.volume_m3]));
  const usable = (one: TankFuel) => Math.max(0, (volumes.get(one.id) ?? 0) - one.unusable_m3);
  const total_kg = plan.tanks.reduce((sum, one) => sum + usable(one), 0) * plan.density_kgPerM3;
  const sip_kg = total_kg / sips;
  const state = (burnt_kg: number) => {
    const fuel = plan.tanks.flatMap((one) => {
      const volume = volumes.get(one.id) ?? 0;
      const kept = Math.min(one.volume_m3, one.unusable_m3);
      return [
        { mass: plan.density_kgPerM3 * volume, arm: tankArm_m(one, volume) },
        { mass: -plan.density_kgPerM3 * kept, arm: tankArm_m(one, kept) },
      ];
    });
    const items = [...plan.withoutFuel.map((item) => ({ mass: item.mass_kg, arm: item.arm_m })), ...fuel];
    const mass_kg = items.reduce((sum, item) => sum + item.mass, 0);
    return { burnt_kg, mass_kg, arm_m: items.reduce((sum, item) => sum + item.mass * item.arm, 0) / mass_kg };
  };
  const states = [state(0)];
  for (let sip = 1; sip <= sips; sip += 1) {
    let left_m3 = sip_kg / plan.density_kgPerM3;
    for (const ids of plan.order) {
      for (;;) {
        const wet = plan.tanks.filter((one) => ids.includes(one.id) && usable(one) > 1e-15);
        if (wet.length === 0 || left_m3 <= 1e-15) break;
        const each = Math.min(left_m3 / wet.length, ...wet.map(usable));
        for (const one of wet) volumes.set(one.id, (volumes.get(one.id) ?? 0) - each);
        left_m3 -= each * wet.length;
      }
    }
    states.push(state(sip * sip_kg));
  }
  return states;
}

const LEANING: Envelope = {
  points: [
    { arm_m: 3.3, mass_kg: 1000 },
    { arm_m: 3.45, mass_kg: 1600 },
    { arm_m: 3.6, mass_kg: 2100 },
    { arm_m: 3.9, mass_kg: 2100 },
    { arm_m: 4.1, mass_kg: 1500 },
    { arm_m: 3.8, mass_kg: 1350 },
    { arm_m: 4.0, mass_kg: 1000 },
  ],
};

describe("any burn", () => {
  it("passes through every state that stepping through it finds", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const path = burnPath(plan);
        for (const state of stepped(plan, 60)) {
          const piece = path.pieces.find(({ to }) => state.burnt_kg <= to.burnt_kg) ?? path.pieces.at(-1);
          if (piece === undefined) continue;
          const s = Math.min(state.burnt_kg, piece.to.burnt_kg) - piece.from.burnt_kg;
          const moment = piece.from.moment_kgm + piece.linear_m * s + piece.quadraticMPerKg * s * s;
          expect(moment / (piece.from.mass_kg - s)).toBeCloseTo(state.arm_m, 8);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("has pieces that end where the next begins, at the end with the moment of the tanks themselves", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { pieces, states } = burnPath(plan);
        expect(pieces.length).toBe(states.length - 1);
        for (const { from, to, linear_m, quadraticMPerKg } of pieces) {
          const s = to.burnt_kg - from.burnt_kg;
          expect(from.moment_kgm + linear_m * s + quadraticMPerKg * s * s).toBeCloseTo(to.moment_kgm, 7);
          expect(from.mass_kg - s).toBeCloseTo(to.mass_kg, 8);
        }
        expect(states.at(-1)?.fuel_kg).toBe(0);
      }),
    );
  });

  it("is nowhere worse than its worst point, and there as bad as it says", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const path = burnPath(plan);
        const found = envelopeAlongBurn(path, LEANING);
        expect(isInsideAlongBurn(path, LEANING)).toBe(found.inside);
        for (const state of stepped(plan, 200)) {
          const { inside, margins } = pointInEnvelope(LEANING, state);
          expect(margins.forward_m ?? 1e9).toBeGreaterThanOrEqual((found.forward?.margin_m ?? 1e9) - 1e-9);
          expect(margins.aft_m ?? 1e9).toBeGreaterThanOrEqual((found.aft?.margin_m ?? 1e9) - 1e-9);
          expect(state.arm_m).toBeGreaterThanOrEqual(found.foremost.arm_m - 1e-9);
          expect(state.arm_m).toBeLessThanOrEqual(found.aftmost.arm_m + 1e-9);
          if (found.inside)
            expect(inside || Math.min(margins.forward_m ?? 0, margins.aft_m ?? 0) > -1e-9).toBe(true);
          const within = found.outside.some(
            ({ from, to }) => state.burnt_kg > from.burnt_kg + 1e-6 && state.burnt_kg < to.burnt_kg - 1e-6,
          );
          if (within) expect(inside).toBe(false);
        }
        for (const side of ["forward", "aft"] as const) {
          const worst = found[side];
          if (worst === undefined) continue;
          expect(pointInEnvelope(LEANING, worst.at).margins[`${side}_m`]).toBeCloseTo(worst.margin_m, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("goes out and comes in again on an edge, and is outside nowhere else", () => {
    let crossings = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const path = burnPath(plan);
        const { outside } = envelopeAlongBurn(path, LEANING);
        const end_kg = path.states.at(-1)?.burnt_kg ?? 0;
        for (const moment of outside.flatMap(({ from, to }) => [from, to])) {
          if (moment.burnt_kg === 0 || moment.burnt_kg === end_kg) continue;
          crossings += 1;
          const { forward_m, aft_m, lower_kg, upper_kg } = pointInEnvelope(LEANING, moment).margins;
          const nearest = Math.min(
            ...[forward_m, aft_m, lower_kg, upper_kg].map((margin) => Math.abs(margin ?? 1)),
          );
          expect(nearest).toBeLessThan(1e-9);
        }
        for (const state of stepped(plan, 100)) {
          const { inside, margins } = pointInEnvelope(LEANING, state);
          if (inside) continue;
          const clearlyOut = Math.min(margins.forward_m ?? -1, margins.aft_m ?? -1) < -1e-9;
          const told = outside.some(
            ({ from, to }) => state.burnt_kg >= from.burnt_kg - 1e-6 && state.burnt_kg <= to.burnt_kg + 1e-6,
          );
          if (clearlyOut) expect(told).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
    expect(crossings, "burns that cross an edge").toBeGreaterThan(5);
  });

  it("finds a worst point that lies between the states: the arm turns while a tank whose arm moves empties", () => {
    // Arm of the contents 4 m full and 3 m empty: at first the fuel drawn is far aft, at the end far ahead.
    const path = burnPath({
      withoutFuel: [{ mass_kg: 1000, arm_m: 3.5 }],
      tanks: [
        tank({
          arms: [
            { volume_m3: 0, arm_m: 3 },
            { volume_m3: 1, arm_m: 4 },
          ],
          volume_m3: 1,
        }),
      ],
      density_kgPerM3: 700,
      order: [["main"]],
      burns: [],
    });
    const { foremost } = envelopeAlongBurn(path, LEANING);
    // By hand: v with (3500 + 700 v (3 + v)) / (1000 + 700 v) least: 7 v² + 20 v − 5 = 0 → v = 0.23 137 m³
    const v = (-20 + Math.sqrt(20 ** 2 + 4 * 7 * 5)) / 14;
    expect(foremost.burnt_kg).toBeCloseTo(700 * (1 - v), 8);
    expect(foremost.arm_m).toBeCloseTo((3500 + 700 * v * (3 + v)) / (1000 + 700 * v), 12);
  });
});

describe("tanks", () => {
  it("that are drawn together lose the same volume until one is dry; the imbalance is of everything in them", () => {
    const side = (id: "left" | "right", gallons: number): TankFuel =>
      tank({
        id,
        side: id,
        lateralArm_m: id === "left" ? inch(-75) : inch(75),
        volume_m3: toSI(gallons, "USgal"),
      });
    const { states } = burnPath({
      ...FIGURE_10_5,
      tanks: [side("left", 30), side("right", 18)],
      order: [["left", "right"]],
      burns: [],
    });
    // 12 gal of 6 lb and (18 − 30) × 6 × 75 lb-in: left heavy
    expect(states.map((state) => Math.round(fromSI(state.imbalance_kg, "lb") * 1e6) / 1e6)).toEqual([
      -72, -72, 0,
    ]);
    expect(fromSI(states[0]?.lateralMoment_kgm ?? 0, "lbin")).toBeCloseTo(-5400, 9);
    expect(fromSI(states[1]?.lateralMoment_kgm ?? 0, "lbin")).toBeCloseTo(-5400, 9);
    expect(states[2]?.lateralMoment_kgm).toBeCloseTo(0, 9);
  });

  it("keep what cannot be used, which is part of the empty mass", () => {
    const { states } = burnPath({ ...FIGURE_10_5, tanks: [tank({ unusable_m3: toSI(3, "USgal") })] });
    expect(fromSI(states[0]?.fuel_kg ?? 0, "lb")).toBeCloseTo(432, 9);
    expect(states.at(-1)?.volumes_m3["main"]).toBe(toSI(3, "USgal"));
    expect(states.at(-1)?.mass_kg).toBe(loadedState(FIGURE_10_5.withoutFuel).mass_kg);
    expect(states.at(-1)?.arm_m).toBeCloseTo(loadedState(FIGURE_10_5.withoutFuel).arm_m, 12);
  });

  const arms = [
    { volume_m3: 0, arm_m: 3 },
    { volume_m3: 0.2, arm_m: 3.1 },
  ];
  it.each<[string, Partial<BurnPlan>, string]>([
    [
      "more than the tank holds",
      { tanks: [tank({ arms, volume_m3: 0.3 })] },
      "main, volume_m3: expected 0 m³ to the capacity, 0.2 m³, received 0.3 m³",
    ],
    [
      "less than nothing in it",
      { tanks: [tank({ volume_m3: -0.1 })] },
      "main, volume_m3: expected 0 m³ to the capacity",
    ],
    [
      "volume that is no number",
      { tanks: [tank({ volume_m3: Number.NaN })] },
      "main, volume_m3: expected 0 m³ to the capacity",
    ],
    [
      "one row of arms",
      { tanks: [tank({ arms: arms.slice(0, 1), volume_m3: 0 })] },
      "main, arms: expected a row for the empty tank and one for the full, received 1 rows",
    ],
    [
      "rows that do not rise",
      { tanks: [tank({ arms: [...arms, ...arms.slice(1)], volume_m3: 0.1 })] },
      "main, arms: expected volumes that rise, received 0.2 m³ after 0.2 m³",
    ],
    [
      "rows that begin above nothing",
      { tanks: [tank({ arms: [{ volume_m3: 0.1, arm_m: 3 }, ...arms.slice(1)], volume_m3: 0.1 })] },
      "main, arms: expected a first row for 0 m³",
    ],
    [
      "more unusable than it holds",
      { tanks: [tank({ arms, volume_m3: 0.1, unusable_m3: 0.3 })] },
      "main, unusable_m3: expected 0 to 0.2 m³",
    ],
    [
      "a tank in the order that there is not",
      { order: [["main", "tip"]] },
      'order: expected tanks that there are (main), received "tip"',
    ],
    [
      "a tank with fuel that is not in the order",
      { order: [] },
      'order: expected each tank that holds usable fuel, once, received no "main"',
    ],
    ["a tank twice in the order", { order: [["main"], ["main"]] }, 'received "main" twice'],
    [
      "a density of nothing",
      { density_kgPerM3: 0 },
      "density_kgPerM3: expected a density above zero, received 0",
    ],
    [
      "a burn below nothing",
      { burns: [{ id: "trip", mass_kg: -1 }] },
      "burns, trip: expected a mass of zero or more, received -1 kg",
    ],
    [
      "an item below nothing",
      { withoutFuel: [{ mass_kg: -1, arm_m: 3 }] },
      "items[0].mass_kg: expected a mass of zero or more, received -1",
    ],
  ])("are refused with %s", (_what, change, message) => {
    expect(() => burnPath({ ...FIGURE_10_5, ...change })).toThrow(message);
  });
});
