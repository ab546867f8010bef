import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { fuelImbalanceByVolume } from "../fuel/amount.ts";
import { freezingMargin } from "../fuel/cold-soak.ts";
import { FUEL_KINDS, HANDBOOK_FLUID_LBPERUSGAL } from "../fuel/fuel-kinds.ts";
import { differenceFromSI, fromSI, toSI } from "../units/convert.ts";
import { roundToSafeSide } from "../units/round.ts";
import type { UnitId } from "../units/units.ts";
import { adverseLoading } from "./adverse-loading.ts";
import { ballastNeeded, massToCentreLimit } from "./changes.ts";
import { type Envelope, pointInEnvelope } from "./envelope.ts";
import { loadedState } from "./loaded-state.ts";
import { CHECKED_BAG_SURVEY } from "./mass-statistics.ts";
import { STANDARD_MASSES } from "./standard-masses.ts";
import { stationMargins } from "./station-margins.ts";
import { suspectRows } from "./suspect-rows.ts";
import { negligibleMassChange } from "./weighing.ts";

/** Published cases whose answer is no single number; their figures are in the file, none is repeated here. */
const FILE = join(import.meta.dirname, "../../../../reference/decoded/loading.json");

interface Case {
  readonly id: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
}

// The file is the project's own and is read by the claims below, which fail on any other shape.
const { cases } = JSON.parse(readFileSync(FILE, "utf8")) as { readonly cases: readonly Case[] };
const used = new Set<string>();

function given(id: string): { readonly inputs: Case["inputs"]; readonly expected: Case["expected"] } {
  const found = cases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`${id}: no such case in ${FILE}`);
  used.add(id);
  return found;
}

function number(of: Readonly<Record<string, unknown>>, name: string): number {
  const value = of[name];
  if (typeof value !== "number") throw new Error(`${name}: expected a number, received ${String(value)}`);
  return value;
}

/** A figure of a case in SI; the unit is the last part of its name. */
const si = (of: Readonly<Record<string, unknown>>, name: string, unit: UnitId): number =>
  toSI(number(of, name), unit);

interface PrintedItem {
  readonly name: string;
  readonly weight_lb: number;
  readonly arm_in: number;
}

// The list of a loading form; `loadedState` refuses what is no number.
const itemsOf = (inputs: Case["inputs"]) =>
  (inputs["items"] as readonly PrintedItem[]).map(({ name, weight_lb, arm_in }) => ({
    name,
    mass_kg: toSI(weight_lb, "lb"),
    arm_m: toSI(arm_in, "in"),
  }));

interface PrintedCorner {
  readonly weight_lb: number;
  readonly cg_in: number;
}

// A limit as the figure prints it.
const lineOf = (inputs: Case["inputs"], side: "forwardLimit" | "aftLimit") =>
  (inputs[side] as readonly PrintedCorner[]).map(({ weight_lb, cg_in }) => ({
    mass_kg: toSI(weight_lb, "lb"),
    arm_m: toSI(cg_in, "in"),
  }));

/** The envelope of a case with two limit lines: below the first corner the limit stays as it is there. */
function envelopeOf(inputs: Case["inputs"]): Envelope {
  const forward = lineOf(inputs, "forwardLimit");
  const aft = lineOf(inputs, "aftLimit");
  const bottom = (line: typeof forward) => ({ mass_kg: 0, arm_m: line[0]?.arm_m ?? Number.NaN });
  return { points: [bottom(forward), ...forward, ...aft.toReversed(), bottom(aft)] };
}

/** The envelope of a case with one forward and one aft limit up to a greatest mass. */
function boxOf(inputs: Case["inputs"], greatest_kg: number): Envelope {
  const forward_m = si(inputs, "forwardLimit_in", "in");
  const aft_m = si(inputs, "aftLimit_in", "in");
  return {
    points: [
      { arm_m: forward_m, mass_kg: 0 },
      { arm_m: aft_m, mass_kg: 0 },
      { arm_m: aft_m, mass_kg: greatest_kg },
      { arm_m: forward_m, mass_kg: greatest_kg },
    ],
  };
}

