import type { QuantitySource } from "../registry/quantity.ts";
import { toSI } from "../units/convert.ts";
import type { UnitId } from "../units/units.ts";

/** A mass that a rule or a circular lets stand for one that was not weighed. */
export interface StandardMass {
  /** `faa-adult-summer` */
  readonly id: string;
  readonly authority: "faa" | "easa";
  readonly what: "passenger" | "crew" | "bag";
  readonly name: string;
  /** As printed, and the same in SI. */
  readonly printed: { readonly value: number; readonly unit: Extract<UnitId, "lb" | "kg"> };
  readonly mass_kg: number;
  /** Whether what a person takes into the cabin is in it. */
  readonly includesHandBaggage: boolean;
  /** Passenger seats fitted, for which it holds; undefined where the source draws no such line. */
  readonly seats: readonly [least: number, most: number] | undefined;
  readonly source: QuantitySource;
}

const AC_120_27E: QuantitySource = {
  title: "AC 120-27E, Aircraft Weight and Balance Control",
  edition: "10 June 2005; edition F prints no such figures and works from health surveys or own surveys",
  locator: "chapter 2, table 2-1 and bag weights",
  status: "from memory",
  note: "The adult figures are also listed, as of the AC 120-27 series, on a secondary page.",
};

const EASA_PASSENGERS: QuantitySource = {
  title: "AMC1 CAT.POL.MAB.100(e), Mass and balance, loading",
  edition: "ED Decision 2014/015/R family",
  locator: "table 2, aircraft with 19 seats or fewer",
  status: "from memory",
  note: "6 kg come off where no hand baggage is carried in the cabin or it is counted apart.",
};

const EASA_CREW: QuantitySource = {
  title: "CAT.POL.MAB.100(d) and NCC.POL.105, Mass and balance, loading",
  edition: "Regulation (EU) No 965/2012",
  status: "from memory",
};

type Row = readonly [
  id: string,
  what: StandardMass["what"],
  name: string,
  value: number,
  seats?: readonly [number, number],
];

const table = (
  authority: StandardMass["authority"],
  unit: "lb" | "kg",
  source: QuantitySource,
  rows: readonly Row[],
): readonly StandardMass[] =>
  rows.map(([id, what, name, value, seats]) => ({
    id,
    authority,
    what,
    name,
    printed: { value, unit },
    mass_kg: toSI(value, unit),
    includesHandBaggage: what !== "bag",
    seats,
    source,
  }));

const FEW = [1, 5] as const;
const SOME = [6, 9] as const;
const MORE = [10, 19] as const;

/**
 * Standard masses of people and bags. In a small cabin none of them is safe: few people do not average out. They say
 * what to reckon with when nothing was weighed, and carry their spread with them.
 */
export const STANDARD_MASSES: readonly StandardMass[] = [
  ...table("faa", "lb", AC_120_27E, [
    ["faa-adult-summer", "passenger", "adult, summer", 190],
    ["faa-adult-winter", "passenger", "adult, winter", 195],
    ["faa-male-summer", "passenger", "man, summer", 200],
    ["faa-male-winter", "passenger", "man, winter", 205],
    ["faa-female-summer", "passenger", "woman, summer", 179],
    ["faa-female-winter", "passenger", "woman, winter", 184],
    ["faa-bag-checked", "bag", "checked bag", 30],
    ["faa-bag-heavy", "bag", "heavy bag", 60],
    ["faa-bag-carry-on", "bag", "carry-on allowance for one person", 16],
  ]),
  ...table("easa", "kg", EASA_PASSENGERS, [
    ["easa-male-1-5", "passenger", "man, 1 to 5 seats", 104, FEW],
    ["easa-male-6-9", "passenger", "man, 6 to 9 seats", 96, SOME],
    ["easa-male-10-19", "passenger", "man, 10 to 19 seats", 92, MORE],
    ["easa-female-1-5", "passenger", "woman, 1 to 5 seats", 86, FEW],
    ["easa-female-6-9", "passenger", "woman, 6 to 9 seats", 78, SOME],
    ["easa-female-10-19", "passenger", "woman, 10 to 19 seats", 74, MORE],
    ["easa-child", "passenger", "child", 35, [1, 19]],
  ]),
  ...table("easa", "kg", EASA_CREW, [
    ["easa-flight-crew", "crew", "flight crew", 85],
    ["easa-cabin-crew", "crew", "cabin crew", 75],
  ]),
];

