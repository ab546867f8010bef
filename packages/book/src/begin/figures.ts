import { InputError } from "@witnessmark/engine";
import type { TAILS, WINGS } from "../schema/drawn-from.ts";
import type { ENGINES, GEARS } from "../schema/kinds.ts";

/** What a new book is begun with: enough to draw the aircraft and to put the points in their places. */
export interface Figures {
  readonly registration: string;
  readonly type: string;
  /** Wing tip to wing tip, metres: 5 to 40. */
  readonly span_m: number;
  /** Foremost to aftmost part as it stands, metres: 4 to 30. */
  readonly length_m: number;
  /** Ground to the highest part as it stands, metres: 1 to 10. Left out, as is usual for its length. */
  readonly height_m?: number | undefined;
  /** How far aft of the foremost part the datum of the book is, metres: −10 to 10, negative where it lies ahead. */
  readonly datumAft_m: number;
  readonly wing: (typeof WINGS)[number];
  readonly tail: (typeof TAILS)[number];
  readonly gear: (typeof GEARS)[number];
  readonly retractable: boolean;
  readonly engine: (typeof ENGINES)[number];
  /** None where the engine is `none`, and only there. */
  readonly engines: 0 | 1 | 2;
  readonly seats: number;
  readonly pressurised: boolean;
  /** Tows gliders: a hook, its release and its mirror are looked at. */
  readonly tows: boolean;
}

/** Where a new book may begin. The figures are those of no aircraft: they are there to be changed. */
export interface Archetype {
  readonly id: string;
  readonly name: string;
  /** What it is called in the book until somebody says more. */
  readonly description: string;
  readonly basis: "type-certified" | "amateur-built";
  readonly figures: Omit<Figures, "registration" | "type">;
}

const SINGLE: Archetype["figures"] = {
  span_m: 11,
  length_m: 8.2,
  datumAft_m: 0,
  wing: "high",
  tail: "conventional",
  gear: "nose-wheel",
  retractable: false,
  engine: "piston",
  engines: 1,
  seats: 4,
  pressurised: false,
  tows: false,
};

export const ARCHETYPES: readonly Archetype[] = [
  {
    id: "piston-single-nose-wheel",
    name: "Piston single, nose wheel",
    description: "piston single, nose wheel",
    basis: "type-certified",
    figures: SINGLE,
  },
  {
    id: "piston-single-tail-wheel",
    name: "Piston single, tail wheel",
    description: "piston single, tail wheel",
    basis: "type-certified",
    figures: { ...SINGLE, length_m: 7, gear: "tail-wheel", seats: 2 },
  },
  {
    id: "glider-tug",
    name: "Glider tug",
    description: "piston single that tows gliders",
    basis: "type-certified",
    figures: { ...SINGLE, length_m: 7.2, gear: "tail-wheel", seats: 2, tows: true },
  },
  {
    id: "glider",
    name: "Glider",
    description: "glider",
    basis: "type-certified",
    figures: {
      ...SINGLE,
      span_m: 15,
      length_m: 6.8,
      wing: "mid",
      tail: "t",
      gear: "mono-wheel",
      retractable: true,
      engine: "none",
      engines: 0,
      seats: 1,
    },
  },
  {
    id: "amateur-built",
    name: "Amateur-built",
    description: "amateur-built piston single",
    basis: "amateur-built",
    figures: { ...SINGLE, span_m: 8, length_m: 6.2, wing: "low", seats: 2 },
  },
  {
    id: "piston-twin",
    name: "Piston twin",
    description: "light piston twin",
    basis: "type-certified",
    figures: { ...SINGLE, span_m: 11.5, length_m: 9, wing: "low", retractable: true, engines: 2, seats: 6 },
  },
  {
    id: "pressurised-turboprop",
    name: "Pressurised single turboprop",
    description: "pressurised single-engine turboprop",
    basis: "type-certified",
    figures: {
      ...SINGLE,
      span_m: 13,
      length_m: 9.5,
      wing: "low",
      retractable: true,
      engine: "turboprop",
      seats: 6,
      pressurised: true,
    },
  },
];

const RANGES = {
  span_m: { low: 5, high: 40, what: "span" },
  length_m: { low: 4, high: 30, what: "length" },
  height_m: { low: 1, high: 10, what: "height" },
  datumAft_m: { low: -10, high: 10, what: "datum" },
} as const;

const REMEDY = "give it in metres, from the three-view drawing of the manual";
const REMEDY_DATUM = "give it in metres behind the foremost part, with a minus where it lies ahead";

/** Length as a share of the span: outside these it is a slip of a figure. From memory of aircraft of these kinds. */
const SLENDER = { low_1: 0.35, high_1: 1.5 } as const;
/** A glider is more slender. */
const SLENDER_GLIDER = { low_1: 0.25, high_1: 0.8 } as const;

/** @throws {InputError} a length that no aircraft of these kinds has, with its range */
export function mustBeAnAircraft(figures: Figures): void {
  for (const [name, { low, high, what }] of Object.entries(RANGES)) {
    const value = figures[name as keyof typeof RANGES]; // the keys are those of the literal above
    if (value === undefined || (value >= low && value <= high)) continue;
    throw new InputError("out-of-range", what, {
      expected: `${low < 0 ? `−${-low}` : low} to ${high} m`,
      received: `${value} m`,
      remedy: name === "datumAft_m" ? REMEDY_DATUM : REMEDY,
      value,
      range: [low, high],
    });
  }
  const { span_m, length_m, engine, engines } = figures;
  const slender = engine === "none" ? SLENDER_GLIDER : SLENDER;
  const range = [slender.low_1 * span_m, slender.high_1 * span_m] as const;
  if (length_m < range[0] || length_m > range[1]) {
    throw new InputError("out-of-range", "length", {
      expected: `${range[0].toFixed(1)} to ${range[1].toFixed(1)} m for a span of ${span_m} m`,
      received: `${length_m} m`,
      remedy: "look whether span and length were taken one for the other",
      value: length_m,
      range,
    });
  }
  if ((engine === "none") === (engines === 0)) return;
  throw new InputError("out-of-range", "engines", {
    expected: engine === "none" ? "no engine, as the engine is none" : "one engine or two",
    received: String(engines),
    remedy: "say how many engines it has, or that it has none",
  });
}