describe("envelopes", () => {
  it.each(["envelope-edge-1", "envelope-edge-3", "envelope-edge-5", "envelope-edge-6"])("%s", (id) => {
    const { inputs, expected } = given(id);
    const place = { mass_kg: si(inputs, "weight_lb", "lb"), arm_m: si(inputs, "cg_in", "in") };
    expect(pointInEnvelope(envelopeOf(inputs), place).inside).toBe(expected["inside"]);
  });

  it("envelope-point-2799-2278", () => {
    const { inputs, expected } = given("envelope-point-2799-2278");
    const mass_kg = si(inputs, "weight_lb", "lb");
    const arm_m = toSI(100 * number(inputs, "momentIndex_hlbin"), "lbin") / mass_kg;
    expect(pointInEnvelope(envelopeOf(inputs), { mass_kg, arm_m }).inside).toBe(expected["inside"]);
  });

  it("wb-envelope-table-misprints-10-9: the rows that cannot be right, and no others", () => {
    const { inputs, expected } = given("wb-envelope-table-misprints-10-9");
    // Rows as the figure prints them, moments over 100.
    const rows = (
      inputs["rows"] as readonly {
        readonly weight_lb: number;
        readonly minMomentIndex_hlbin: number;
        readonly maxMomentIndex_hlbin: number;
      }[]
    ).map((row) => ({
      mass_kg: toSI(row.weight_lb, "lb"),
      least_kgm: toSI(100 * row.minMomentIndex_hlbin, "lbin"),
      greatest_kgm: toSI(100 * row.maxMomentIndex_hlbin, "lbin"),
    }));
    const suspects = suspectRows(
      rows,
      lineOf(inputs, "forwardLimit"),
      lineOf(inputs, "aftLimit"),
      toSI(60, "lbin"),
    );
    expect(suspects.map(({ mass_kg }) => Math.round(fromSI(mass_kg, "lb")))).toEqual(
      expected["suspectRowWeights_lb"],
    );
  });
});

