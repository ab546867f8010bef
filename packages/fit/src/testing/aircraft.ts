import type { FitInput, FitItem, FitTank } from "../fit-input.ts";

const litres = (value: number): number => value / 1000;

const wingTank = (side: "left" | "right", volume_m3: number): FitTank => ({
  id: `${side}-tank`,
  name: `${side} tank`,
  side,
  arms: [
    [0, 4.8],
    [40, 4.78],
    [80, 4.72],
    [120, 4.647],
    [160, 4.548],
    [200, 4.474],
    [240, 4.425],
    [280, 4.393],
    [320, 4.371],
  ].map(([volume = 0, arm_m = 0]) => ({ volume_m3: litres(volume), arm_m })),
  lateralArm_m: side === "left" ? -2.75 : 2.75,
  unusable_m3: litres(4),
  volume_m3,
});

export const item = (
  id: string,
  mass_kg: number,
  at: string,
  mayGo: readonly string[] = [],
  mayStay = false,
): FitItem => ({ id, name: id, mass_kg, at, mayGo, mayStay });

const SEATS = ["seat-2", "seat-3", "seat-4", "seat-5", "seat-6"];
const BAYS = ["seat-5", "seat-6", "aft-bay", "tail-locker"];

/** An invented turboprop for six, with the fuel ahead of what the burn leaves: the fuller, the further forward. */
export function turboprop(change: Partial<FitInput> = {}): FitInput {
  const seat = (id: string, arm_m: number, lateralArm_m: number) => ({
    id,
    name: id.replace("-", " "),
    arm_m,
    lateralArm_m,
    max_kg: 120,
    holds: 1,
  });
  return {
    empty: { mass_kg: 1905, arm_m: 4.055, lateralArm_m: 0 },
    stations: [
      seat("seat-1", 3.62, -0.33),
      seat("seat-2", 3.62, 0.33),
      seat("seat-3", 4.7, -0.33),
      seat("seat-4", 4.7, 0.33),
      seat("seat-5", 5.74, -0.32),
      seat("seat-6", 5.74, 0.32),
      {
        id: "aft-bay",
        name: "aft bay",
        arm_m: 6.62,
        max_kg: 90,
        floor: { area_m2: 0.6, max_kgPerM2: 150 },
      },
      {
        id: "tail-locker",
        name: "tail locker",
        arm_m: 7.45,
        max_kg: 45,
        floor: { area_m2: 0.45, max_kgPerM2: 100 },
      },
    ],
    groups: [
      { id: "aft-bags", name: "aft bay and tail locker", stations: ["aft-bay", "tail-locker"], max_kg: 130 },
    ],
    tanks: [wingTank("left", litres(212)), wingTank("right", litres(212))],
    density_kgPerM3: 800,
    order: [["left-tank", "right-tank"]],
    burn: { taxi_kg: 10, trip_kg: 128, reserve_kg: 80 },
    limits: {
      ramp_kg: 2740,
      takeOff_kg: 2720,
      zeroFuel_kg: 2490,
      landing_kg: 2585,
      minimumFlight_kg: 1980,
      lateralMoment_kgm: 180,
      fuelImbalance_kg: 50,
    },
    envelopes: [
      {
        id: "normal",
        name: "Normal",
        points: [
          { arm_m: 4.02, mass_kg: 1850 },
          { arm_m: 4.02, mass_kg: 2250 },
          { arm_m: 4.13, mass_kg: 2720 },
          { arm_m: 4.36, mass_kg: 2720 },
          { arm_m: 4.36, mass_kg: 1850 },
        ],
      },
    ],
    gearMoment_kgm: 4,
    items: [],
    ...change,
  };
}

/**
 * Four people, two of them in the rear seats, with the tailplane in ice: from take-off within the limit of 4.32 m, by
 * landing behind it. By hand, with 206.25 L in each tank (m = kg·m, gear up; usable fuel is all fuel less 6.4 kg that
 * the empty mass has, at 4.798 m):
 *   without fuel 2325 kg, 1905×4.055 + 84×3.62 + 76×4.70 + (68 + 91)×5.74 + 72×6.62 + 29×7.45 + 4 = 9995.405 m
 *   take-off, 200 L each: 2638.6 kg, 9995.405 + 320×4.474 − 30.707 = 11396.378 m, 4.3191 m
 *   landing, 120 L each: 2510.6 kg, 9995.405 + 192×4.647 − 30.707 = 10856.922 m, 4.3244 m
 */
export function fourPeople(change: Partial<FitInput> = {}): FitInput {
  const input = turboprop({
    envelopes: [
      {
        id: "ice",
        name: "With ice about",
        points: [
          { arm_m: 4.05, mass_kg: 1850 },
          { arm_m: 4.05, mass_kg: 2250 },
          { arm_m: 4.14, mass_kg: 2650 },
          { arm_m: 4.32, mass_kg: 2650 },
          { arm_m: 4.32, mass_kg: 1850 },
        ],
      },
    ],
    items: [
      item("pilot", 84, "seat-1"),
      item("surgeon", 76, "seat-3", SEATS),
      item("nurse", 68, "seat-5", SEATS),
      item("technician", 91, "seat-6", SEATS),
      item("slit lamp case", 34, "aft-bay", BAYS, true),
      item("kit", 38, "aft-bay", BAYS, true),
      item("bag", 29, "tail-locker", BAYS, true),
    ],
    ...change,
  });
  return { ...input, tanks: input.tanks.map((tank) => ({ ...tank, volume_m3: litres(206.25) })) };
}

/** The load of the drawing: four people, a case on a rear seat, 68 kg in the aft bay, 212 L in each tank. */
export const asDrawn = (change: Partial<FitInput> = {}): FitInput =>
  turboprop({
    items: [
      item("pilot", 84, "seat-1"),
      item("surgeon", 76, "seat-2", SEATS),
      item("nurse", 68, "seat-3", SEATS),
      item("technician", 91, "seat-4", SEATS),
      item("slit lamp case", 34, "seat-6", BAYS, true),
      item("bags", 68, "aft-bay", [], true),
    ],
    ...change,
  });
