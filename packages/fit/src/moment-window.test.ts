import { type BurnPath, burnPath, envelopeAlongBurn } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FitInput } from "./fit-input.ts";
import { flightOf } from "./flight.ts";
import { momentWindow } from "./moment-window.ts";
import { openFit } from "./open-fit.ts";
import { fourPeople } from "./testing/aircraft.ts";
import { arbitraryLoad } from "./testing/arbitrary-load.ts";
import { worstStep } from "./testing/simulate.ts";

/** The flight from take-off on, its moment changed, by the engine. */
function pathWith(input: FitInput, change_kgm: number): BurnPath {
  const at = (id: string): number => input.stations.find((station) => station.id === id)?.arm_m ?? 0;
  return burnPath({
    withoutFuel: [
      { ...input.empty, extraMoment_kgm: change_kgm },
      ...input.items.map((item) => ({ mass_kg: item.mass_kg, arm_m: at(item.at) })),
    ],
    tanks: input.tanks,
    density_kgPerM3: input.density_kgPerM3,
    order: input.order,
    burns: [],
  });
}

describe("the window of the moment", () => {
  it("ends where the engine says that the flight leaves the envelope: a hair inside is in, a hair beyond is out", () => {
    let turned = 0;
    fc.assert(
      fc.property(arbitraryLoad, (given) => {
        const input = { ...given, gearMoment_kgm: 0, burn: { ...given.burn, taxi_kg: 0 } };
        const inside = (change_kgm: number): boolean =>
          input.envelopes.every(
            (envelope) => envelopeAlongBurn(pathWith(input, change_kgm), envelope).inside,
          );
        const flight = flightOf(input);
        const { along } = momentWindow(input, flight);
        const within = (change_kgm: number): boolean =>
          along.some(({ low, high }) => change_kgm >= low && change_kgm <= high);
        for (const { low, high } of along) {
          if (high - low < 1e-3) continue;
          for (const change of [low + 1e-6, high - 1e-6, (low + high) / 2]) expect(inside(change)).toBe(true);
          for (const change of [low - 1e-4, high + 1e-4]) expect(inside(change)).toBe(within(change));
          turned += 1;
        }
        if (along.length === 0)
          for (const change of [-100, -30, 0, 30, 100]) expect(inside(change)).toBe(false);
      }),
      { seed: 20260314, numRuns: 400 },
    );
    expect(turned).toBeGreaterThan(50);
  });

  it("sees where the arm turns between two rows of a tank's table, and so does the most in one place", async () => {
    // The kit stays behind: the bag in the tail locker may be so much heavier before the aft limit is reached.
    const load = fourPeople({ steps: { mass_kg: 0.001 } });
    const input = { ...load, items: load.items.filter(({ id }) => id !== "kit") };
    const wide = input.stations.map((one) => ({ ...one, max_kg: 500 }));
    const roomy = { ...input, stations: wide.map(({ floor: _, ...one }) => one), groups: [] };
    const answers = await openFit().mostBags(roomy, ["tail-locker"]);
    if ("status" in answers) throw new Error("stopped");
    const [answer] = answers;
    if (answer?.status !== "found") throw new Error(answer?.says);
    expect(answer.says).toBe("then the aft limit is reached");
    const with_ = (more_kg: number): FitInput => ({
      ...roomy,
      items: roomy.items.map((one) => (one.id === "bag" ? { ...one, mass_kg: one.mass_kg + more_kg } : one)),
    });
    expect(worstStep(with_(answer.most_kg), 20_000)).toBeGreaterThan(-1e-9);
    expect(worstStep(with_(answer.most_kg + 0.01), 20_000)).toBeLessThan(0);
    // At the rows themselves there would still be room: what ends it lies between them.
    const rows = flightOf(with_(answer.most_kg)).paths[1]?.states.map(({ arm_m }) => 4.32 - arm_m) ?? [];
    expect(Math.min(...rows)).toBeGreaterThan(1e-6);
  });
});
