import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { faultSentence } from "../faults/fault-sentence.ts";
import { readBook } from "../read-book.ts";
import { beginBook } from "./begin-book.ts";
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
      expect(result.book.checks.length).toBeGreaterThan(45);
    },
  );

  it("is one for any layout and any likely size: every rule of a book holds", async () => {
    const layout = fc.record({
      span_m: fc.double({ min: 7, max: 20, noNaN: true }),
      slender_1: fc.double({ min: 0.6, max: 0.95, noNaN: true }),
      wing: fc.constantFrom("high" as const, "low" as const),
      gear: fc.constantFrom("nose-wheel" as const, "tail-wheel" as const),
      engine: fc.constantFrom("piston" as const, "turboprop" as const),
      engines: fc.constantFrom(1 as const, 2 as const),
      retractable: fc.boolean(),
      pressurised: fc.boolean(),
      tows: fc.boolean(),
      seats: fc.integer({ min: 1, max: 12 }),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...ARCHETYPES),
        layout,
        async (archetype, { slender_1, ...figures }) => {
          const span_m = figures.engines === 2 ? Math.max(9, figures.span_m) : figures.span_m;
          const text = begin(archetype, { ...figures, span_m, length_m: span_m * slender_1 });
          expect(await faultsOf(text)).toEqual([]);
        },
      ),
      { numRuns: 8 },
    );
  });

  it("has the span and the length that were asked", async () => {
    const archetype = ARCHETYPES[1];
    if (archetype === undefined) throw new Error("expected a second archetype");
    const result = await readBook(begin(archetype, { span_m: 10.4, length_m: 6.8 }), "new.yaml");
    if (!result.ok) throw new Error("expected a book");
    const { wing, fin } = result.book.geometry;
    expect(2 * (wing.tip.y + wing.tipRound)).toBeCloseTo(10.4, 2);
    expect(fin?.span[1]).toBeCloseTo(6.8, 2);
  });

  it("refuses what no aircraft measures, and says what would be right", () => {
    const [archetype] = ARCHETYPES;
    if (archetype === undefined) throw new Error("expected an archetype");
    expect(() => begin(archetype, { span_m: 0 })).toThrow(/span: expected 5 to 40 m, received 0 m/);
    expect(() => begin(archetype, { length_m: Number.NaN })).toThrow(/length: expected/);
    expect(() => begin(archetype, { span_m: 30, length_m: 5 })).toThrow(/length/);
  });
});
