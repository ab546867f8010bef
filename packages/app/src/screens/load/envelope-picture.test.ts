import { loadFigures } from "@witnessmark/assess";
import { clinicPlan } from "@witnessmark/assess/testing/clinic-load";
import { demoFlight } from "@witnessmark/assess/testing/demo-flight";
import type { FlightPlan } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { chartRange, chartScale, clearOfForwardEdge, forwardEdge } from "./envelope-layout.ts";
import { isDot, MARGINS } from "./envelope-picture.ts";
import { worstBetween } from "./phase-rows.ts";
import { boxAbout, boxOf, shared } from "./place-words.ts";
import { DEMO_BOOK, PLOTS, pictured, scaleOf } from "./testing/demo-load.ts";

/** The demo's flight with so much in the tail locker: the more, the further back it lies and the less is left. */
function withBags(device: keyof typeof PLOTS, bags_kg: number, fuel_L?: number) {
  const { plan } = demoFlight;
  if (plan?.load === undefined) throw new Error("the demo's flight has a load");
  const bags = {
    id: "bags",
    station: "tail-locker",
    what: "Bags",
    mass: { value: bags_kg, unit: "kg" },
    known: "weighed",
  } as const;
  return pictureOf(device, {
    ...plan,
    load: {
      ...plan.load,
      items: [...plan.load.items, bags],
      fuel:
        fuel_L === undefined
          ? plan.load.fuel
          : plan.load.fuel.map(({ tank }) => ({ tank, volume: { value: fuel_L, unit: "L" } })),
    },
  });
}

function pictureOf(device: keyof typeof PLOTS, plan: FlightPlan) {
  const figures = loadFigures(DEMO_BOOK, plan);
  const points = figures.envelope?.points ?? [];
  return { picture: pictured(figures, device), scale: scaleOf(figures, device), points, figures };
}

describe("what is left to the mass limits", () => {
  it.each(["phone", "tablet"] as const)("never lies on the forward edge, on a %s", (device) => {
    for (let bags_kg = 0; bags_kg <= 100; bags_kg += 5) {
      const { picture, scale, points } = withBags(device, bags_kg);
      for (const name of ["take-off", "landing"] as const) {
        const words = picture.margins[name];
        expect(words.text).toMatch(/\d kg/);
        const box = boxOf(words);
        const edge = forwardEdge(scale, points, box);
        const isClear = edge === undefined || box.right < edge[0] || box.left > edge[1];
        expect([bags_kg, name, isClear]).toEqual([bags_kg, name, true]);
        expect(box.left).toBeGreaterThanOrEqual(scale.plot.left - 1e-9);
      }
    }
  });
});

describe("the words of the picture", () => {
  it.each(["phone", "tablet"] as const)("lie on no other, and on no mark, on a %s", (device) => {
    for (let bags_kg = 0; bags_kg <= 100; bags_kg += 4) {
      for (const fuel_L of [150, 212, 300]) {
        const { picture, scale } = withBags(device, bags_kg, fuel_L);
        const words = [
          ...MARGINS.map((name) => picture.margins[name]),
          ...picture.moments.map(({ name }) => name),
        ].filter(({ text }) => text !== "");
        const boxes = words.map((one) => ({ text: one.text, box: boxOf(one) }));
        const marks = picture.moments.map(({ at, x, y }) => ({
          text: `the mark of ${at}`,
          box: boxAbout(x, y, isDot(at) ? 3 : 13),
        }));
        const covered = boxes.flatMap((one, index) =>
          [...boxes.slice(index + 1), ...marks]
            .filter(({ box }) => shared(one.box, box) > 0)
            .map(({ text }) => `${one.text} on ${text}`),
        );
        expect([bags_kg, fuel_L, covered]).toEqual([bags_kg, fuel_L, []]);
        for (const { box } of boxes) {
          expect(box.left).toBeGreaterThanOrEqual(scale.plot.left - 1e-9);
          expect(box.top).toBeGreaterThanOrEqual(scale.plot.top - 1e-9);
          expect(box.bottom).toBeLessThanOrEqual(scale.plot.bottom + 1e-9);
        }
      }
    }
  });

  it.each(["phone", "tablet"] as const)("have leaders that do not cross, on a %s", (device) => {
    for (let bags_kg = 0; bags_kg <= 100; bags_kg += 4) {
      const { picture } = withBags(device, bags_kg);
      const leaders = [...picture.leaders.matchAll(/M([\d.-]+),([\d.-]+)L([\d.-]+),([\d.-]+)/g)].map(
        ([, ...ends]) => ends.map(Number),
      );
      expect(leaders.length).toBeGreaterThan(1);
      for (const [index, one] of leaders.entries())
        for (const other of leaders.slice(index + 1)) expect(cross(one, other)).toBe(false);
    }
  });

  it("draw what the headline speaks of from the worst point, and mark it", () => {
    // as of the load that is behind the limit where the tanks pass 120 L, with the gear up
    const { picture, figures, scale } = pictureOf("tablet", clinicPlan);
    const worst = worstBetween(figures);
    if (worst === undefined) throw new Error("the demo's gear moves the centre of gravity when it comes up");
    expect(worst).toMatchObject({ edge: "aft", gearUp: true });
    expect(picture.margins.behind.text).toBe(`${Math.ceil(-worst.left * 1000)} mm over`);
    const mark = picture.moments.find(({ at }) => at === "worst");
    expect(mark?.x).toBeCloseTo(scale.x(worst.arm_m), 6);
    expect(mark?.name.text).toBe("Worst");
  });
});

/** Whether two straight lines, each from one end to the other, meet between their ends. */
function cross(one: readonly number[], other: readonly number[]): boolean {
  const side = ([ax = 0, ay = 0, bx = 0, by = 0]: readonly number[], x = 0, y = 0) =>
    Math.sign((bx - ax) * (y - ay) - (by - ay) * (x - ax));
  return (
    side(one, other[0], other[1]) * side(one, other[2], other[3]) < 0 &&
    side(other, one[0], one[1]) * side(other, one[2], one[3]) < 0
  );
}

describe("words on the forward edge", () => {
  const EDGE = [
    { arm_m: 4.0, mass_kg: 2000 },
    { arm_m: 4.1, mass_kg: 2700 },
    { arm_m: 4.36, mass_kg: 2700 },
    { arm_m: 4.36, mass_kg: 2000 },
  ];
  const scale = chartScale(chartRange(EDGE, [], [2700]), PLOTS.tablet, { mass: "kg", arm: "m" });
  // the edge is at 4.05 m half-way up, at 2350 kg
  const on = { x: scale.x(4.05) + 20, y: scale.y(2350), anchor: "end", text: "28 kg" } as const;

  it("go ahead of it where there is room, else behind it, and stay where they do not lie on it", () => {
    const moved = { ...on, ...clearOfForwardEdge(scale, EDGE, on, on.x + 12) };
    expect(moved.anchor).toBe("end");
    expect(moved.x).toBeLessThan(scale.x(4.05));
    const long = { ...on, text: "1,128 kg over" };
    const behind = clearOfForwardEdge(scale, EDGE, long, on.x + 12);
    expect(behind.anchor).toBe("start");
    // and beyond its line, that it does not lie on that either
    expect(behind.x).toBeGreaterThanOrEqual(on.x + 12);
    const far = { ...on, x: scale.x(4.3) };
    expect(clearOfForwardEdge(scale, EDGE, far, far.x + 12)).toEqual({ x: far.x, anchor: "end" });
  });
});
