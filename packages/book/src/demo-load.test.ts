import { describe, expect, it } from "vitest";
import { outlineOf } from "./drawing/extent.ts";
import { bookOf, DEMO_BOOKS, had, loadingOf } from "./testing/demo-books.ts";

describe.each(DEMO_BOOKS)("the load of %s", (name) => {
  const book = bookOf(name);
  const loading = loadingOf(name);

  it("lies in the fuselage, and its fuel in the wing, as both are drawn", () => {
    const parts = outlineOf(book.geometry);
    const span_m = (wanted: string): readonly [number, number] => {
      const along = parts
        .filter((part) => part.name === wanted)
        .flatMap(({ corners }) => corners.map(([x]) => x));
      return [Math.min(...along), Math.max(...along)];
    };
    const [nose_m, tail_m] = span_m("fuselage");
    for (const { arm_m } of loading.stations) {
      expect(arm_m).toBeGreaterThan(nose_m);
      expect(arm_m).toBeLessThan(tail_m);
    }
    const [leading_m, trailing_m] = span_m("wing");
    for (const { arms, place } of loading.tanks) {
      for (const { arm_m } of arms) {
        expect(arm_m).toBeGreaterThan(leading_m);
        expect(arm_m).toBeLessThan(trailing_m);
      }
      const [from_m = 0, to_m = 0] = book.geometry.wing.tank ?? [];
      expect(Math.abs(place[1])).toBeGreaterThan(from_m);
      expect(Math.abs(place[1])).toBeLessThan(to_m);
    }
  });

  it("has less moment in a tank with less fuel", () => {
    for (const { arms } of loading.tanks) {
      const moments = arms.map(({ volume_m3, arm_m }) => volume_m3 * arm_m);
      for (const [i, moment] of moments.entries()) {
        expect(moment).toBeGreaterThan(i === 0 ? -1 : had(moments[i - 1]));
      }
    }
  });

  it("is inside the normal envelope empty of all but a pilot of 80 kg and full tanks", () => {
    const state = stateOf(name, new Map([["seat-1", 80]]), tankfuls(name, 1));
    expect(isInside(name, state)).toBe(true);
  });
});

// ---- The story of the demo, by plain arithmetic: sum of mass times arm over sum of mass ----------------------------

interface State {
  readonly mass_kg: number;
  readonly arm_m: number;
}

const density_kgPerM3 = (name: string): number => had(bookOf(name).fuel).density15_kgPerM3;

/** The same share of every tank, m³ by tank. */
const tankfuls = (name: string, share_1: number): readonly number[] =>
  loadingOf(name).tanks.map(({ capacity_m3 }) => capacity_m3 * share_1);

/** As much fuel in each of two tanks, together so many kilograms. */
const evenly = (name: string, fuel_kg: number): readonly number[] =>
  loadingOf(name).tanks.map((_, __, all) => fuel_kg / density_kgPerM3(name) / all.length);

function tankArm_m(name: string, tank: number, volume_m3: number): number {
  const rows = had(loadingOf(name).tanks[tank]).arms;
  const above = rows.findIndex((row) => row.volume_m3 >= volume_m3);
  const high = had(rows[above]);
  const low = rows[above - 1] ?? high;
  if (high === low) return high.arm_m;
  const share_1 = (volume_m3 - low.volume_m3) / (high.volume_m3 - low.volume_m3);
  return low.arm_m + share_1 * (high.arm_m - low.arm_m);
}

function stateOf(name: string, load_kg: ReadonlyMap<string, number>, fuel_m3: readonly number[]): State {
  const { empty, stations, tanks } = loadingOf(name);
  const now = empty.revisions.at(-1) ?? empty;
  const items: (readonly [mass_kg: number, arm_m: number])[] = [[now.mass_kg, now.arm_m]];
  for (const [id, mass_kg] of load_kg) {
    const station = had(stations.find((one) => one.id === id));
    expect(mass_kg).toBeLessThanOrEqual(had(station.max_kg));
    items.push([mass_kg, station.arm_m]);
  }
  // what cannot be used was on the scales with the empty aircraft: only the rest is added
  for (const [tank, volume_m3] of fuel_m3.entries()) {
    const { unusable_m3 } = had(tanks[tank]);
    if (volume_m3 <= unusable_m3) continue;
    const density = density_kgPerM3(name);
    items.push([volume_m3 * density, tankArm_m(name, tank, volume_m3)]);
    items.push([-unusable_m3 * density, tankArm_m(name, tank, unusable_m3)]);
  }
  const mass_kg = items.reduce((sum, [mass]) => sum + mass, 0);
  return { mass_kg, arm_m: items.reduce((sum, [mass, arm]) => sum + mass * arm, 0) / mass_kg };
}

