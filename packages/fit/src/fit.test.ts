import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { breachesOf } from "./breaches.ts";
import { type FitInput, placesOf } from "./fit-input.ts";
import { withPlaces, withVolumes } from "./flight.ts";
import { openFit } from "./open-fit.ts";
import { arbitraryLoad } from "./testing/arbitrary-load.ts";
import { burntDown, worstStep } from "./testing/simulate.ts";

const fit = openFit();
const SEED = 20260314;

const good = (input: FitInput, added?: { station: string; mass_kg: number }): boolean =>
  breachesOf(input, added).length === 0;

/** Every way to put the items where they may go. */
function placements(input: FitInput): ReadonlyMap<string, string>[] {
  let all: Map<string, string>[] = [new Map()];
  for (const item of input.items) {
    all = all.flatMap((one) => placesOf(item).map((at) => new Map([...one, [item.id, at]])));
  }
  return all;
}

/** The tests below draw the same loads, from one seed: what was found for one of them is found once. */
function foundOnce<T>(find: (input: FitInput) => T): (input: FitInput) => T {
  const found = new Map<string, { readonly answer: T }>();
  return (input) => {
    const key = JSON.stringify(input);
    const known = found.get(key) ?? { answer: find(input) };
    found.set(key, known);
    return known.answer;
  };
}

const arrange = foundOnce((input) => fit.arrange(input));

const costOf = (input: FitInput, places: ReadonlyMap<string, string>) => {
  const moved = input.items.filter(({ id, at }) => places.get(id) !== at);
  return { moves: moved.length, moved_kg: moved.reduce((sum, { mass_kg }) => sum + mass_kg, 0) };
};

/** Fewest moves and the mass moved with them, by trying all; undefined where nothing fits. */
const bestByTrial = foundOnce((input): { moves: number; moved_kg: number } | undefined => {
  return placements(input)
    .filter((places) => good(withPlaces(input, places)))
    .map((places) => costOf(input, places))
    .sort((a, b) => a.moves - b.moves || a.moved_kg - b.moved_kg)[0];
});

const fullOf = (input: FitInput): ReadonlyMap<string, number> =>
  new Map(input.tanks.map(({ id, arms }) => [id, arms.at(-1)?.volume_m3 ?? 0]));

const usableOf = (input: FitInput, volumes: ReadonlyMap<string, number>): number =>
  input.tanks.reduce(
    (sum, { id, unusable_m3 }) =>
      sum + Math.max(0, (volumes.get(id) ?? 0) - unusable_m3) * input.density_kgPerM3,
    0,
  );

describe("against flying it in small steps", () => {
  it("a load that breaks no envelope is inside at every step, and one that leaves it at a step breaks it", () => {
    let inside = 0;
    let outside = 0;
    fc.assert(
      fc.property(arbitraryLoad, (input) => {
        const broken = breachesOf(input).some(({ family }) =>
          ["forward", "aft", "envelope-top", "envelope-bottom"].includes(family),
        );
        const worst = worstStep(input, 200);
        if (broken) outside += 1;
        else inside += 1;
        if (!broken) expect(worst).toBeGreaterThan(-1e-9);
        // Steps of a few hundred grams miss no more than this.
        else expect(worst).toBeLessThan(0.005);
      }),
      { seed: SEED, numRuns: 200 },
    );
    expect(inside).toBeGreaterThan(50);
    expect(outside).toBeGreaterThan(50);
  });
});