/** How a mass is known. */
export type MassKnowledge = "weighed" | "stated" | "standard";

/** What is known of the masses that are known in one way: how far the true one may be off. */
export interface MassSpread {
  readonly known: MassKnowledge;
  readonly what: StandardMass["what"];
  /** True mass less the one written down, on average. */
  readonly bias_kg: number;
  /** Standard uncertainty of one such mass, the bias taken out. */
  readonly standardUncertainty_kg: number;
  readonly source: QuantitySource;
}

const ONE_KG_SCALE: QuantitySource = {
  title: "A scale that is right within 1 kg either way: half-width over √3",
  status: "common practice",
};

const STATED_PEOPLE: QuantitySource = {
  title:
    "Koebnick and others, The accuracy of self-reported body weight, Int. J. Environ. Res. Public Health 17, 8203",
  edition: "2020",
  locator: "abstract: stated less measured −1.5 ± 4.3 kg, 588 people",
  status: "published",
  note: "One study of young women; clothing and hand baggage come on top (AMC1 CAT.POL.MAB.100(e): 4 kg and 6 kg at least).",
};

const STANDARD_PEOPLE: QuantitySource = {
  title: "AC 120-27E, Aircraft Weight and Balance Control",
  edition: "10 June 2005",
  locator: "sample-size example: standard deviation of adults 47 lb",
  status: "from memory",
};

const BAGS: QuantitySource = {
  title: "No published figure is known for the spread of bags; a third of the usual checked bag is taken",
  status: "from memory",
};

/** The spread of a mass by what it is of and how it is known. A person's own figure, where there is one, is better. */
export const MASS_SPREADS: readonly MassSpread[] = [
  {
    known: "weighed",
    what: "passenger",
    bias_kg: 0,
    standardUncertainty_kg: 1 / Math.sqrt(3),
    source: ONE_KG_SCALE,
  },
  {
    known: "weighed",
    what: "crew",
    bias_kg: 0,
    standardUncertainty_kg: 1 / Math.sqrt(3),
    source: ONE_KG_SCALE,
  },
  {
    known: "weighed",
    what: "bag",
    bias_kg: 0,
    standardUncertainty_kg: 1 / Math.sqrt(3),
    source: ONE_KG_SCALE,
  },
  { known: "stated", what: "passenger", bias_kg: 1.5, standardUncertainty_kg: 4.3, source: STATED_PEOPLE },
  { known: "stated", what: "crew", bias_kg: 1.5, standardUncertainty_kg: 4.3, source: STATED_PEOPLE },
  { known: "stated", what: "bag", bias_kg: 0, standardUncertainty_kg: toSI(10, "lb"), source: BAGS },
  {
    known: "standard",
    what: "passenger",
    bias_kg: 0,
    standardUncertainty_kg: toSI(47, "lb"),
    source: STANDARD_PEOPLE,
  },
  {
    known: "standard",
    what: "crew",
    bias_kg: 0,
    standardUncertainty_kg: toSI(47, "lb"),
    source: STANDARD_PEOPLE,
  },
  { known: "standard", what: "bag", bias_kg: 0, standardUncertainty_kg: toSI(10, "lb"), source: BAGS },
];

/** The spread of a mass of this sort, known in this way. */
export function massSpread(what: StandardMass["what"], known: MassKnowledge): MassSpread {
  const spread = MASS_SPREADS.find((one) => one.what === what && one.known === known);
  if (spread === undefined) throw new Error(`no spread for a ${what} that is ${known}`); // the table has every pair
  return spread;
}
