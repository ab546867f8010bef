import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { extent } from "../drawing/extent.ts";
import { tailKind } from "../drawing/layout.ts";
import { faultSentence } from "../faults/fault-sentence.ts";
import { readBook } from "../read-book.ts";
import { TAILS, WINGS } from "../schema/drawn-from.ts";
import { ENGINES, GEARS } from "../schema/kinds.ts";
import { beginBook } from "./begin-book.ts";
import { drawnFrom } from "./drawn-from.ts";
import { ARCHETYPES, type Figures } from "./figures.ts";

const begin = (archetype: (typeof ARCHETYPES)[number], changed: Partial<Figures> = {}) =>
  beginBook({
    archetype,
    figures: { registration: "ZZ-NEW", type: "New 1", ...archetype.figures, ...changed },
    by: "A. Example",
    on: "2026-11-26",
  });

const faultsOf = async (text: string): Promise<readonly string[]> => {
  const result = await readBook(text, "new.yaml");
  return result.ok ? [] : result.faults.map(faultSentence);
};

describe("a book begun from a few figures", () => {
  it.each(ARCHETYPES.map((archetype) => [archetype.name, archetype] as const))(
    "is a book: %s",
    async (_, archetype) => {
      const text = begin(archetype);
      expect(await faultsOf(text)).toEqual([]);
      const result = await readBook(text, "new.yaml");
      if (!result.ok) return;
      expect(result.book.checks.length).toBeGreaterThan(archetype.id === "glider" ? 30 : 45);
    },
  );

  it("is one for any layout and any likely size: every rule of a book holds", async () => {
    const layout = fc.record({
      span_m: fc.double({ min: 7, max: 20, noNaN: true }),
      slender_1: fc.double({ min: 0.6, max: 0.95, noNaN: true }),
      height_m: fc.option(fc.double({ min: 1.5, max: 5, noNaN: true }), { nil: undefined }),
      wing: fc.constantFrom(...WINGS),
      tail: fc.constantFrom(...TAILS),
      gear: fc.constantFrom(...GEARS),
      engine: fc.constantFrom(...ENGINES),
      count: fc.constantFrom(1 as const, 2 as const),
      retractable: fc.boolean(),
      pressurised: fc.boolean(),
      tows: fc.boolean(),
      datumAft_m: fc.constantFrom(0, 1.15, -2.4),
      seats: fc.integer({ min: 1, max: 12 }),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...ARCHETYPES),
        layout,
        async (archetype, { slender_1, count, ...figures }) => {
          const engines = figures.engine === "none" ? 0 : count;
          const span_m = engines === 2 ? Math.max(9, figures.span_m) : figures.span_m;
          const length_m = span_m * (figures.engine === "none" ? slender_1 / 2 : slender_1);
          const text = begin(archetype, { ...figures, engines, span_m, length_m: Math.max(4.5, length_m) });
          expect(await faultsOf(text)).toEqual([]);
        },
      ),
      { numRuns: 12 },
    );
  });

  it.each(TAILS.flatMap((tail) => GEARS.map((gear) => [tail, gear] as const)))(
    "is one with a %s tail and a %s, with each kind of engine",
    async (tail, gear) => {
      for (const [index, engine] of ENGINES.entries()) {
        const engines = engine === "none" ? 0 : index % 2 === 0 ? 2 : 1;
        const wing = WINGS[(index + TAILS.indexOf(tail) + GEARS.indexOf(gear)) % WINGS.length] ?? "low";
        const archetype = ARCHETYPES.find(({ figures }) => figures.engine === engine) ?? ARCHETYPES[0];
        if (archetype === undefined) throw new Error("expected an archetype");
        const text = begin(archetype, { tail, gear, engine, engines, wing, retractable: engines === 2 });
        expect({ engine, wing, faults: await faultsOf(text) }).toEqual({ engine, wing, faults: [] });
      }
    },
  );

  it("counts from the datum of the handbook, which lies behind the tip of the nose or ahead of it", async () => {
    const archetype = ARCHETYPES[1];
    if (archetype === undefined) throw new Error("expected a second archetype");
    const drawn = async (datumAft_m: number) => {
      const result = await readBook(begin(archetype, { length_m: 6.9, datumAft_m }), "new.yaml");
      if (!result.ok) throw new Error("expected a book");
      return result.book;
    };
    const [tip, behind, ahead] = [await drawn(0), await drawn(1.15), await drawn(-2)];
    // by hand: the tip of the spinner is 1.15 m ahead of the datum, and the tail 6.90 − 1.15 = 5.75 m aft of it
    expect(extent(behind.geometry).fore_m).toBeCloseTo(-1.15, 6);
    expect(extent(behind.geometry).aft_m).toBeCloseTo(5.75, 6);
    expect(extent(ahead.geometry).fore_m).toBeCloseTo(2, 6);
    for (const [id, { place }] of tip.points) {
      expect(behind.points.get(id)?.place[0]).toBeCloseTo(place[0] - 1.15, 9);
      expect(behind.points.get(id)?.place.slice(1)).toEqual(place.slice(1));
    }
    for (const [index, { place }] of tip.stances.entries())
      expect(ahead.stances[index]?.place[0]).toBeCloseTo(place[0] + 2, 9);
  });

  it.each(ARCHETYPES.map((archetype) => [archetype.name, archetype] as const))(
    "has its foremost part where the datum is counted from: %s",
    (_, { figures }) => {
      const { geometry } = drawnFrom({ registration: "ZZ-NEW", type: "New 1", ...figures });
      expect(extent(geometry).fore_m).toBeCloseTo(0, 6);
    },
  );

  it("has the span and the length that were asked", async () => {
    const archetype = ARCHETYPES[1];
    if (archetype === undefined) throw new Error("expected a second archetype");
    const result = await readBook(begin(archetype, { span_m: 10.4, length_m: 6.8 }), "new.yaml");
    if (!result.ok) throw new Error("expected a book");
    const { wing, fin } = result.book.geometry;
    expect(2 * (wing.tip.y + wing.tipRound)).toBeCloseTo(10.4, 2);
    expect(fin?.span[1]).toBeCloseTo(6.8, 2);
    const { fore_m, aft_m, left_m, right_m } = extent(result.book.geometry);
    expect(aft_m - fore_m).toBeCloseTo(6.8, 2);
    expect(right_m - left_m).toBeCloseTo(10.4, 2);
  });

  it.each([
    ["conventional", 2.1],
    ["t", 2.4],
    ["v", 2.3],
  ] as const)("has the tail and the height that were asked: %s", async (tail, height_m) => {
    const archetype = ARCHETYPES[1];
    if (archetype === undefined) throw new Error("expected a second archetype");
    const result = await readBook(begin(archetype, { tail, height_m }), "new.yaml");
    if (!result.ok) throw new Error("expected a book");
    const { geometry } = result.book;
    expect(tailKind(geometry)).toBe(tail);
    const { fin, tailplane } = geometry;
    expect(Math.max(tailplane.tip.z, ...(fin?.outline ?? []).map(([, z]) => z))).toBeCloseTo(height_m, 2);
  });

  it("has no engine, no propeller and no fuel where it is a glider", async () => {
    const archetype = ARCHETYPES.find(({ id }) => id === "glider");
    if (archetype === undefined) throw new Error("expected a glider");
    const text = begin(archetype);
    const result = await readBook(text, "new.yaml");
    if (!result.ok) throw new Error("expected a book");
    const { aircraft, geometry, checks } = result.book;
    expect(aircraft).toMatchObject({ engine: "none", engines: 0, class: "glider", gear: "mono-wheel" });
    expect(geometry.propellers).toEqual([]);
    const says = checks.map(({ title, point }) => `${point} ${title}`).join("\n");
    expect(says).not.toMatch(/fuel|oil|propeller|engine|ignition|cowling|trim tab/i);
    expect(says).toMatch(/airbrake/i);
  });

  it("refuses what no aircraft measures, and says what would be right", () => {
    const [archetype] = ARCHETYPES;
    if (archetype === undefined) throw new Error("expected an archetype");
    expect(() => begin(archetype, { span_m: 0 })).toThrow(/span: expected 5 to 40 m, received 0 m/);
    expect(() => begin(archetype, { length_m: Number.NaN })).toThrow(/length: expected/);
    expect(() => begin(archetype, { datumAft_m: 11 })).toThrow(/datum: expected −10 to 10 m, received 11 m/);
    expect(() => begin(archetype, { span_m: 30, length_m: 5 })).toThrow(/length/);
  });
});