/** Forward and aft limit at a mass: all envelopes of the demo are convex, with a straight aft edge. */
function limitsAt(name: string, mass_kg: number): readonly [forward_m: number, aft_m: number] {
  const { points } = had(loadingOf(name).envelopes[0]);
  const arms = points.flatMap((to, i) => {
    const from = had(points.at(i - 1));
    const [low, high] = from.mass_kg < to.mass_kg ? [from, to] : [to, from];
    if (mass_kg < low.mass_kg || mass_kg > high.mass_kg) return [];
    if (low.mass_kg === high.mass_kg) return [low.arm_m, high.arm_m];
    const share_1 = (mass_kg - low.mass_kg) / (high.mass_kg - low.mass_kg);
    return [low.arm_m + share_1 * (high.arm_m - low.arm_m)];
  });
  return [Math.min(...arms), Math.max(...arms)];
}

function isInside(name: string, { mass_kg, arm_m }: State): boolean {
  const [forward_m, aft_m] = limitsAt(name, mass_kg);
  return arm_m >= forward_m && arm_m <= aft_m;
}

describe("the island flight of the turboprop", () => {
  const name = "zz-skr";
  /** Ramp, take-off after 10 kg of taxiing, landing after the 128 kg of the drawing, dry. */
  const ramp_kg = 320;
  const FUEL_kg = { ramp: ramp_kg, takeOff: ramp_kg - 10, landing: ramp_kg - 10 - 128, dry: 0 };
  const along = (load: ReadonlyMap<string, number>) => ({
    ramp: stateOf(name, load, evenly(name, FUEL_kg.ramp)),
    takeOff: stateOf(name, load, evenly(name, FUEL_kg.takeOff)),
    landing: stateOf(name, load, evenly(name, FUEL_kg.landing)),
    dry: stateOf(name, load, evenly(name, FUEL_kg.dry)),
  });

  /** Pilot alone in front, two of the clinic in the rear row, the bags where they fell: 130 kg is all that fits aft. */
  const careless = new Map([
    ["seat-1", 84],
    ["seat-3", 68],
    ["seat-4", 34], // the slit lamp in its case
    ["seat-5", 91],
    ["seat-6", 76],
    ["aft-bay", 85],
    ["tail-locker", 45],
  ]);

  it("keeps every mass limit with four people and full bags", () => {
    const { limits, groups } = loadingOf(name);
    const { ramp, takeOff, landing, dry } = along(careless);
    expect(ramp.mass_kg).toBeLessThanOrEqual(had(limits.ramp_kg));
    expect(takeOff.mass_kg).toBeLessThanOrEqual(limits.takeOff_kg);
    expect(landing.mass_kg).toBeLessThanOrEqual(had(limits.landing_kg));
    expect(dry.mass_kg).toBeLessThanOrEqual(had(limits.zeroFuel_kg));
    expect(groups[0]).toMatchObject({ id: "aft-bags", max_kg: 130 });
  });

  it("takes off inside the aft limit and lands behind it, though it is inside again when dry", () => {
    const { ramp, takeOff, landing, dry } = along(careless);
    expect([ramp, takeOff, landing, dry].map((state) => isInside(name, state))).toEqual([
      true,
      true,
      false,
      true,
    ]);
    const behind_mm = 1000 * (landing.arm_m - limitsAt(name, landing.mass_kg)[1]);
    expect(behind_mm).toBeGreaterThan(1.5);
    expect(behind_mm).toBeLessThan(5);
  });

  it("also breaks it in flight with the gear up, and not at lift-off", () => {
    const { gearMoment_kgm } = loadingOf(name);
    const gearUp = ({ mass_kg, arm_m }: State): State => ({
      mass_kg,
      arm_m: arm_m + had(gearMoment_kgm) / mass_kg,
    });
    const { takeOff, landing } = along(careless);
    expect(isInside(name, gearUp(takeOff))).toBe(true);
    expect(isInside(name, gearUp(landing))).toBe(false);
  });

  it("is put right by moving one person forward, the bags staying where they are", () => {
    const moved = new Map(careless);
    moved.delete("seat-6");
    moved.set("seat-2", 76);
    expect(Object.values(along(moved)).map((state) => isInside(name, state))).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });

  it("is put right, too, by taking bags out of the tail locker", () => {
    const lighter = new Map(careless).set("tail-locker", 35);
    expect(Object.values(along(lighter)).map((state) => isInside(name, state))).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });

  it("has the limits and the envelope of the drawing", () => {
    const { empty, limits, envelopes } = loadingOf(name);
    expect(empty).toMatchObject({ weighedOn: "2026-03-03", mass_kg: 1905, arm_m: 4.055, revisions: [] });
    expect(limits).toMatchObject({ ramp_kg: 2740, takeOff_kg: 2720, zeroFuel_kg: 2490, landing_kg: 2585 });
    expect(envelopes[0]?.points).toEqual([
      { arm_m: 4.02, mass_kg: 1850 },
      { arm_m: 4.02, mass_kg: 2250 },
      { arm_m: 4.13, mass_kg: 2720 },
      { arm_m: 4.36, mass_kg: 2720 },
      { arm_m: 4.36, mass_kg: 1850 },
    ]);
  });

  it("agrees with the load of the drawing: 2,326 kg at 4.169 m dry, 340 kg of fuel more at 4.206 m on the ramp", () => {
    const drawn = new Map([
      ["seat-1", 84],
      ["seat-2", 76],
      ["seat-3", 68],
      ["seat-4", 91],
      ["seat-6", 34],
      ["aft-bay", 68],
    ]);
    const dry = stateOf(name, drawn, evenly(name, 0));
    expect(dry.mass_kg).toBe(2326);
    expect(dry.arm_m).toBeCloseTo(4.169, 3);
    const ramp = stateOf(name, drawn, evenly(name, 340));
    // 2 times 4 L of it cannot be used, and was on the scales
    expect(ramp.mass_kg).toBeCloseTo(2326 + 340 - 2 * 4 * 0.8, 6);
    expect(Math.abs(ramp.arm_m - 4.206)).toBeLessThan(0.002);
  });
});