describe("seating and stowage, against trying every one", () => {
  it("finds one exactly when there is one, with the fewest moves and the least mass moved", async () => {
    const seen = { as: 0, moved: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(arbitraryLoad, async (input) => {
        const best = bestByTrial(input);
        const answer = await arrange(input);
        if (best === undefined) {
          expect(answer.status).toBe("none");
          seen.none += 1;
          return;
        }
        if (answer.status !== "found") throw new Error(`${JSON.stringify(best)} was missed`);
        expect(answer.moves.length).toBe(best.moves);
        expect(answer.moved_kg).toBeCloseTo(best.moved_kg, 6);
        expect(good(withPlaces(input, new Map(Object.entries(answer.places))))).toBe(true);
        seen[best.moves === 0 ? "as" : "moved"] += 1;
      }),
      { seed: SEED, numRuns: 160 },
    );
    expect(seen.as).toBeGreaterThan(10);
    expect(seen.moved).toBeGreaterThan(10);
    expect(seen.none).toBeGreaterThan(10);
  });

  it("finds the next best after those that are known, and none exactly when there is none", async () => {
    const seen = { another: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(arbitraryLoad, async (input) => {
        const first = await arrange(input);
        if (first.status !== "found" || first.moves.length === 0) return;
        const allGood = placements(input).filter((places) => good(withPlaces(input, places)));
        const known = [first];
        for (let more = 0; more < 3; more += 1) {
          const other = allGood.filter((places) =>
            known.every(({ moves }) => moves.some(({ item, to }) => places.get(item) !== to)),
          );
          const [best] = other
            .map((places) => costOf(input, places))
            .sort((a, b) => a.moves - b.moves || a.moved_kg - b.moved_kg);
          const answer = await fit.arrangeOtherwise(input, known);
          if (best === undefined) {
            expect(answer).toBeUndefined();
            seen.none += 1;
            return;
          }
          if (answer?.status !== "found") throw new Error(`${JSON.stringify(best)} was missed`);
          expect(answer.moves.length).toBe(best.moves);
          expect(answer.moved_kg).toBeCloseTo(best.moved_kg, 6);
          const places = new Map(Object.entries(answer.places));
          expect(good(withPlaces(input, places))).toBe(true);
          expect(other.some((one) => input.items.every(({ id }) => one.get(id) === places.get(id)))).toBe(
            true,
          );
          seen.another += 1;
          known.push(answer);
        }
      }),
      { seed: SEED, numRuns: 160 },
    );
    expect(seen.another).toBeGreaterThan(10);
    expect(seen.none).toBeGreaterThan(5);
  });

  it("puts a load right with nothing moved: the fewest things left behind, the least fuel out, the least ballast", async () => {
    const seen = { left: 0, fuel: 0, ballast: 0 };
    await fc.assert(
      fc.asyncProperty(arbitraryLoad, async (input) => {
        if (good(input)) return;
        const found = await fit.otherWays(input);
        if ("status" in found) throw new Error("stopped");
        const loose = input.items.filter(({ mayStay }) => mayStay === true);
        const [best] = Array.from({ length: 2 ** loose.length }, (_, bits) =>
          loose.filter((_item, n) => (bits >> n) % 2 === 1),
        )
          .slice(1)
          .filter((set) => good({ ...input, items: input.items.filter((item) => !set.includes(item)) }))
          .map((set) => ({ count: set.length, kg: set.reduce((sum, { mass_kg }) => sum + mass_kg, 0) }))
          .sort((a, b) => a.count - b.count || a.kg - b.kg);
        expect(found.leaveBehind?.items.length).toBe(best?.count);
        expect(found.leaveBehind?.mass_kg).toBe(best?.kg);
        expect(found.leaveBehind?.moves ?? []).toEqual([]);
        if (best !== undefined) seen.left += 1;
        const now = new Map(input.tanks.map(({ id, volume_m3 }) => [id, volume_m3]));
        const aboard = usableOf(input, now);
        const fitsWith = (fuel_kg: number) =>
          good(withVolumes(input, Object.fromEntries(burntDown(input, now, aboard - fuel_kg))));
        const grid = Array.from({ length: 20 }, (_, n) => (aboard * n) / 20);
        const most_kg = found.lessFuel?.fuel_kg ?? Number.NEGATIVE_INFINITY;
        expect(grid.filter((fuel_kg) => fuel_kg > most_kg + 0.1 && fitsWith(fuel_kg))).toEqual([]);
        if (found.lessFuel !== undefined) {
          seen.fuel += 1;
          expect(good(withVolumes(input, found.lessFuel.volumes_m3))).toBe(true);
          expect(found.lessFuel.moves).toEqual([]);
        }
        const { ballast } = found;
        const lighter = grid.map((_, n) => n * 5).filter((kg) => kg < (ballast?.needed_kg ?? Infinity) - 0.1);
        for (const { id: station, holds } of input.stations) {
          const free = input.items.filter(({ at }) => at === station).length < (holds ?? Infinity);
          if (free) expect(lighter.filter((mass_kg) => good(input, { station, mass_kg }))).toEqual([]);
        }
        if (ballast !== undefined) {
          seen.ballast += 1;
          expect(good(input, { station: ballast.station, mass_kg: ballast.needed_kg })).toBe(true);
        }
      }),
      { seed: SEED, numRuns: 130 },
    );
    expect(seen.left).toBeGreaterThan(5);
    expect(seen.fuel).toBeGreaterThan(2);
    expect(seen.ballast).toBeGreaterThan(2);
  });

  it("where nothing fits, leaves behind the fewest things, of as few the least mass", async () => {
    let left = 0;
    await fc.assert(
      fc.asyncProperty(arbitraryLoad, async (input) => {
        if (bestByTrial(input) !== undefined) return;
        const answer = await arrange(input);
        if (answer.status !== "none") throw new Error("a placement that trying did not find");
        const loose = input.items.filter(({ mayStay }) => mayStay === true);
        const sets = Array.from({ length: 2 ** loose.length }, (_, bits) =>
          loose.filter((_item, n) => (bits >> n) % 2 === 1),
        ).slice(1);
        const [best] = sets
          .map((set) => ({ set, kg: set.reduce((sum, { mass_kg }) => sum + mass_kg, 0) }))
          .filter(
            ({ set }) =>
              bestByTrial({ ...input, items: input.items.filter((item) => !set.includes(item)) }) !==
              undefined,
          )
          .sort((a, b) => a.set.length - b.set.length || a.kg - b.kg);
        const found = answer.lastResort.leaveBehind;
        expect(found?.items.length).toBe(best?.set.length);
        expect(found?.mass_kg).toBe(best?.kg);
        if (best !== undefined) left += 1;
      }),
      { seed: SEED, numRuns: 130 },
    );
    expect(left).toBeGreaterThan(5);
  });

  it("where nothing fits, takes out the least fuel: with a step more nothing fits, with what it says it does", async () => {
    let taken = 0;
    await fc.assert(
      fc.asyncProperty(arbitraryLoad, async (input) => {
        if (bestByTrial(input) !== undefined) return;
        const answer = await arrange(input);
        if (answer.status !== "none") throw new Error("a placement that trying did not find");
        const now = new Map(input.tanks.map(({ id, volume_m3 }) => [id, volume_m3]));
        const aboard = usableOf(input, now);
        const possible = (fuel: number): boolean =>
          bestByTrial(withVolumes(input, Object.fromEntries(burntDown(input, now, aboard - fuel)))) !==
          undefined;
        const found = answer.lastResort.lessFuel;
        const grid = Array.from({ length: 21 }, (_, n) => (aboard * n) / 20);
        if (found === undefined) expect(grid.some(possible)).toBe(false);
        else {
          taken += 1;
          expect(possible(found.fuel_kg)).toBe(true);
          const more = grid.filter((fuel) => fuel > found.fuel_kg + 0.1);
          for (const fuel of [found.fuel_kg + 0.1001, ...more]) {
            if (fuel < aboard) expect(possible(fuel)).toBe(false);
          }
        }
      }),
      { seed: SEED, numRuns: 60 },
    );
    expect(taken).toBeGreaterThan(3);
  });
});

