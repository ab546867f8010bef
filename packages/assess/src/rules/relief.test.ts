import { toSI } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { euPartNco } from "./eu-part-nco/pack.ts";
import type { EquipmentOf, FlightKind, ReliefInput, ReliefSaid } from "./relief.ts";
import { repairUntil } from "./repair-interval.ts";
import { type DecodedCase, decodedCases } from "./testing/decoded-cases.ts";
import { usPart91 } from "./us-part-91/pack.ts";

// Each case carries its source: 14 CFR and Regulation (EU) texts as published; the repair categories are from memory.
const CASES = decodedCases("airworthiness-relief.json", 30);
const group = (...starts: readonly string[]): readonly DecodedCase[] =>
  CASES.filter(({ id }) => starts.some((start) => id.startsWith(start)));
const inoperative = group("inop-");
const intervals = group("mel-category");
const starting = group("nco-");
const deferring = group("defer-");
const lists = group("list-");

it("takes up every case of the file", () => {
  expect([inoperative, intervals, starting, deferring, lists].flat()).toHaveLength(CASES.length);
});

type Flags = Readonly<Record<string, unknown>>;
const part = (one: DecodedCase, name: string): Flags => (one.inputs[name] ?? {}) as Flags; // the file's own shape
/** In these cases a flag that is not there is false. */
const flag = (flags: Flags, name: string): boolean => flags[name] === true;

function said(action: Flags): ReliefSaid {
  const { disposition, noHazardDeterminedBy } = action;
  return {
    action: disposition === "removed" || disposition === "deactivated" ? disposition : "none",
    placard: flag(action, "placardInoperative") || flag(action, "controlPlacarded"),
    deactivationIsMaintenance: flag(action, "deactivationIsMaintenance"),
    recorded: flag(action, "recorded43_9"),
    noHazardBy:
      noHazardDeterminedBy === "pilot" || noHazardDeterminedBy === "mechanic"
        ? noHazardDeterminedBy
        : "nobody",
    recordAtHand: flag(action, "recordEntryAvailableToPilot"),
    provisosMet: flag(action, "melConditionsMet"),
    permit: flag(action, "specialFlightPermit"),
  };
}

function inputOf(one: DecodedCase): ReliefInput {
  const aircraft = part(one, "aircraft");
  const item = part(one, "item");
  return {
    aircraft: {
      engine: aircraft["engine"] === "piston" ? "piston" : "turboprop",
      maxTakeOff_kg: toSI(Number(aircraft["mtow_lb"]), "lb"),
      masterList: flag(aircraft, "mmelDeveloped"),
      ownList: flag(aircraft, "melApproved"),
      letterAboard: flag(aircraft, "loaAboard"),
    },
    item: {
      inOwnList: flag(item, "inMel"),
      typeEquipment: flag(item, "vfrDayTypeCertificationItem"),
      listed: flag(item, "requiredByEquipmentList") || flag(item, "koelRequiredForThisKind"),
      ruleRequires: flag(item, "requiredByPart91ForThisKind"),
      directive: false,
    },
    said: said(part(one, "action")),
  };
}

describe("14 CFR 91.213", () => {
  it.each(inoperative)("$id", (one) => {
    const ruling = usPart91.relief(inputOf(one));
    expect({ path: ruling.path, legal: ruling.allowed, failing: ruling.failing }).toEqual(one.expected);
  });

  it("says which of its questions are still to be answered, and allows nothing until they are", () => {
    const asked = {
      ...(inoperative[0] === undefined ? {} : inputOf(inoperative[0])),
      said: {},
    } as ReliefInput; // the first case, unanswered
    const ruling = usPart91.relief(asked);
    expect(ruling.allowed).toBe(false);
    expect(ruling.failing).toEqual([]);
    expect(ruling.steps.flatMap(({ asks, holds }) => (holds === "unknown" ? [asks] : []))).toEqual([
      "action",
      "noHazardBy",
    ]);
  });
});

