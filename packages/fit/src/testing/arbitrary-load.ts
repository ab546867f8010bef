import fc from "fast-check";
import type { FitEnvelope, FitInput, FitItem, FitStation, FitTank } from "../fit-input.ts";

/** A number between two values, in so many steps: round numbers meet limits exactly, now and then. */
const between = (low: number, high: number, steps: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: steps }).map((n) => low + ((high - low) * n) / steps);

/** Around 2.0 to 2.4 m: straight, sloping in front, with a point on top, or with a notch behind. */
const envelope: fc.Arbitrary<FitEnvelope> = fc
  .record({
    shape: fc.constantFrom("straight", "sloping", "peak", "notch", "step"),
    fore_m: between(1.9, 2.15, 10),
    aft_m: between(2.25, 2.6, 14),
    top_kg: between(1100, 1500, 8),
    turned: fc.boolean(),
  })
  .map(({ shape, fore_m, aft_m, top_kg, turned }) => {
    const corner = (arm_m: number, mass_kg: number) => ({ arm_m, mass_kg });
    const knee_kg = 700 + (top_kg - 700) / 2;
    const middle_m = (fore_m + aft_m) / 2;
    const points = {
      straight: [corner(fore_m, 600), corner(fore_m, top_kg), corner(aft_m, top_kg), corner(aft_m, 600)],
      sloping: [
        corner(fore_m, 600),
        corner(fore_m, knee_kg),
        corner(fore_m + 0.08, top_kg),
        corner(aft_m, top_kg),
        corner(aft_m + 0.05, 600),
      ],
      peak: [
        corner(fore_m, 600),
        corner(fore_m, knee_kg),
        corner(middle_m, top_kg),
        corner(aft_m, knee_kg),
        corner(aft_m, 600),
      ],
      // Goes in and out again: not convex.
      notch: [
        corner(fore_m, 600),
        corner(fore_m, top_kg),
        corner(aft_m, top_kg),
        corner(aft_m - 0.6 * (aft_m - fore_m), knee_kg),
        corner(aft_m, 600),
      ],
      // Two ranges of arms at the masses above the knee.
      step: [
        corner(fore_m, 600),
        corner(fore_m, top_kg),
        corner(middle_m - 0.03, top_kg),
        corner(middle_m, knee_kg),
        corner(middle_m + 0.03, top_kg),
        corner(aft_m, top_kg),
        corner(aft_m, 600),
      ],
    }[shape];
    return { id: "normal", name: "Normal", points: turned ? points.reverse() : points };
  });

const tank = (id: string, side: FitTank["side"]): fc.Arbitrary<FitTank> =>
  fc
    .record({
      capacity_l: fc.constantFrom(60, 100, 150),
      arms: fc.array(between(1.6, 3.2, 16), { minLength: 2, maxLength: 4 }),
      unusable_l: fc.constantFrom(0, 2),
      share: between(0.1, 1, 9),
      lateralArm_m: between(0.5, 2, 3),
    })
    .map(({ capacity_l, arms, unusable_l, share, lateralArm_m }) => ({
      id,
      name: id,
      side,
      arms: arms.map((arm_m, n) => ({ volume_m3: (capacity_l * n) / (arms.length - 1) / 1000, arm_m })),
      lateralArm_m: side === "centre" ? 0 : side === "left" ? -lateralArm_m : lateralArm_m,
      unusable_m3: unusable_l / 1000,
      volume_m3: (capacity_l * share) / 1000,
    }));

const tanks: fc.Arbitrary<Pick<FitInput, "tanks" | "order">> = fc.oneof(
  tank("main", "centre").map((main) => ({ tanks: [main], order: [["main"]] })),
  fc.tuple(tank("left", "left"), tank("right", "right"), fc.boolean()).map(([left, right, together]) => ({
    tanks: [left, right],
    order: together ? [["left", "right"]] : [["left"], ["right"]],
  })),
);

const station = (index: number): fc.Arbitrary<FitStation> =>
  fc
    .record({
      arm_m: between(1.2, 4.2, 12),
      lateralArm_m: fc.constantFrom(-0.4, 0, 0.4),
      max_kg: fc.constantFrom(40, 90, 130, 200),
      floor: fc.option(fc.constantFrom({ area_m2: 0.5, max_kgPerM2: 150 }), { nil: undefined }),
      holds: fc.option(fc.constantFrom(1, 2), { nil: undefined }),
    })
    .map(({ floor, holds, ...rest }) => ({
      id: `s${index}`,
      name: `Place ${index}`,
      ...rest,
      ...(floor === undefined ? {} : { floor }),
      ...(holds === undefined ? {} : { holds }),
    }));

const PLACES = ["s0", "s1", "s2", "s3"];

const items: fc.Arbitrary<readonly FitItem[]> = fc
  .array(
    fc.record({
      mass_kg: fc.constantFrom(0, 8, 15, 34, 60, 75, 90),
      at: fc.constantFrom(...PLACES),
      mayGo: fc.subarray(PLACES),
      mayStay: fc.boolean(),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((all) => all.map((one, index) => ({ id: `i${index}`, name: `Item ${index}`, ...one })));

/** A small invented aircraft and its load: in about half of them something is broken. */
export const arbitraryLoad: fc.Arbitrary<FitInput> = fc
  .record({
    empty: fc.record({
      mass_kg: between(650, 1000, 14),
      arm_m: between(2.0, 2.3, 12),
      lateralArm_m: fc.constantFrom(0, 0.01),
    }),
    stations: fc.tuple(station(0), station(1), station(2), station(3)),
    groups: fc.constantFrom([], [{ id: "rear", name: "Rear", stations: ["s2", "s3"], max_kg: 120 }]),
    tanks,
    taxi_kg: fc.constantFrom(0, 2, 12),
    trip_kg: fc.constantFrom(0, 15, 40),
    reserve_kg: fc.constantFrom(0, 10),
    limits: fc.record({
      ramp_kg: between(1000, 1500, 10),
      takeOff_kg: between(1000, 1500, 10),
      zeroFuel_kg: between(950, 1400, 9),
      landing_kg: between(950, 1450, 10),
      minimumFlight_kg: fc.constantFrom(0, 760),
      lateralMoment_kgm: between(30, 150, 6),
      fuelImbalance_kg: fc.constantFrom(40, 200),
    }),
    dropped: fc.subarray(["ramp_kg", "zeroFuel_kg", "landing_kg", "lateralMoment_kgm", "fuelImbalance_kg"]),
    envelope,
    gearMoment_kgm: fc.constantFrom(0, 3, -3),
    items,
  })
  .map(({ tanks: fuel, taxi_kg, trip_kg, reserve_kg, limits, dropped, envelope: one, ...rest }) => ({
    ...rest,
    ...fuel,
    density_kgPerM3: 720,
    burn: { taxi_kg, trip_kg, reserve_kg },
    limits: {
      takeOff_kg: limits.takeOff_kg,
      ...Object.fromEntries(Object.entries(limits).filter(([name]) => !dropped.includes(name))),
    },
    envelopes: [one],
  }));
