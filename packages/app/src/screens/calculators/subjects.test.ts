import { quantities } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { bySubject, found } from "./subjects.ts";

const groups = bySubject(quantities.values());
const idsOf = (of: typeof groups) => of.flatMap((group) => group.quantities.map(({ id }) => id));

describe("the list of calculators", () => {
  it("has every quantity of the registry, each once", () => {
    expect(idsOf(groups).toSorted()).toEqual([...quantities.keys()].toSorted());
  });

  it("puts a quantity under the subject that a pilot would look in", () => {
    const subjectOfId = (id: string) =>
      groups.find((group) => group.quantities.some((quantity) => quantity.id === id))?.subject;
    expect(subjectOfId("density-altitude")).toBe("Density altitude and altimeter");
    expect(subjectOfId("oxygen-duration")).toBe("Oxygen");
    expect(subjectOfId("fuel-imbalance")).toBe("Fuel");
    expect(subjectOfId("centre-of-gravity")).toBe("Load and balance");
    expect(subjectOfId("sunset")).toBe("Sun and twilight");
  });

  it("puts what is only a cross-check after what gives the answer", () => {
    for (const group of groups) {
      const marks = group.quantities.map(({ crossCheckOnly }) => crossCheckOnly === true);
      expect(marks).toEqual(marks.toSorted());
    }
  });

  it("finds by words of title, id and inputs, in any order and case", () => {
    expect(idsOf(found(groups, "SETTING elevation pressure alt"))).toContain("pressure-altitude");
    expect(idsOf(found(groups, "bank"))).toContain("load-factor-in-turn");
    expect(found(groups, "no such thing anywhere")).toEqual([]);
    expect(found(groups, "  ")).toBe(groups);
  });
});
