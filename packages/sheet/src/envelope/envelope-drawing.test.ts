import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SheetEnvelope } from "../flight/mass-and-balance.ts";
import { envelopeDrawing } from "./envelope-drawing.ts";

/** About how wide a figure of the sheet's small bold type is, 1/96 inch. */
const FIGURE = 6;
const HIGH = 9;

const points = [
  { arm_m: 0.32, mass_kg: 500 },
  { arm_m: 0.32, mass_kg: 590 },
  { arm_m: 0.36, mass_kg: 816 },
  { arm_m: 0.53, mass_kg: 816 },
  { arm_m: 0.53, mass_kg: 500 },
];

const flown = (arm_m: number, takeOff_kg: number, landing_kg: number): SheetEnvelope =>
  ({
    armUnit: "m",
    points,
    moments: [takeOff_kg, landing_kg].map((mass_kg) => ({ arm_m, mass_kg, status: "stop" as const })),
    flown: [takeOff_kg, landing_kg].map((mass_kg) => ({ arm_m, mass_kg })),
    rest: [],
    limits: [{ name: "take-off", mass_kg: 816 }],
    edges: [
      { from: { arm_m, mass_kg: takeOff_kg }, edge_m: 0.35, text: "216 mm" },
      { from: { arm_m, mass_kg: landing_kg }, edge_m: 0.53, text: "22 mm over" },
    ],
  }) as SheetEnvelope; // what the drawing asks of one

describe("the margins in the envelope of a sheet", () => {
  it("are never written on each other, wherever the flight lies", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.33, max: 0.6, noNaN: true }),
        fc.integer({ min: 600, max: 816 }),
        fc.integer({ min: 0, max: 120 }),
        (arm_m, takeOff_kg, burnt_kg) => {
          const { texts } = envelopeDrawing(flown(arm_m, takeOff_kg, takeOff_kg - burnt_kg));
          const [one, other] = texts
            .filter(({ kind }) => kind === "margin")
            .map(({ text, x, y, align }) => {
              const wide = text.length * FIGURE;
              const from = align === "left" ? x : align === "right" ? x - wide : x - wide / 2;
              return { from, to: from + wide, y };
            });
          if (one === undefined || other === undefined) throw new Error("expected two margins");
          expect(one.from < other.to && other.from < one.to && Math.abs(one.y - other.y) < HIGH).toBe(false);
        },
      ),
    );
  });
});
