import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toSI } from "../units/convert.ts";
import { centreOfGravity, lateralMoment, totalMass, totalMoment } from "./centre-of-gravity.ts";
import { ballastNeeded, centreAfterChange, centreShift, massToCentreLimit, massToShift } from "./changes.ts";
import { armOfPercentMac, percentMac } from "./chord.ts";
import { floorLoading, mostOnFloor } from "./floor.ts";
import { centreLimit } from "./limit-lines.ts";
import { type LoadItem, loadedState } from "./loaded-state.ts";
import { stationMargins } from "./station-margins.ts";
import {
  negligibleMassChange,
  noseWheelCentre,
  tailWheelCentre,
  weighedCentre,
  weighedMass,
} from "./weighing.ts";

/** Evenly spread figures, and doubles, of which most are next to nothing. */
const figure = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000),
    fc.double({ min, max, noNaN: true }),
  );
const mass = figure(0, 5000);
const arm = figure(-10, 20);
const item: fc.Arbitrary<LoadItem> = fc.record({ mass_kg: mass, arm_m: arm, lateralArm_m: arm });
const empty: LoadItem = { mass_kg: 1200, arm_m: 3.4, lateralArm_m: 0.01 };
const load = fc.array(item, { minLength: 1, maxLength: 10 }).map((items) => [empty, ...items]);

const shuffled = <T>(all: readonly T[]): fc.Arbitrary<readonly T[]> =>
  fc.shuffledSubarray([...all], { minLength: all.length });

describe("a loading", () => {
  it("is the same in any order, to the last bit", () => {
    fc.assert(
      fc.property(
        load.chain((items) => fc.tuple(fc.constant(items), shuffled(items))),
        ([items, other]) => {
          expect(loadedState(other)).toEqual(loadedState(items));
          const lists = (all: readonly LoadItem[]) => ({
            mass_kg: all.map((one) => one.mass_kg),
            arm_m: all.map((one) => one.arm_m),
          });
          expect(centreOfGravity.compute(lists(other))).toBe(centreOfGravity.compute(lists(items)));
        },
      ),
    );
  });

  it("is what the quantities of the registry say of it", () => {
    fc.assert(
      fc.property(load, (items) => {
        const state = loadedState(items);
        const mass_kg = items.map((one) => one.mass_kg);
        const arm_m = items.map((one) => one.arm_m);
        expect(totalMass.compute({ mass_kg })).toBe(state.mass_kg);
        expect(totalMoment.compute({ mass_kg, arm_m })).toBe(state.moment_kgm);
        expect(centreOfGravity.compute({ mass_kg, arm_m })).toBe(state.arm_m);
        const lateralArm_m = items.map((one) => one.lateralArm_m ?? 0);
        expect(lateralMoment.compute({ mass_kg, lateralArm_m })).toBe(state.lateralMoment_kgm);
      }),
    );
  });

  it("does not move when something is put in at its centre of gravity", () => {
    fc.assert(
      fc.property(load, mass, (items, mass_kg) => {
        const before = loadedState(items);
        const after = loadedState([...items, { mass_kg, arm_m: before.arm_m }]);
        expect(after.mass_kg).toBeGreaterThanOrEqual(before.mass_kg);
        expect(Math.abs(after.arm_m - before.arm_m)).toBeLessThanOrEqual(
          4e-16 * Math.abs(before.arm_m) + 1e-18,
        );
        const newCentre_m = centreAfterChange.compute({
          totalMass_kg: before.mass_kg,
          centreOfGravity_m: before.arm_m,
          addedMass_kg: mass_kg,
          arm_m: before.arm_m,
        });
        expect(newCentre_m).toBe(before.arm_m);
      }),
    );
  });

  it("is as before, to the last bit, when something is moved and moved back", () => {
    fc.assert(
      fc.property(load, mass, arm, arm, (items, mass_kg, from_m, to_m) => {
        const before = loadedState([...items, { mass_kg, arm_m: from_m }]);
        const move = (from: number, to: number): LoadItem => ({
          mass_kg: 0,
          arm_m: 0,
          extraMoment_kgm: mass_kg * (to - from),
        });
        const back = loadedState([
          ...items,
          { mass_kg, arm_m: from_m },
          move(from_m, to_m),
          move(to_m, from_m),
        ]);
        expect(back).toEqual(before);
        const there = { totalMass_kg: before.mass_kg, shiftedMass_kg: mass_kg, from_m, to_m };
        expect(
          centreShift.compute(there) + centreShift.compute({ ...there, from_m: to_m, to_m: from_m }),
        ).toBe(0);
      }),
    );
  });

  it("comes back when something is put in and taken out", () => {
    fc.assert(
      fc.property(load, mass, arm, (items, addedMass_kg, arm_m) => {
        const before = loadedState(items);
        const centre = centreAfterChange.compute({
          totalMass_kg: before.mass_kg,
          centreOfGravity_m: before.arm_m,
          addedMass_kg,
          arm_m,
        });
        const back = centreAfterChange.compute({
          totalMass_kg: before.mass_kg + addedMass_kg,
          centreOfGravity_m: centre,
          addedMass_kg: -addedMass_kg,
          arm_m,
        });
        expect(back).toBeCloseTo(before.arm_m, 9);
      }),
    );
  });

  it("counts its centre of gravity from any datum", () => {
    fc.assert(
      fc.property(load, arm, (items, datum_m) => {
        const moved = items.map((one) => ({ ...one, arm_m: one.arm_m - datum_m }));
        expect(loadedState(moved).arm_m + datum_m).toBeCloseTo(loadedState(items).arm_m, 10);
      }),
    );
  });

  it.each<[string, readonly LoadItem[], string]>([
    [
      "a mass below zero",
      [empty, { mass_kg: -80, arm_m: 3 }],
      "items[1].mass_kg: expected a mass of zero or more, received -80; check the figure and its unit",
    ],
    [
      "an arm that is none",
      [{ mass_kg: 80, arm_m: Number.NaN }],
      "items[0].arm_m: expected a finite number, received NaN",
    ],
    [
      "a lateral arm that is none",
      [{ mass_kg: 80, arm_m: 1, lateralArm_m: Infinity }],
      "items[0].lateralArm_m: expected a finite number",
    ],
    [
      "nothing at all",
      [],
      "items: expected items that have a mass together, received 0 kg; give the empty aircraft as an item",
    ],
  ])("is refused with %s", (_what, items, message) => {
    expect(() => loadedState(items)).toThrow(message);
  });
});