describe("fuel, against trying many amounts", () => {
  it("is the most: it fits, a little more does not, nor does any amount above; where there is none, none fits", () => {
    const seen = { found: 0, none: 0 };
    fc.assert(
      fc.property(arbitraryLoad, (input) => {
        const full = fullOf(input);
        const capacity = usableOf(input, full);
        const fits = (fuel: number): boolean =>
          good(withVolumes(input, Object.fromEntries(burntDown(input, full, capacity - fuel))));
        const grid = Array.from({ length: 41 }, (_, n) => (capacity * n) / 40);
        const answer = fit.mostFuel(input);
        seen[answer.status] += 1;
        if (answer.status === "none") {
          expect(grid.some(fits)).toBe(false);
          return;
        }
        const volumes = Object.fromEntries(answer.tanks.map(({ tank, volume_m3 }) => [tank, volume_m3]));
        expect(good(withVolumes(input, volumes))).toBe(true);
        expect(usableOf(input, new Map(Object.entries(volumes)))).toBeCloseTo(answer.fuel_kg, 6);
        // Each tank is rounded down by a tenth of a litre at most.
        const above = answer.fuel_kg + 0.1e-3 * input.tanks.length * input.density_kgPerM3 + 1e-6;
        for (const fuel of [above, ...grid.filter((one) => one > above)]) {
          if (fuel <= capacity) expect(fits(fuel)).toBe(false);
        }
      }),
      { seed: SEED, numRuns: 130 },
    );
    expect(seen.found).toBeGreaterThan(10);
    expect(seen.none).toBeGreaterThan(10);
  });
});