describe("loadings against their limits", () => {
  it("wb-computational-phak-10-5: within limits at take-off; tipping-fuel-burn-cg-10-5: and no longer when dry", () => {
    const { inputs, expected } = given("wb-computational-phak-10-5");
    const box = boxOf(inputs, si(inputs, "maxWeight_lb", "lb"));
    expect(pointInEnvelope(box, loadedState(itemsOf(inputs))).inside).toBe(expected["withinLimits"]);
    const dry = itemsOf(inputs).filter(({ name }) => !name.startsWith("fuel"));
    expect(dry).toHaveLength(itemsOf(inputs).length - 1);
    const burn = given("tipping-fuel-burn-cg-10-5");
    expect(pointInEnvelope(box, loadedState(dry)).inside).toBe(burn.expected["zeroFuelWithinLimits"]);
  });

  it("wb-zero-fuel-weight-phak-10-11", () => {
    const { inputs, expected } = given("wb-zero-fuel-weight-phak-10-11");
    const { mass_kg } = loadedState(itemsOf(inputs));
    expect(mass_kg <= si(inputs, "maxZeroFuelWeight_lb", "lb")).toBe(expected["withinMaxZeroFuelWeight"]);
  });

  it("wb-adverse-forward-ac43-10-10: what is behind the forward limit is at its least", () => {
    const { inputs, expected } = given("wb-adverse-forward-ac43-10-10");
    const [empty, ...aboard] = itemsOf(inputs);
    const limit_m = si(inputs, "forwardLimit_in", "in");
    // 40 US gal and two people: what the aircraft could carry besides, behind the limit, and so is left out.
    const variable = aboard.map(({ name, mass_kg, arm_m }) => ({
      id: name,
      arm_m,
      least_kg: mass_kg,
      most_kg: name === "minimum fuel" ? toSI(240, "lb") : mass_kg,
    }));
    const rear = { id: "rear passengers", arm_m: toSI(48, "in"), least_kg: 0, most_kg: toSI(340, "lb") };
    const { state, masses_kg } = adverseLoading(
      { mass_kg: empty?.mass_kg ?? 0, moment_kgm: (empty?.mass_kg ?? 0) * (empty?.arm_m ?? 0) },
      [...variable, rear],
      limit_m,
      "forward",
    );
    expect(fromSI(state.mass_kg, "lb")).toBeCloseTo(number(expected, "totalWeight_lb"), 9);
    expect(
      Math.abs(fromSI(state.moment_kgm, "lbin") - number(expected, "totalMoment_lbin")),
    ).toBeLessThanOrEqual(1);
    expect(Math.abs(fromSI(state.arm_m, "in") - number(expected, "cg_in"))).toBeLessThanOrEqual(0.05);
    expect(state.arm_m >= limit_m).toBe(expected["withinLimits"]);
    expect(masses_kg["rear passengers"]).toBe(0);
    const aftwards = adverseLoading({ mass_kg: 500, moment_kgm: 100 }, [rear], toSI(21, "in"), "aft");
    expect(aftwards.masses_kg["rear passengers"]).toBe(rear.most_kg);
  });

  it("wb-baggage-compartment-limits-10-6: each bay is a test of its own", () => {
    const { inputs, expected } = given("wb-baggage-compartment-limits-10-6");
    const bay = (n: 1 | 2) => ({ id: `area${n}`, max_kg: si(inputs, `baggageArea${n}Limit_lb`, "lb") });
    const load = (n: 1 | 2) => ({ station: `area${n}`, mass_kg: si(inputs, `baggageArea${n}_lb`, "lb") });
    const margins = stationMargins([bay(1), bay(2)], [], [load(1), load(2)]);
    for (const [index, n] of [1, 2].entries()) {
      const margin_kg = margins[index]?.margin_kg ?? Number.NaN;
      expect(fromSI(margin_kg, "lb")).toBeCloseTo(number(expected, `area${n}Remaining_lb`), 9);
      expect(margin_kg >= 0).toBe(expected[`area${n}WithinLimit`]);
    }
  });

  it("wb-loading-condition-ac43-10-13: the fuel that still fits, in whole gallons", () => {
    const { inputs, expected } = given("wb-loading-condition-ac43-10-13");
    const { mass_kg } = loadedState(itemsOf(inputs).filter(({ name }) => !name.startsWith("fuel")));
    const gallons = fromSI(si(inputs, "maxWeight_lb", "lb") - mass_kg, "lb") / 6; // 6 lb a gallon, as the figure has it
    expect(roundToSafeSide(gallons, 1, "down")).toBe(expected["maxFuel_gal"]);
  });

  it("tipping-max-baggage-10-5: which limit is met first, in whole pounds", () => {
    const { inputs, expected } = given("tipping-max-baggage-10-5");
    const totalMass_kg = si(inputs, "otherWeight_lb", "lb");
    const byCentre_kg = massToCentreLimit.compute({
      totalMass_kg,
      totalMoment_kgm: si(inputs, "otherMoment_lbin", "lbin"),
      arm_m: si(inputs, "baggageArm_in", "in"),
      limit_m: si(inputs, "aftLimit_in", "in"),
    });
    const byMass_kg = si(inputs, "maxWeight_lb", "lb") - totalMass_kg;
    expect(fromSI(byMass_kg, "lb")).toBeCloseTo(number(expected, "maxBaggageByWeight_lb"), 9);
    expect(byCentre_kg < byMass_kg ? "aft CG" : "weight").toBe(expected["limitMet"]);
    expect(roundToSafeSide(fromSI(Math.min(byCentre_kg, byMass_kg), "lb"), 1, "down")).toBe(
      expected["maxBaggage_lb"],
    );
  });

  it("wb-ballast-minimum-4954lb: in whole pounds, rounded up", () => {
    const { inputs, expected } = given("wb-ballast-minimum-4954lb");
    const ballast_kg = ballastNeeded.compute({
      totalMass_kg: si(inputs, "loadedWeight_lb", "lb"),
      centreOfGravity_m: si(inputs, "cg_in", "in"),
      limit_m: si(inputs, "forwardLimit_in", "in"),
      ballastArm_m: si(inputs, "ballastArm_in", "in"),
    });
    expect(roundToSafeSide(fromSI(ballast_kg, "lb"), 1, "up")).toBe(expected["ballastRoundedUp_lb"]);
  });
});