describe("what brings the centre of gravity to a limit", () => {
  const before = { totalMass_kg: 1500, centreOfGravity_m: 2.6 };

  it("brings it exactly there: ballast, and something moved", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2.61, max: 3, noNaN: true }),
        fc.double({ min: 3.5, max: 8, noNaN: true }),
        (limit_m, ballastArm_m) => {
          const addedMass_kg = ballastNeeded.compute({ ...before, limit_m, ballastArm_m });
          expect(addedMass_kg).toBeGreaterThan(0);
          expect(centreAfterChange.compute({ ...before, addedMass_kg, arm_m: ballastArm_m })).toBeCloseTo(
            limit_m,
            12,
          );
          const shiftedMass_kg = massToShift.compute({
            ...before,
            wanted_m: limit_m,
            from_m: 2,
            to_m: ballastArm_m,
          });
          const change_m = centreShift.compute({
            totalMass_kg: 1500,
            shiftedMass_kg,
            from_m: 2,
            to_m: ballastArm_m,
          });
          expect(before.centreOfGravity_m + change_m).toBeCloseTo(limit_m, 12);
          const same = massToCentreLimit.compute({
            totalMass_kg: 1500,
            totalMoment_kgm: 3900,
            arm_m: ballastArm_m,
            limit_m,
          });
          expect(same).toBeCloseTo(addedMass_kg, 8);
        },
      ),
    );
  });

  it("is refused where the place is the limit itself", () => {
    expect(() => ballastNeeded.compute({ ...before, limit_m: 3, ballastArm_m: 3 })).toThrow(
      "ballast-needed, distance_m: expected inputs that lead to 0.000001\u00A0m to 200\u00A0m, received 0\u00A0m",
    );
  });

  it("cannot move more than there is", () => {
    expect(() => centreShift.compute({ totalMass_kg: 100, shiftedMass_kg: 101, from_m: 1, to_m: 2 })).toThrow(
      "centre-shift, shiftedMass_kg: expected inputs that lead to 0\u00A0kg to 100\u00A0kg, received 101\u00A0kg",
    );
  });
});