describe("the demo books together", () => {
  it("agree on the fields that they share, which are in no two places", () => {
    const seen = new Map<string, unknown>();
    for (const name of DEMO_BOOKS) {
      for (const field of had(bookOf(name).fields)) {
        if (seen.has(field.code)) expect(field).toEqual(seen.get(field.code));
        else seen.set(field.code, field);
      }
    }
    expect([...seen.keys()].sort()).toEqual(["ZZHL", "ZZPK", "ZZQN", "ZZSM", "ZZTW"]);
  });

  it("have a tank that the gauge and the stick can show full", () => {
    for (const name of DEMO_BOOKS) {
      for (const { gauge, capacity_m3 } of loadingOf(name).tanks) {
        const range = had(had(bookOf(name).gauges.get(gauge ?? "")).range);
        expect(range[1].valueSI).toBeGreaterThanOrEqual(capacity_m3);
      }
    }
  });

  it("read each tank at its own gauge and its own filler", () => {
    for (const name of DEMO_BOOKS) {
      for (const { id, readAt } of loadingOf(name).tanks) {
        const side = id.replace("-tank", "");
        expect(readAt).toEqual([`${side}-fuel-gauge`, `${side}-fuel-cap`]);
        for (const point of readAt) {
          const readings = bookOf(name).checks.filter((check) => check.point === point && check.reading);
          expect(readings.map(({ reading }) => reading?.dimension)).toContain("volume");
        }
      }
    }
  });
});