describe("people and bags", () => {
  const printed = (id: string): number | undefined =>
    STANDARD_MASSES.find((one) => one.id === id)?.printed.value;

  it.each<[string, Readonly<Record<string, string>>]>([
    ["weight-standard-faa-adult", { summer_lb: "faa-adult-summer", winter_lb: "faa-adult-winter" }],
    [
      "weight-standard-faa-male-female",
      {
        maleSummer_lb: "faa-male-summer",
        maleWinter_lb: "faa-male-winter",
        femaleSummer_lb: "faa-female-summer",
        femaleWinter_lb: "faa-female-winter",
      },
    ],
    [
      "weight-standard-faa-bags",
      {
        checkedBag_lb: "faa-bag-checked",
        carryOnAllowance_lb: "faa-bag-carry-on",
        heavyBag_lb: "faa-bag-heavy",
      },
    ],
    [
      "mass-standard-easa-19-seats-or-fewer",
      {
        male1to5_kg: "easa-male-1-5",
        male6to9_kg: "easa-male-6-9",
        male10to19_kg: "easa-male-10-19",
        female1to5_kg: "easa-female-1-5",
        female6to9_kg: "easa-female-6-9",
        female10to19_kg: "easa-female-10-19",
        child_kg: "easa-child",
      },
    ],
    ["mass-standard-easa-crew", { flightCrew_kg: "easa-flight-crew", cabinCrew_kg: "easa-cabin-crew" }],
  ])("%s", (id, names) => {
    const { expected } = given(id);
    expect(Object.keys(names).sort()).toEqual(Object.keys(expected).sort());
    for (const [name, mass] of Object.entries(names)) expect(printed(mass), mass).toBe(expected[name]);
  });

  it("mass-survey-sample-bags", () => {
    const { expected } = given("mass-survey-sample-bags");
    expect(CHECKED_BAG_SURVEY.sample_count).toBe(expected["minimumSample_1"]);
    expect(fromSI(CHECKED_BAG_SURVEY.confidenceRange_1, "percent")).toBe(
      expected["relativeConfidenceRange_pct"],
    );
  });
});

describe("fuel", () => {
  it("fuel-standard-weights-phak", () => {
    const { expected } = given("fuel-standard-weights-phak");
    expect(Object.values(HANDBOOK_FLUID_LBPERUSGAL)).toEqual(
      ["gasoline", "jetA", "jetB", "oil", "water"].map((fluid) => expected[`${fluid}_lbPerGal`]),
    );
  });

  it.each([
    ["fuel-freezing-point-jet-a", "jet-a"],
    ["fuel-freezing-point-jet-a-1", "jet-a1"],
  ] as const)("%s", (id, kind) => {
    const freezing_K = FUEL_KINDS[kind].freezingPointMax_K ?? Number.NaN;
    expect(fromSI(freezing_K, "degC")).toBeCloseTo(number(given(id).expected, "freezingPointMax_degC"), 9);
  });

  it("fuel-temperature-margin-jet-a", () => {
    const { inputs, expected } = given("fuel-temperature-margin-jet-a");
    const margin_K = freezingMargin.compute({
      fuelTemperature_K: si(inputs, "fuelTemperature_degC", "degC"),
      freezingPoint_K: si(inputs, "freezingPoint_degC", "degC"),
    });
    expect(differenceFromSI(margin_K, "degC")).toBeCloseTo(number(expected, "margin_degC"), 9);
    expect(margin_K >= number(inputs, "requiredMargin_degC")).toBe(expected["withinMargin"]);
  });

  it("fuel-imbalance-gallons", () => {
    const { inputs, expected } = given("fuel-imbalance-gallons");
    const imbalance_m3 = fuelImbalanceByVolume.compute({
      left_m3: [si(inputs, "left_gal", "USgal")],
      right_m3: [si(inputs, "right_gal", "USgal")],
    });
    expect(fromSI(Math.abs(imbalance_m3), "USgal")).toBeCloseTo(number(expected, "imbalance_gal"), 9);
    expect(imbalance_m3 < 0 ? "left" : "right").toBe(expected["heavySide"]);
    expect(Math.abs(imbalance_m3) <= si(inputs, "imbalanceLimit_gal", "USgal")).toBe(expected["withinLimit"]);
  });
});

describe("a change too small to count", () => {
  it.each(["wb-negligible-change-2400lb", "wb-negligible-change-60000lb"])(
    "%s: of the centre of gravity, by the note of the quantity",
    (id) => {
      const share = `${number(given(id).expected, "negligibleCgChange_pctMac")} %`;
      expect(negligibleMassChange.notes?.join(" ")).toContain(share);
    },
  );
});

afterAll(() => {
  expect(cases.map(({ id }) => id).filter((id) => !used.has(id))).toEqual([]);
});
