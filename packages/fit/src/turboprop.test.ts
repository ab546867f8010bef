import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { InputError } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { flightOf, withPlaces, withVolumes } from "./flight.ts";
import { openFit } from "./open-fit.ts";
import { asDrawn, fourPeople, item, turboprop } from "./testing/aircraft.ts";

const fit = openFit();

describe("four people and their bags, too far aft by landing", () => {
  it("is within the limit at take-off and behind it at landing, by hand", () => {
    const { takeOff, landing, paths } = flightOf(fourPeople());
    const up = paths[1];
    expect(takeOff.mass_kg).toBeCloseTo(2638.6, 6);
    expect(landing.mass_kg).toBeCloseTo(2510.6, 6);
    expect(up?.marks["taxi"]?.moment_kgm).toBeCloseTo(11396.378, 2);
    expect(up?.marks["trip"]?.moment_kgm).toBeCloseTo(10856.922, 2);
    const [only, ...others] = fit.breaches(fourPeople());
    expect(others).toEqual([]);
    expect(only).toMatchObject({ family: "aft", id: "ice", unit: "m" });
    // By hand 4.3244 m at landing; a little more where it is worst.
    expect(only?.by).toBeGreaterThanOrEqual(4.3244 - 4.32);
    expect(only?.by).toBeLessThan(0.006);
  });

  it("is put right by one move: the nurse, the lightest whose going forward is enough", async () => {
    const answer = await fit.arrange(fourPeople());
    if (answer.status !== "found") throw new Error(answer.status);
    expect(answer.moves.map(({ item: id, from }) => [id, from])).toEqual([["nurse", "seat-5"]]);
    expect(answer.says).toMatch(/^nurse from seat 5 to seat [24]$/);
    expect(answer.moved_kg).toBe(68);
    expect(fit.breaches(withPlaces(fourPeople(), new Map(Object.entries(answer.places))))).toEqual([]);
  });

  it("says what stands in the way when nobody may move, and what would have to stay", async () => {
    const input = fourPeople();
    const held = { ...input, items: input.items.map((one) => ({ ...one, mayGo: [] })) };
    const answer = await fit.arrange(held);
    if (answer.status !== "none") throw new Error(answer.status);
    expect(answer.because).toEqual([]);
    expect(answer.conflicts.map(({ limit }) => limit.name)).toEqual(["the aft limit"]);
    expect(answer.says).toMatch(
      /^no seating or stowage keeps every limit: it would fit but for this: the aft limit is passed by \d\.\d mm/,
    );
    // By hand: the bag, 29 kg at 7.45 m, gives 10856.922 − 216.05 = 10640.872 m at 2481.6 kg, 4.2879 m.
    expect(answer.lastResort.leaveBehind).toMatchObject({ items: ["bag"], mass_kg: 29, moves: [] });
    // The fuel gone, it is at 9995.405 m / 2325 kg = 4.2991 m; in between it is behind whatever is taken out first.
    const less = answer.lastResort.lessFuel;
    if (less !== undefined) expect(fit.breaches(withVolumes(held, less.volumes_m3))).toEqual([]);
  });

  it("lists the moves so that each finds room: into the free seat first", async () => {
    const input = turboprop({
      stations: turboprop().stations.map((one) => (one.id === "seat-2" ? { ...one, max_kg: 80 } : one)),
      items: [
        item("pilot", 84, "seat-1"),
        item("tall", 100, "seat-2", ["seat-3"]),
        item("short", 60, "seat-3", ["seat-4"]),
      ],
    });
    const answer = await fit.arrange(input);
    if (answer.status !== "found") throw new Error(answer.status);
    expect(answer.moves.map(({ says }) => says)).toEqual([
      "short from seat 3 to seat 4",
      "tall from seat 2 to seat 3",
    ]);
  });
});