describe("weighing", () => {
  it("gives one centre by the scales, by the nose wheel and by the tail wheel", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 900, noNaN: true }),
        fc.double({ min: 1, max: 400, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        (main_kg, third_kg, mainWheels_m, wheelbase_m) => {
          const wheels = {
            mainWheels_m,
            wheelbase_m,
            thirdWheelMass_kg: third_kg,
            mass_kg: 2 * main_kg + third_kg,
          };
          const scales = (third_m: number) =>
            weighedCentre.compute({
              scale_kg: [main_kg, main_kg, third_kg],
              tare_kg: [0, 0, 0],
              scaleArm_m: [mainWheels_m, mainWheels_m, third_m],
            });
          expect(noseWheelCentre.compute(wheels)).toBeCloseTo(scales(mainWheels_m - wheelbase_m), 10);
          expect(tailWheelCentre.compute(wheels)).toBeCloseTo(scales(mainWheels_m + wheelbase_m), 10);
        },
      ),
    );
  });

  it("has a datum behind the main wheels as the handbook's other two formulas have it", () => {
    // FAA-H-8083-1B, chapter 3: −(D + F L / W) and −D + R L / W with D as a distance
    const [D, L, third, W] = [1, 2, 100, 1000];
    const wheels = { mainWheels_m: -D, wheelbase_m: L, thirdWheelMass_kg: third, mass_kg: W };
    expect(noseWheelCentre.compute(wheels)).toBeCloseTo(-(D + (third * L) / W), 12);
    expect(tailWheelCentre.compute(wheels)).toBeCloseTo(-D + (third * L) / W, 12);
  });

  it("refuses tare above what the scale shows, and lists of two lengths", () => {
    expect(() => weighedMass.compute({ scale_kg: [10], tare_kg: [11] })).toThrow(
      "weighed-mass, net_kg: expected inputs that lead to 0\u00A0kg",
    );
    expect(() => weighedMass.compute({ scale_kg: [10, 20], tare_kg: [1] })).toThrow(
      "weighed-mass, tare_kg: expected as many values as scale_kg has, 2, received 1; give one for each item, in the same order",
    );
  });

  it.each([
    [4999, 1],
    [5000, 1], // the text says nothing at exactly 5,000 lb: the smaller figure
    [5001, 2],
    [50_000, 2],
    [50_001, 5],
  ])("a change at %d lb counts from %d lb", (pounds, change) => {
    expect(negligibleMassChange.compute({ emptyMass_kg: toSI(pounds, "lb") })).toBeCloseTo(
      toSI(change, "lb"),
      12,
    );
  });
});

describe("a limit line", () => {
  const corners = { cornerMass_kg: [1000, 1400, 1500], cornerArm_m: [2, 2, 2.2] };

  it("is met at its corners and between them, and gives nothing beyond", () => {
    expect(centreLimit.compute({ mass_kg: 1000, ...corners })).toBe(2);
    expect(centreLimit.compute({ mass_kg: 1450, ...corners })).toBeCloseTo(2.1, 12);
    expect(centreLimit.compute({ mass_kg: 1500, ...corners })).toBeCloseTo(2.2, 12);
    for (const mass_kg of [999, 1501]) {
      expect(() => centreLimit.compute({ mass_kg, ...corners })).toThrow(
        `centre-limit, mass_kg: expected inputs that lead to 1000\u00A0kg to 1500\u00A0kg, received ${mass_kg}\u00A0kg`,
      );
    }
  });

  it("refuses corners that do not rise", () => {
    expect(() => centreLimit.compute({ mass_kg: 1, cornerMass_kg: [5, 5], cornerArm_m: [1, 2] })).toThrow(
      "centre-limit, cornerMass_kg: expected masses that rise from corner to corner, received 5 kg after 5 kg",
    );
  });
});

describe("the chord and the floor", () => {
  it("convert there and back", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 5, noNaN: true }), (centreOfGravity_m) => {
        const chord = { leadingEdge_m: 2.2, chord_m: 1.4 };
        const position_1 = percentMac.compute({ centreOfGravity_m, ...chord });
        expect(armOfPercentMac.compute({ position_1, ...chord })).toBeCloseTo(centreOfGravity_m, 12);
      }),
    );
  });

  it("takes what is left, and is then exactly at its limit", () => {
    const load_kg = mostOnFloor.compute({ floorLimit_kgPerM2: 400, area_m2: 0.5, standing_kg: [12, 8] });
    expect(load_kg).toBe(180);
    expect(floorLoading.compute({ mass_kg: [load_kg, 12, 8], area_m2: 0.5 })).toBe(400);
  });
});

describe("bays", () => {
  const stations = [
    { id: "nose", max_kg: 40 },
    { id: "aft", max_kg: 60, floor: { area_m2: 0.25, max_kgPerM2: 200 } },
  ];
  const groups = [{ id: "both", stations: ["nose", "aft"], max_kg: 90 }];

  it("each have their own limit, that of their floor and that of their group; on it is within", () => {
    const margins = stationMargins(stations, groups, [
      { station: "nose", mass_kg: 40 },
      { station: "aft", mass_kg: 30 },
      { station: "aft", mass_kg: 22 },
    ]);
    expect(margins.map(({ id, limit, margin_kg }) => [id, limit, margin_kg])).toEqual([
      ["nose", "station", 0],
      ["aft", "station", 8],
      ["aft", "floor", -2],
      ["both", "group", -2],
    ]);
  });

  it("refuse what is not in the book, and a mass below zero", () => {
    expect(() => stationMargins(stations, groups, [{ station: "tail", mass_kg: 1 }])).toThrow(
      'station: expected a station of the book (nose, aft), received "tail"',
    );
    expect(() => stationMargins(stations, groups, [{ station: "aft", mass_kg: -1 }])).toThrow(
      "aft, mass_kg: expected a mass of zero or more, received -1",
    );
  });
});