describe("what the rules ask for, 14 CFR 91.205", () => {
  it.each(lists)("$id", (one) => {
    const given = one.inputs;
    const of: EquipmentOf = {
      oilPressureSystem: flag(given, "oilPressureSystem"),
      cooling: given["cooling"] === "liquid" ? "liquid" : "air",
      altitudeEngine: flag(given, "altitudeEngine"),
      retractable: flag(given, "retractableGear"),
      certifiedAfter1996: flag(given, "part23CertificatedAfter1996_03_11"),
      forHireOverWater: flag(given, "forHireOverwaterBeyondGlide"),
      locatorRequired: flag(given, "eltRequired"),
      usesFuses: flag(given, "usesFuses"),
      forHire: flag(given, "forHire"),
      manufacturedOn: String(given["manufactured_date"]),
    };
    const kind = String(given["kindOfOperation"]).toLowerCase() as FlightKind; // "VFR-day" and the like
    expect(usPart91.requiredEquipment(kind, of)).toEqual(one.expected["required"]);
  });
});

describe("repair intervals", () => {
  it.each(intervals)("$id", (one) => {
    const category = one.inputs["category"] as "B" | "C"; // the two that the file has
    expect(repairUntil(category, String(one.inputs["recorded_local"]).slice(0, 10))).toBe(
      one.expected["lastDay_date"],
    );
  });

  it("of category A are what the item states, and none where it states none", () => {
    expect(repairUntil("A", "2026-01-26", 2)).toBe("2026-01-28");
    expect(repairUntil("A", "2026-01-26")).toBeUndefined();
  });
});

describe("NCO.IDE.A.105", () => {
  it.each(starting)("$id", (one) => {
    const given = one.inputs;
    const ruling = euPartNco.relief({
      aircraft: { engine: "piston", maxTakeOff_kg: 1500, ownList: flag(given, "melEstablished") },
      item: {
        ruleRequires: flag(given, "requiredForIntendedFlight"),
        inOwnList: flag(given, "melAllows"),
        typeEquipment: false,
        listed: false,
        directive: false,
        endangers: false,
      },
      said: { permit: flag(given, "permitToFly"), provisosMet: flag(given, "melAllows") },
    });
    expect({ mayCommence: ruling.allowed, basis: ruling.path }).toEqual(one.expected);
  });
});

describe("who may decide that a fault can wait, ML.A.403 and M.A.403", () => {
  it.each(deferring)("$id", (one) => {
    const given = one.inputs;
    const light = given["regime"] === "Part-ML";
    const by = (noHazardBy: "pilot" | "certifying-staff") =>
      euPartNco.relief({
        aircraft: { engine: "piston", maxTakeOff_kg: light ? 1500 : 4000, ownList: flag(given, "melUsed") },
        item: {
          ruleRequires: flag(given, "requiredEquipment"),
          typeEquipment: false,
          listed: false,
          directive: false,
          endangers: flag(given, "endangersFlightSafety"),
        },
        said: { noHazardBy, recorded: true },
      }).allowed;
    const found = by("pilot") ? "pilot" : by("certifying-staff") ? "certifying staff only" : undefined;
    expect(found !== undefined).toBe(one.expected["mayDefer"]);
    if (found !== undefined) expect(found).toBe(one.expected["by"]);
  });
});

/** Mostly what would let it be flown, so that a rule's last step is reached; else the opposite, or nothing said. */
const mostly = <T>(good: T, ...others: readonly T[]): fc.Arbitrary<T | undefined> =>
  fc.oneof(
    { weight: 8, arbitrary: fc.constant(good) },
    ...others.map((other) => ({ weight: 1, arbitrary: fc.constant(other) })),
    { weight: 1, arbitrary: fc.constant(undefined) },
  );