describe("what still fits in the load of the drawing", () => {
  it("is 22 kg in the aft bay, then it is full; 64.2 kg beside the case, then landing mass is full", async () => {
    const answers = await fit.mostBags(asDrawn(), ["aft-bay", "seat-5", "seat-2"]);
    // By hand: 90 − 68; 2585 − (1905 + 421 + 332.8 − 138) = 64.2.
    expect(answers).toMatchObject([
      { status: "found", most_kg: 22, says: "then aft bay is full" },
      { status: "found", most_kg: 64.2, says: "then landing mass is full", endedBy: [{ family: "landing" }] },
      { status: "found", most_kg: 0, endedBy: [{ family: "holds" }] },
    ]);
  });

  it("names the floor where the floor ends it", async () => {
    const input = asDrawn();
    const weak = input.stations.map((one) =>
      one.id === "aft-bay" ? { ...one, floor: { area_m2: 0.6, max_kgPerM2: 130 } } : one,
    );
    const answers = await fit.mostBags({ ...input, stations: weak }, ["aft-bay"]);
    // By hand: 0.6 m² × 130 kg/m² − 68 kg.
    expect(answers).toMatchObject([{ most_kg: 10, says: "then the floor of aft bay is full" }]);
  });

  it("is 80 L more fuel, whole litres each, then landing mass is full", () => {
    const answer = fit.mostFuel(asDrawn({ steps: { volume_m3: 0.001 } }));
    // By hand: 64.2 kg more is 80.25 L, 40.125 L in each tank; rounded down to 40.
    if (answer.status !== "found") throw new Error(answer.says);
    expect(answer.more_m3).toBeCloseTo(0.08, 9);
    expect(answer.tanks.map(({ volume_m3 }) => volume_m3)).toEqual([0.252, 0.252]);
    expect(answer.says).toBe("then landing mass is full");
  });

  it("says by how much the flight's fuel does not fit, and which limit alone is in the way", () => {
    const answer = fit.mostFuel(asDrawn({ burn: { taxi_kg: 10, trip_kg: 128, reserve_kg: 300 } }));
    // By hand: 2585 − 2326 + 138 = 397 kg may be aboard, 438 kg are needed.
    if (answer.status !== "none") throw new Error(answer.status);
    expect(answer.short?.most_kg).toBeCloseTo(397, 6);
    expect(answer.short?.least_kg).toBeCloseTo(438, 6);
    expect(answer.says).toBe("the flight needs 438.0 kg, and at 397.0 kg landing mass is full");
  });
});

describe("an envelope", () => {
  it("holds from take-off on: on the ramp the load may be above its top by what taxiing burns", () => {
    // By hand: 2648.6 kg on the ramp, 2638.6 at take-off; with 5 kg to taxi 2643.6, with nothing burnt all of it.
    const points = [
      { arm_m: 4.0, mass_kg: 1850 },
      { arm_m: 4.0, mass_kg: 2640 },
      { arm_m: 4.34, mass_kg: 2640 },
      { arm_m: 4.34, mass_kg: 1850 },
    ];
    const { ramp_kg: _none, ...limits } = turboprop().limits;
    const taxiing = (taxi_kg: number) =>
      fourPeople({
        envelopes: [{ id: "level", name: "Level", points }],
        limits,
        burn: { taxi_kg, trip_kg: 128 },
      });
    const above = (taxi_kg: number) =>
      fit.breaches(taxiing(taxi_kg)).map(({ family, by, when }) => [family, Number(by.toFixed(6)), when]);
    expect([10, 5, 0].map(above)).toEqual([
      [],
      [["envelope-top", 3.6, "at take-off"]],
      [["envelope-top", 8.6, "at take-off"]],
    ]);
    // 2640 − 2325 kg in the air and 10 kg to get there, down to a tenth of a litre in each tank
    const most = fit.mostFuel(taxiing(10));
    if (most.status !== "found") throw new Error(most.says);
    expect(most.fuel_kg).toBeGreaterThan(325 - 2 * 0.08);
    expect(most.fuel_kg).toBeLessThanOrEqual(325 + 1e-9);
    expect(most.says).toBe("then the top of the envelope is reached");
  });
});

