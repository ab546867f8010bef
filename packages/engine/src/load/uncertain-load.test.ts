import { describe, expect, it } from "vitest";
import { toSI } from "../units/convert.ts";
import { type Envelope, pointInEnvelope } from "./envelope.ts";
import { MASS_SPREADS, massSpread, STANDARD_MASSES } from "./standard-masses.ts";
import {
  probabilityOfEdges,
  probabilityOfMassLimit,
  probabilityWithin,
  type UncertainItem,
  uncertainState,
} from "./uncertain-load.ts";

/** A generator with a seed: mulberry32, and two normal numbers of two uniform ones (Box and Muller). */
function seeded(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const spread = (known: "weighed" | "stated" | "standard"): number =>
  massSpread("passenger", known).standardUncertainty_kg;

const ITEMS: readonly UncertainItem[] = [
  { mass_kg: 1000, arm_m: 2.35, standardUncertainty_kg: 2 },
  { mass_kg: 85, arm_m: 2.1, standardUncertainty_kg: spread("weighed") },
  { mass_kg: 86, arm_m: 2.1, standardUncertainty_kg: spread("standard") },
  { mass_kg: 104, arm_m: 3.1, standardUncertainty_kg: spread("standard") },
  { mass_kg: 80, arm_m: 3.1, standardUncertainty_kg: spread("stated") },
  { mass_kg: 30, arm_m: 3.8, standardUncertainty_kg: 4.5 },
  { mass_kg: 120, arm_m: 2.5, standardUncertainty_kg: 5 },
];

/** Edges that stand and edges that lean, near the loading. */
const ENVELOPE: Envelope = {
  points: [
    { arm_m: 2.2, mass_kg: 900 },
    { arm_m: 2.55, mass_kg: 900 },
    { arm_m: 2.47, mass_kg: 1540 },
    { arm_m: 2.32, mass_kg: 1540 },
    { arm_m: 2.2, mass_kg: 1200 },
  ],
};

const DRAWS = 200_000;
const SEED = 20260925;
/** Five standard errors of a share of that many draws, at most. */
const ERROR = 5 * Math.sqrt(0.25 / DRAWS);

interface Drawn {
  readonly mass_kg: number;
  readonly arm_m: number;
}

function draw(items: readonly UncertainItem[]): readonly Drawn[] {
  const normal = seeded(SEED);
  return Array.from({ length: DRAWS }, () => {
    let mass_kg = 0;
    let moment_kgm = 0;
    for (const item of items) {
      const mass = item.mass_kg + item.standardUncertainty_kg * normal();
      mass_kg += mass;
      moment_kgm += mass * item.arm_m;
    }
    return { mass_kg, arm_m: moment_kgm / mass_kg };
  });
}

const share = (drawn: readonly Drawn[], kept: (one: Drawn) => boolean): number =>
  drawn.reduce((sum, one) => sum + (kept(one) ? 1 : 0), 0) / drawn.length;

describe(`against ${DRAWS} draws with the seed ${SEED}`, () => {
  const state = uncertainState(ITEMS);
  const drawn = draw(ITEMS);

  it.each([1480, 1505, 1540, 1600])("a mass limit of %d kg is kept as often as it says", (limit_kg) => {
    expect(
      Math.abs(probabilityOfMassLimit(state, limit_kg) - share(drawn, (one) => one.mass_kg <= limit_kg)),
    ).toBeLessThan(ERROR);
  });

  it("each edge is kept as often as it says, leaning or not", () => {
    const edges = probabilityOfEdges(state, ENVELOPE);
    expect(edges.map(({ bounds }) => bounds)).toEqual(["forward", "lower", "aft", "upper", "forward"]);
    const seen = edges.filter(({ from, to, bounds, probability_1 }) => {
      const limit = (mass_kg: number) =>
        from.arm_m + ((mass_kg - from.mass_kg) / (to.mass_kg - from.mass_kg)) * (to.arm_m - from.arm_m);
      const kept = share(drawn, ({ mass_kg, arm_m }) => {
        if (bounds === "upper") return mass_kg <= from.mass_kg;
        if (bounds === "lower") return mass_kg >= from.mass_kg;
        return bounds === "forward" ? arm_m >= limit(mass_kg) : arm_m <= limit(mass_kg);
      });
      expect(Math.abs(probability_1 - kept)).toBeLessThan(ERROR);
      return kept > 0.001 && kept < 0.999;
    });
    expect(seen.length, "edges that are broken now and then").toBeGreaterThanOrEqual(2);
  });

  it("the whole envelope is kept as often as it says", () => {
    // Its corners run counter-clockwise and it has no notch: inside is on the left of every edge.
    const { points } = ENVELOPE;
    const kept = share(drawn, ({ mass_kg, arm_m }) =>
      points.every((b, index) => {
        const a = points.at(index - 1) ?? b;
        return (b.arm_m - a.arm_m) * (mass_kg - a.mass_kg) >= (b.mass_kg - a.mass_kg) * (arm_m - a.arm_m);
      }),
    );
    expect(kept).toBeGreaterThan(0.3);
    expect(kept).toBeLessThan(0.95);
    expect(Math.abs(probabilityWithin(state, ENVELOPE) - kept)).toBeLessThan(ERROR);
  });

  it("an envelope with a notch is kept as often as it says", () => {
    const notched = {
      points: [...ENVELOPE.points.slice(0, 2), { arm_m: 2.38, mass_kg: 1450 }, ...ENVELOPE.points.slice(2)],
    };
    const some = drawn.slice(0, 20_000);
    const kept = share(some, (one) => pointInEnvelope(notched, one).inside);
    expect(Math.abs(probabilityWithin(state, notched) - kept)).toBeLessThan(
      5 * Math.sqrt(0.25 / some.length),
    );
  });
});

describe("the probability", () => {
  it("of six people of 190 lb, spread 47 lb: one chance in twenty to be 189 lb over", () => {
    // 1.645 × 47 × √6 = 189.4 lb; 1.645 is the 95 % point of the normal distribution
    const six = Array.from({ length: 6 }, () => ({
      mass_kg: toSI(190, "lb"),
      arm_m: 1,
      standardUncertainty_kg: toSI(47, "lb"),
    }));
    expect(probabilityOfMassLimit(uncertainState(six), toSI(6 * 190 + 189.4, "lb"))).toBeCloseTo(0.95, 3);
  });

  it("is one half on the limit itself", () => {
    const state = uncertainState(ITEMS);
    expect(probabilityOfMassLimit(state, state.mass_kg)).toBe(0.5);
  });

  it("is one or nothing where every mass is exact, and one on the edge", () => {
    const exact = (mass_kg: number) => uncertainState([{ mass_kg, arm_m: 2.3, standardUncertainty_kg: 0 }]);
    expect(probabilityOfMassLimit(exact(1000), 1000)).toBe(1);
    expect(probabilityOfMassLimit(exact(1000.001), 1000)).toBe(0);
    expect(probabilityWithin(exact(1540), ENVELOPE)).toBe(0);
    expect(probabilityWithin(exact(900), ENVELOPE)).toBe(1);
    expect(probabilityOfEdges(exact(900), ENVELOPE).map((edge) => edge.probability_1)).toEqual([
      1, 1, 1, 1, 1,
    ]);
  });

  it("does not depend on the order of the items, nor on which way round the envelope runs", () => {
    const there = probabilityWithin(uncertainState(ITEMS), ENVELOPE);
    expect(probabilityWithin(uncertainState(ITEMS.toReversed()), ENVELOPE)).toBe(there);
    const back = { points: ENVELOPE.points.toReversed() };
    expect(probabilityWithin(uncertainState(ITEMS), back)).toBeCloseTo(there, 12);
    const named = (envelope: Envelope) =>
      probabilityOfEdges(uncertainState(ITEMS), envelope)
        .map(({ bounds, probability_1 }) => `${bounds} ${probability_1.toFixed(9)}`)
        .sort();
    expect(named(back)).toEqual(named(ENVELOPE));
  });

  it("is never greater than that of any one edge, in an envelope without notches", () => {
    const state = uncertainState(ITEMS);
    const whole = probabilityWithin(state, ENVELOPE);
    for (const { probability_1 } of probabilityOfEdges(state, ENVELOPE))
      expect(whole).toBeLessThanOrEqual(probability_1 + 1e-6);
  });

  it("refuses an uncertainty below zero", () => {
    expect(() => uncertainState([{ mass_kg: 1, arm_m: 1, standardUncertainty_kg: -1 }])).toThrow(
      "items[0].standardUncertainty_kg: expected an uncertainty of zero or more, received -1",
    );
  });
});

describe("standard masses", () => {
  it("have ids of their own, a source each, and SI that is the printed figure", () => {
    expect(new Set(STANDARD_MASSES.map(({ id }) => id)).size).toBe(STANDARD_MASSES.length);
    for (const { printed, mass_kg, source } of STANDARD_MASSES) {
      expect(mass_kg).toBe(printed.unit === "kg" ? printed.value : printed.value * 0.45359237);
      expect(source.title.length).toBeGreaterThan(3);
    }
  });

  it("have a spread for each sort and each way of knowing; weighing is the best of them", () => {
    for (const what of ["passenger", "crew", "bag"] as const) {
      const [weighed, stated, standard] = (["weighed", "stated", "standard"] as const).map(
        (known) => massSpread(what, known).standardUncertainty_kg,
      );
      expect(weighed).toBeLessThan(stated ?? 0);
      expect(stated).toBeLessThanOrEqual(standard ?? 0);
    }
    expect(MASS_SPREADS).toHaveLength(9);
  });
});
