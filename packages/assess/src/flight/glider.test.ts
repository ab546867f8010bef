import { ARCHETYPES, type Book, beginBook, readBook } from "@witnessmark/book";
import { emptyState } from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Flight } from "../assessment.ts";
import { DEMO_NOW_ms, demoFlight } from "../testing/demo-flight.ts";
import { plain } from "../testing/plain.ts";
import { loadFigures } from "./load/load-figures.ts";

const LOADING = `loading:
  datum: The nose.
  empty: { weighedOn: "2026-01-02", by: "A. Example", mass: 250 kg, arm: 2.6 m }
  stations:
    - { id: seat-1, name: Seat, kind: seat, side: centre, arm: 1.6 m, max: 110 kg, place: [1.6, 0, 0.8], crew: true }
  limits: { takeOff: 380 kg }
  envelopes:
    - id: normal
      name: Normal
      points:
        - { arm: 2.2 m, mass: 250 kg }
        - { arm: 2.2 m, mass: 380 kg }
        - { arm: 2.7 m, mass: 380 kg }
        - { arm: 2.7 m, mass: 250 kg }
`;

let book: Book;
beforeAll(async () => {
  const glider = ARCHETYPES.find(({ id }) => id === "glider");
  if (glider === undefined) throw new Error("expected a glider to begin from");
  const figures = { registration: "ZZ-GLD", type: "Petrel", ...glider.figures };
  const text = beginBook({ archetype: glider, figures, by: "A. Example", on: "2026-11-26" }) + LOADING;
  const read = await readBook(text, "glider.yaml");
  if (!read.ok) throw new Error(`expected a book, found ${read.faults[0].path}: ${read.faults[0].found}`);
  book = read.book;
});

const { plan } = demoFlight;
if (plan === undefined) throw new Error("expected a whole plan");
const { route: _route, alternate: _alternate, ...rest } = plan;
const flight: Flight = {
  ...demoFlight,
  plan: {
    ...rest,
    load: {
      items: [
        { id: "pilot", station: "seat-1", what: "MK", mass: { value: 80, unit: "kg" }, known: "weighed" },
      ],
      fuel: [],
    },
  },
};

describe("a glider, whose book has no engine and no tank", () => {
  it("is loaded without a word of fuel: mass and arm by hand, the same from the launch to the landing", () => {
    if (flight.plan === undefined) throw new Error("expected the plan");
    const figures = loadFigures(book, flight.plan);
    expect(figures).toMatchObject({ status: "clear", complete: true, missing: [], faults: [], tanks: [] });
    // by hand: (250 × 2.6 + 80 × 1.6) / 330
    for (const { mass_kg, arm_m } of figures.states) {
      expect(mass_kg).toBeCloseTo(330, 6);
      expect(arm_m).toBeCloseTo(778 / 330, 9);
    }
    expect(figures.states.map(({ at }) => at)).toEqual(["zero-fuel", "ramp", "take-off", "landing"]);
  });

  it("has no verdict that waits for fuel, oil, a route or a take-off table; the landing is still asked", () => {
    const { verdicts } = assess(book, emptyState("ZZ-GLD"), flight, DEMO_NOW_ms);
    expect(verdicts.filter(({ topic }) => topic === "fuel")).toEqual([]);
    const says = verdicts.map((one) => plain(`${one.title} ${one.says} ${JSON.stringify(one)}`)).join("\n");
    expect(says).not.toMatch(/burns|fuel to taxi|engine oil/i);
    const runway = verdicts.filter(({ topic }) => topic === "runway").map(({ id }) => id);
    expect(runway.some((id) => id.startsWith("runway:destination"))).toBe(true);
    expect(runway.filter((id) => /runway:departure.*(distance|stop)/.test(id))).toEqual([]);
  });
});
