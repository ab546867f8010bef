import { emptyState } from "@witnessmark/ledger";
import fc from "fast-check";
import { expect, it } from "vitest";
import {
  inUnit,
  itemsAt,
  loadOf,
  massAt_kg,
  swapped,
  volumeIn,
  withItem,
  withLoad,
  withoutItem,
  withoutStation,
  withTank,
  withTanks,
} from "./plan-load.ts";

const kg = (value: number) => ({ value, unit: "kg" }) as const;
const person = (id: string, station: string, value: number) =>
  ({ id, station, what: "Someone", mass: kg(value), known: "stated" }) as const;
const flight = { id: "f", from: "ZZTW", to: "ZZQN", offBlocks: "2026-11-12T08:30:00Z" };
const nothing = loadOf(flight);

it("a load is put in a new flight; the one before stays as it was", () => {
  const load = withItem(nothing, person("a", "seat-1", 84));
  const next = withLoad(flight, emptyState("ZZ-SKR"), load);
  expect(loadOf(next).items).toHaveLength(1);
  expect(loadOf(flight).items).toHaveLength(0);
  expect(next.id).toBe("f");
});

it("an item with the id of one aboard takes its place, and keeps its turn", () => {
  const load = withItem(withItem(nothing, person("a", "bay", 10)), person("b", "bay", 20));
  const heavier = withItem(load, person("a", "bay", 12));
  expect(itemsAt(heavier, "bay").map(({ id, mass }) => [id, mass.value])).toEqual([
    ["a", 12],
    ["b", 20],
  ]);
  expect(massAt_kg(heavier, "bay")).toBe(32);
  expect(itemsAt(withoutItem(heavier, "a"), "bay").map(({ id }) => id)).toEqual(["b"]);
  expect(withoutStation(heavier, "bay").items).toEqual([]);
});

it("a mass counts in the unit in which it was said", () => {
  const load = withItem(nothing, { ...person("a", "seat-1", 0), mass: { value: 200, unit: "lb" } });
  expect(massAt_kg(load, "seat-1")).toBeCloseTo(90.718474, 9); // 200 × 0.45359237, NIST SP 811
});

it("what is no mass adds nothing, and does not break the sum", () => {
  const load = withItem(nothing, { ...person("a", "seat-1", 0), mass: { value: 20, unit: "L" } });
  expect(massAt_kg(load, "seat-1")).toBe(0);
});

it("two who change seats both move, and nothing else does", () => {
  const load = [person("a", "seat-1", 84), person("b", "seat-2", 76), person("c", "seat-3", 68)].reduce(
    withItem,
    nothing,
  );
  const after = swapped(load, "seat-1", "seat-2");
  expect(after.items.map(({ id, station }) => [id, station])).toEqual([
    ["a", "seat-2"],
    ["b", "seat-1"],
    ["c", "seat-3"],
  ]);
});

it("fuel for all tanks is spread level, and what a small one cannot hold goes into the others", () => {
  const tanks = [
    { id: "left", capacity_m3: 0.32 },
    { id: "right", capacity_m3: 0.32 },
    { id: "belly", capacity_m3: 0.05 },
  ];
  const load = withTanks(nothing, tanks, 300, "L");
  expect(volumeIn(load, "belly")?.value).toBeCloseTo(50, 9);
  expect(volumeIn(load, "left")?.value).toBeCloseTo(125, 9);
  expect(volumeIn(load, "right")?.value).toBeCloseTo(125, 9);
});

it("nothing is lost and nothing made when fuel is spread", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 1, maxLength: 5 }),
      fc.double({ min: 0, max: 6_000, noNaN: true }),
      (capacities, total) => {
        const tanks = capacities.map((capacity_m3, index) => ({ id: `t${index}`, capacity_m3 }));
        const load = withTanks(nothing, tanks, total, "L");
        const sum = load.fuel.reduce((all, { volume }) => all + volume.value, 0);
        expect(Math.abs(sum - total)).toBeLessThanOrEqual(1e-6 * Math.max(1, total));
      },
    ),
  );
});

it("a tank that is said again is said once", () => {
  const load = withTank(withTank(nothing, "left", { value: 100, unit: "L" }), "left", {
    value: 40,
    unit: "USgal",
  });
  expect(load.fuel).toEqual([{ tank: "left", volume: { value: 40, unit: "USgal" } }]);
  expect(inUnit({ value: 40, unit: "USgal" }, "L")).toBeCloseTo(151.4164714, 6); // 231 in³, NIST SP 811
});
