import { readFileSync } from "node:fs";
import { loadFigures } from "@witnessmark/assess";
import { demoFlight } from "@witnessmark/assess/testing/demo-flight";
import { type Book, readBook } from "@witnessmark/book";
import { beforeAll, describe, expect, it } from "vitest";
import { boxOf, chartRange, chartScale, clearOfForwardEdge, forwardEdge } from "./envelope-layout.ts";
import { flightPicture } from "./envelope-picture.ts";

let book: Book;
beforeAll(async () => {
  const text = readFileSync(new URL("../../../../../books/zz-skr.yaml", import.meta.url), "utf8");
  const read = await readBook(text, "zz-skr.yaml");
  if (!read.ok) throw new Error("the demo's book has faults");
  book = read.book;
});

/** As wide as a phone leaves, and as a tablet. */
const PLOTS = {
  phone: { left: 50, right: 286, top: 22, bottom: 258 },
  tablet: { left: 62, right: 440, top: 22, bottom: 400 },
} as const;

/** The demo's flight with so much in the tail locker: the more, the further back it lies and the less is left. */
function pictured(device: keyof typeof PLOTS, bags_kg: number) {
  const { plan } = demoFlight;
  if (plan?.load === undefined) throw new Error("the demo's flight has a load");
  const bags = {
    id: "bags",
    station: "tail-locker",
    what: "Bags",
    mass: { value: bags_kg, unit: "kg" },
    known: "weighed",
  } as const;
  const figures = loadFigures(book, {
    ...plan,
    load: { ...plan.load, items: [...plan.load.items, bags] },
  });
  const points = figures.envelope?.points ?? [];
  const limit_kg = book.loading?.limits.takeOff_kg ?? Number.NaN;
  const scale = chartScale(chartRange(points, figures.states, [limit_kg]), PLOTS[device], {
    mass: "kg",
    arm: "m",
  });
  const units = { mass: "kg", volume: "L", arm: "m", margin: "mm", temperature: "degC" } as const;
  return { picture: flightPicture(scale, figures, units, device === "phone"), scale, points };
}

describe("what is left to the mass limits", () => {
  it.each(["phone", "tablet"] as const)("never lies on the forward edge, on a %s", (device) => {
    for (let bags_kg = 0; bags_kg <= 100; bags_kg += 5) {
      const { picture, scale, points } = pictured(device, bags_kg);
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