const anyInput: fc.Arbitrary<ReliefInput> = fc.record({
  aircraft: fc.record({
    engine: mostly<"piston" | "turboprop">("piston", "turboprop"),
    maxTakeOff_kg: mostly(1200, 2730, 5669, 9000),
    masterList: fc.option(fc.boolean(), { nil: undefined }),
    ownList: fc.option(fc.boolean(), { nil: undefined }),
    letterAboard: mostly(true, false),
  }),
  item: fc.record({
    inOwnList: mostly(true, false),
    typeEquipment: mostly(false, true),
    listed: mostly(false, true),
    ruleRequires: mostly(false, true),
    directive: mostly(false, true),
    endangers: mostly(false, true),
    restServes: fc.boolean(),
  }),
  said: fc.record({
    action: mostly<"removed" | "deactivated" | "none">("deactivated", "removed", "none"),
    placard: mostly(true, false),
    deactivationIsMaintenance: mostly(false, true),
    recorded: mostly(true, false),
    noHazardBy: mostly<NonNullable<ReliefSaid["noHazardBy"]>>(
      "pilot",
      "mechanic",
      "certifying-staff",
      "owner",
      "nobody",
    ),
    recordAtHand: mostly(true, false),
    provisosMet: mostly(true, false),
  }),
});

/** One thing less, whichever way the input is tightened. */
const TIGHTER: Readonly<Record<string, (input: ReliefInput) => ReliefInput>> = {
  "part of the type's equipment": (input) => ({ ...input, item: { ...input.item, typeEquipment: true } }),
  "asked by the list": (input) => ({ ...input, item: { ...input.item, listed: true } }),
  "asked by a rule": (input) => ({
    ...input,
    item: { ...input.item, ruleRequires: true, restServes: false },
  }),
  "asked by a directive": (input) => ({ ...input, item: { ...input.item, directive: true } }),
  "a hazard": (input) => ({
    ...input,
    item: { ...input.item, endangers: true },
    said: { ...input.said, noHazardBy: "nobody" },
  }),
  "nothing done": (input) => ({ ...input, said: { ...input.said, action: "none" } }),
  "no placard": (input) => ({ ...input, said: { ...input.said, placard: false } }),
  "a proviso broken": (input) => ({ ...input, said: { ...input.said, provisosMet: false } }),
  "a turbine": (input) => ({ ...input, aircraft: { ...input.aircraft, engine: "turboprop" } }),
  heavier: (input) => ({ ...input, aircraft: { ...input.aircraft, maxTakeOff_kg: 9000 } }),
  "no letter aboard": (input) => ({ ...input, aircraft: { ...input.aircraft, letterAboard: false } }),
  "nothing said": (input) => ({ ...input, said: {} }),
};

describe.each([usPart91, euPartNco])("$id", (pack) => {
  it("never allows with a step unknown, and gets no milder when anything is tightened", () => {
    let allowed = 0;
    fc.assert(
      fc.property(anyInput, fc.constantFrom(...Object.keys(TIGHTER)), (input, how) => {
        const before = pack.relief(input);
        if (before.allowed) {
          allowed += 1;
          expect(before.steps.every(({ holds }) => holds === true)).toBe(true);
          expect(before.failing).toEqual([]);
        }
        // in Europe what is asked for goes by the list, what is not by deferral: two ways, each with its own answers
        if (pack === euPartNco && input.aircraft.ownList === true && how.includes("asked by")) return;
        if (pack === euPartNco && input.aircraft.ownList === true && how.startsWith("part of")) return;
        if (pack.relief(TIGHTER[how]?.(input) ?? input).allowed) expect(before.allowed, how).toBe(true);
      }),
      { numRuns: 4000 },
    );
    expect(allowed).toBeGreaterThan(200);
  });

  it("needs nothing less of a flight by night or by instruments than of one by day", () => {
    const by = (kind: FlightKind) => new Set(pack.requiredEquipment(kind, {}));
    for (const kind of ["vfr-night", "ifr-day", "ifr-night"] as const) {
      for (const item of by("vfr-day")) expect(by(kind).has(item), `${item}, ${kind}`).toBe(true);
    }
  });
});