describe("ballast", () => {
  it("is what moves the centre of gravity back to the limit, rounded up", () => {
    const input = turboprop({
      items: [item("pilot", 84, "seat-1"), item("surgeon", 76, "seat-2", [])],
      empty: { mass_kg: 1905, arm_m: 4.03 },
      gearMoment_kgm: 0,
    });
    const answer = fit.ballast(input, "aft-bay");
    if (answer.status !== "found") throw new Error(answer.says);
    // Below 2250 kg the limit is 4.02 m, and the empty tanks are the worst of it. By hand: 2065 kg have
    // 1905×4.03 + 160×3.62 = 8256.35 kg·m; (4.02×2065 − 8256.35)/(6.62 − 4.02) = 17.288 kg.
    expect(answer.needed_kg).toBeGreaterThanOrEqual(17.3);
    expect(
      fit.breaches({ ...input, items: [...input.items, item("b", answer.needed_kg, "aft-bay")] }),
    ).toEqual([]);
    expect(
      fit.breaches({ ...input, items: [...input.items, item("b", answer.needed_kg - 0.1, "aft-bay")] }),
    ).toMatchObject([{ family: "forward" }]);
  });

  it("says which limit is in the way where the place is too small for it", () => {
    const input = turboprop({
      items: [item("pilot", 84, "seat-1"), item("surgeon", 76, "seat-2", [])],
      empty: { mass_kg: 1905, arm_m: 4.03 },
      stations: turboprop().stations.map((one) => (one.id === "aft-bay" ? { ...one, max_kg: 10 } : one)),
    });
    const answer = fit.ballast(input, "aft-bay");
    if (answer.status !== "none") throw new Error(answer.status);
    expect(answer.because.map(({ family }) => family)).toEqual(["forward"]);
    expect(answer.conflicts.map(({ limit }) => limit.name)).toContain("the limit of aft bay");
  });
});

describe("being asked", () => {
  it("is called off by a signal, and by a flag", async () => {
    const off = { status: "stopped", reason: "cancelled" };
    expect(await fit.arrange(fourPeople(), { signal: AbortSignal.abort() })).toEqual(off);
    expect(await fit.arrange(fourPeople(), { cancelled: () => true })).toEqual(off);
    expect(await fit.mostBags(asDrawn(), undefined, { cancelled: () => true })).toEqual(off);
  });

  it("gives up when the time is over, and answers nothing", async () => {
    expect(await fit.arrange(fourPeople(), { limit_s: 0 })).toEqual({ status: "stopped", reason: "time" });
  });

  it("takes the solver's bytes where they are given", async () => {
    const bytes = readFileSync(createRequire(import.meta.url).resolve("highs/runtime"));
    const answer = await openFit({ bytes }).arrange(fourPeople());
    expect(answer.status).toBe("found");
  });

  it("says so when the solver cannot be loaded", async () => {
    const broken = openFit({ bytes: new Uint8Array([0, 1, 2, 3]) });
    await expect(broken.arrange(fourPeople())).rejects.toThrow(
      /WebAssembly, as it was given, cannot be loaded/,
    );
    // From a file that is not there; and asked again, it tries again.
    const missing = openFit({ url: new URL("./not-there.wasm", import.meta.url) });
    await expect(missing.arrange(fourPeople())).rejects.toThrow(/not-there\.wasm, cannot be loaded/);
    await expect(missing.arrange(fourPeople())).rejects.toThrow(/not-there\.wasm, cannot be loaded/);
  });

  it.each([
    ["a bag lighter than nothing", { items: [item("bag", -1, "aft-bay")] }, "bag.mass_kg"],
    ["a place that there is not", { items: [item("bag", 1, "aft-bay", ["wing"])] }, "bag.mayGo"],
    ["no envelope", { envelopes: [] }, "envelopes"],
    ["a tank that is not in the order", { order: [["left-tank"]] }, "order"],
    ["a limit that is no number", { limits: { takeOff_kg: Number.NaN } }, "limits.takeOff_kg"],
  ])("refuses %s, and names it", async (_what, change, field) => {
    const input = asDrawn(change);
    const refused = (cause: unknown): boolean => cause instanceof InputError && cause.field === field;
    expect(() => fit.mostFuel(input)).toThrowError(expect.toSatisfy(refused));
    await expect(fit.arrange(input)).rejects.toSatisfy(refused);
    await expect(fit.mostBags(input)).rejects.toSatisfy(refused);
  });
});