describe("the most in one place, and ballast, against trying many masses", () => {
  it("no mass that was tried is above the most or below the least; the two themselves fit", async () => {
    const seen = { found: 0, none: 0, needed: 0 };
    await fc.assert(
      fc.asyncProperty(arbitraryLoad, fc.constantFrom("s0", "s1", "s2", "s3"), async (input, station) => {
        const fits = (mass_kg: number): boolean => good(input, { station, mass_kg });
        const holds = input.stations.find(({ id }) => id === station)?.holds ?? Number.POSITIVE_INFINITY;
        const free = input.items.filter(({ at }) => at === station).length < holds;
        const grid = free ? Array.from({ length: 45 }, (_, n) => n * 5) : [0];
        const answers = await fit.mostBags(input, [station]);
        if ("status" in answers) throw new Error("stopped");
        const [answer] = answers;
        const ballast = fit.ballast(input, station);
        expect(ballast.status).toBe(answer?.status);
        if (answer?.status !== "found" || ballast.status !== "found") {
          seen.none += 1;
          expect(grid.some(fits)).toBe(false);
          return;
        }
        seen.found += 1;
        expect(fits(answer.most_kg)).toBe(true);
        expect(fits(ballast.needed_kg)).toBe(true);
        expect(fits(ballast.most_kg)).toBe(true);
        expect(ballast.needed_kg).toBe(answer.least_kg);
        if (ballast.needed_kg > 0) seen.needed += 1;
        const outside = (mass: number): boolean =>
          mass > answer.most_kg + 0.1 || mass < answer.least_kg - 0.1;
        const justBeyond = free ? [answer.most_kg + 0.1001] : [];
        const tried = [...grid, ...justBeyond, Math.max(0, answer.least_kg - 0.1001)];
        expect(tried.filter((mass) => outside(mass) && fits(mass))).toEqual([]);
        const between = grid.filter((mass) => mass > ballast.needed_kg && mass < ballast.most_kg);
        expect(between.filter((mass) => !fits(mass))).toEqual([]);
      }),
      { seed: SEED, numRuns: 160 },
    );
    expect(seen.found).toBeGreaterThan(10);
    expect(seen.none).toBeGreaterThan(10);
    expect(seen.needed).toBeGreaterThan(2);
  });
});
