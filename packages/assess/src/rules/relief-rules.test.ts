import { toSI } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { listEntryAcceptable, mayStayOnGround, overWaterDecision_m } from "./eu-part-nco/papers-and-water.ts";
import type { AirspaceClass, FlightRules } from "./rule-pack.ts";
import { signatureLacks } from "./signature-attributes.ts";
import { type DecodedCase, decodedCases, numberOf, optionalNumber } from "./testing/decoded-cases.ts";
import { afterMaintenance } from "./us-part-91/after-maintenance.ts";
import { documentsAboard, pilotPapers } from "./us-part-91/documents.ts";
import { anticollisionFailed, FAILED_LIGHT_LIMIT, lights } from "./us-part-91/lights.ts";
import {
  flightWithoutLocator,
  type LocatorInput,
  locatorBatteryMonth,
  locatorBatteryUsed,
} from "./us-part-91/locator.ts";
import { listMayHold } from "./us-part-91/minimum-list.ts";
import { preflightInformation, preflightLacks } from "./us-part-91/preflight-information.ts";
import {
  type PreventiveInput,
  preventiveFor,
  preventiveMaintenance,
} from "./us-part-91/preventive-maintenance.ts";
import {
  defectListKeptUntil,
  type EntryParts,
  goesWithAircraft,
  inspectionEntryLacks,
  lawKeepsUntil,
  workEntryLacks,
} from "./us-part-91/record-entries.ts";
import { type PermitPurpose, specialPermit } from "./us-part-91/special-permit.ts";
import { flightIntoIcing, overWater, subpartFApplies, takeOffWithFrost } from "./us-part-91/subpart-f.ts";
import { deviationInTime, transponderRequired } from "./us-part-91/transponder.ts";

// Each case carries its source and whether it is published or from memory.
const CASES = decodedCases("airworthiness-relief-rules.json", 64);
/** Cases that say where they are run: the rest must have a runner below. */
const taken = new Set<string>();
function cases(...ids: readonly string[]): readonly DecodedCase[] {
  const found = CASES.filter(({ id }) => ids.some((start) => id === start || id.startsWith(`${start}-`)));
  for (const { id } of found) taken.add(id);
  return found;
}

const flag = (one: DecodedCase, name: string): boolean => one.inputs[name] === true;
const maybeFlag = (one: DecodedCase, name: string): boolean | undefined =>
  one.inputs[name] === undefined ? undefined : flag(one, name);
const text = (one: DecodedCase, name: string): string => String(one.inputs[name]);
// The shapes below are the file's own.
const list = <T>(one: DecodedCase, name: string): readonly T[] => one.inputs[name] as readonly T[];
const parts = (one: DecodedCase, name: string): EntryParts => one.inputs[name] as EntryParts;
const legal = ({ allowed, failing }: { readonly allowed: boolean; readonly failing: readonly string[] }) => ({
  legal: allowed,
  failing,
});

describe("the emergency locator, 14 CFR 91.207", () => {
  it.each(cases("elt-inop", "elt-ferry", "elt-single"))("$id", (one) => {
    const farthest_NM = optionalNumber(one, "maxDistanceFromDeparture_nmi");
    const operation = text(one, "operation");
    const input: LocatorInput = {
      works: flag(one, "eltOperable"),
      operation: operation.startsWith("ferry")
        ? "ferry-for-repair"
        : operation === "training"
          ? "training"
          : "private",
      onlyRequiredCrew: !flag(one, "personsOtherThanRequiredCrew"),
      repairableHere: flag(one, "repairableAtDeparture"),
      seats_count: numberOf(one, "seats_count"),
      ...(farthest_NM === undefined ? {} : { farthestFromDeparture_m: toSI(farthest_NM, "NM") }),
    };
    const ruled = flightWithoutLocator(input);
    expect({ ...legal(ruled), exception: ruled.exception ?? null }).toEqual(one.expected);
  });

  it.each(cases("elt-removed"))("$id", (one) => {
    const { until, ...ruled } = flightWithoutLocator({
      removed: {
        on: text(one, "eltRemoved_date"),
        entered: flag(one, "recordEntry"),
        placard: flag(one, "placardEltNotInstalled"),
      },
      on: text(one, "flight_date"),
    });
    expect({ ...legal(ruled), lastValid_date: until }).toEqual(one.expected);
  });

  it("may be away to the 90th day and to 50 NM of training exactly", () => {
    const removed = { on: "2026-01-10", entered: true, placard: true };
    expect(flightWithoutLocator({ removed, on: "2026-04-10" }).allowed).toBe(true);
    const training = (NM: number) =>
      flightWithoutLocator({
        works: false,
        operation: "training",
        farthestFromDeparture_m: toSI(NM, "NM"),
        seats_count: 2,
      });
    expect(training(50).exception).toBe("91.207(f)(3)");
    expect(training(50.01).allowed).toBe(false);
  });

  it("that is not known to work permits nothing", () => {
    expect(flightWithoutLocator({}).allowed).toBe(false);
    expect(flightWithoutLocator({}).failing).toEqual([]);
    expect(flightWithoutLocator({ works: true }).allowed).toBe(true);
    expect(
      flightWithoutLocator({ works: false, operation: "ferry-for-repair", seats_count: 4 }).failing,
    ).toEqual([]);
  });

  it.each(cases("elt-battery"))("$id", (one) => {
    expect(locatorBatteryMonth(text(one, "usefulLifeStart_month"), numberOf(one, "usefulLife_months"))).toBe(
      one.expected["replaceBy_month"],
    );
    expect(locatorBatteryUsed(numberOf(one, "cumulativeUse_min") * 60)).toBe(
      one.expected["replaceNowForUse"],
    );
  });

  it.each(cases("elt-cumulative"))("$id", (one) => {
    const use_min = list<number>(one, "activations_min").reduce((sum, each) => sum + each, 0);
    expect({ cumulativeUse_min: use_min, replaceRequired: locatorBatteryUsed(use_min * 60) }).toEqual(
      one.expected,
    );
  });
});

describe("transponder, 14 CFR 91.215", () => {
  it.each(cases("transponder-class"))("$id", (one) => {
    const required = transponderRequired({
      airspace: text(one, "airspace") as AirspaceClass, // a letter of the file
      altitude_m: toSI(numberOf(one, "altitude_msl_ft"), "ft"),
      terrain_m: toSI(numberOf(one, "terrain_msl_ft"), "ft"),
    });
    expect(required).toBe(one.expected["transponderRequired"]);
  });

  it("is asked for from 10,000 ft exactly, and not at 2,500 ft above the surface exactly", () => {
    const at = (altitude_ft: number, terrain_ft: number) =>
      transponderRequired({
        airspace: "E",
        altitude_m: toSI(altitude_ft, "ft"),
        terrain_m: toSI(terrain_ft, "ft"),
      });
    expect(at(10_000, 0)).toBe(true);
    expect(at(9_999, 0)).toBe(false);
    expect(at(10_500, 8_000)).toBe(false);
    expect(at(10_500, 7_999)).toBe(true);
    expect(transponderRequired({})).toBeUndefined();
    expect(transponderRequired({ airspace: "A" })).toBe(true);
  });

  it.each(cases("deviation"))("$id", (one) => {
    const ruled = deviationInTime({
      state: text(one, "state") === "installed-inoperative" ? "does-not-work" : "not-installed",
      asked_ms: Date.parse(`${text(one, "request_utc")}Z`),
      flight_ms: Date.parse(`${text(one, "operation_utc")}Z`),
    });
    expect(ruled.allowed).toBe(one.expected["timely"]);
  });

  it("that none is installed is asked for an hour before, no minute less", () => {
    const asked = { state: "not-installed", asked_ms: 0 } as const;
    expect(deviationInTime({ ...asked, flight_ms: 59 * 60_000 }).failing).toEqual(["91.215(d), 91.225(g)"]);
    expect(deviationInTime({}).allowed).toBe(false);
  });
});

describe("entries in the record, 14 CFR 43.9, 43.11 and 91.417", () => {
  it.each(cases("record-43-9"))("$id", (one) => {
    const missing = workEntryLacks(parts(one, "entry"), flag(one, "workDoneByOther"));
    expect({ complete: missing.length === 0, missing }).toEqual(one.expected);
  });
  it.each(cases("record-43-11"))("$id", (one) => {
    const missing = inspectionEntryLacks(parts(one, "entry"));
    expect({ complete: missing.length === 0, missing }).toEqual(one.expected);
  });
  it("of nothing lacks all of it, and blanks are nothing", () => {
    expect(workEntryLacks({}, false)).toHaveLength(5);
    expect(workEntryLacks({ description: "  ", signature: null }, false)).toHaveLength(5);
  });
  it.each(cases("record-retention"))("$id", (one) => {
    expect(lawKeepsUntil(text(one, "work_date"))).toBe(one.expected["mayDiscardFrom_date"]);
    expect(lawKeepsUntil(text(one, "work_date"), "2025-06-01")).toBe("2025-06-01");
  });
  it.each(cases("record-defect-list"))("$id", (one) => {
    expect(defectListKeptUntil(text(one, "defectsRepaired_date"), text(one, "approvedForReturn_date"))).toBe(
      one.expected["keepUntil_date"],
    );
  });
  it.each(cases("record-status"))("$id", (one) => {
    expect(list<string>(one, "records").map(goesWithAircraft)).toEqual(one.expected["transferWithAircraft"]);
  });
  it.each(cases("esignature"))("$id", (one) => {
    const missing = signatureLacks(list<string>(one, "has"));
    expect({ acceptable: missing.length === 0, missing }).toEqual(one.expected);
  });
});

describe("work on the aircraft", () => {
  it.each(cases("after"))("$id, 14 CFR 91.407", (one) => {
    const ruled = afterMaintenance({
      released: flag(one, "approvedForReturnToService"),
      recorded: flag(one, "recordEntryMade"),
      mayFlyOtherwise: flag(one, "flightCharacteristicsMayHaveChanged"),
      passengers: flag(one, "passengersAboard"),
      flownAndLogged: flag(one, "operationalCheckFlownAndLogged"),
      groundTestsConclusive: flag(one, "groundTestsConclusive"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("pm"))("$id, 14 CFR part 43, appendix A (c)", (one) => {
    const ruled = preventiveMaintenance({
      work: text(one, "task"),
      certificate: text(one, "certificate") as PreventiveInput["certificate"], // "private" and "student"
      ownsOrOperates: flag(one, "ownedOrOperatedByPilot"),
      usedUnder: text(one, "usedUnder") === "91" ? "91" : "other",
    });
    const { itIs } = ruled;
    expect({ allowed: ruled.allowed, ...(itIs === undefined ? {} : { itIs }) }).toEqual(one.expected);
  });

  it("is the pilot's for a position light, not for an anticollision light of the same system", () => {
    const ids = (item: string | undefined) => preventiveFor("3340", item).map(({ id }) => id);
    expect(ids("position-lights")).toEqual(["landing-light-bulb"]);
    expect(ids("landing-light")).toEqual(["landing-light-wiring", "landing-light-bulb"]);
    expect(ids("anticollision-lights")).toEqual([]);
    expect(ids(undefined)).toEqual([]);
    expect(preventiveFor("3244", undefined).map(({ line }) => line)).toEqual([1]);
  });

  it("is not known to be the pilot's until all of it is said", () => {
    const ruled = preventiveMaintenance({ work: "battery" });
    expect(ruled.allowed).toBe(false);
    expect(ruled.failing).toEqual([]);
  });

  const PURPOSES: Readonly<Record<string, PermitPurpose>> = {
    "fly to a base where maintenance is to be done": "repair-base",
    "fly to a point of storage": "storage",
    "deliver or export": "delivery",
  };
  it.each(cases("ferry"))("$id, 14 CFR 21.197", (one) => {
    const ruled = specialPermit({
      purpose: PURPOSES[text(one, "purpose")] ?? "none",
      capableOfSafeFlight: flag(one, "capableOfSafeFlight"),
      directiveForbids: flag(one, "adForbidsSpecialFlightPermit"),
    });
    expect(ruled.allowed).toBe(one.expected["eligible"]);
  });

  it("a directive that forbids it bars a permit that had all else", () => {
    const else_ = { purpose: "storage", capableOfSafeFlight: true } as const;
    expect(specialPermit({ ...else_, directiveForbids: true }).failing).toEqual(["39.23"]);
    expect(specialPermit({ ...else_, directiveForbids: false }).allowed).toBe(true);
    expect(specialPermit(else_).allowed).toBe(false);
  });

  it.each(cases("inop-deferral"))("$id: the end is the inspection's own last day", (one) => {
    // held on a real book in relief/relief.test.ts; here that the case says so
    expect(one.expected["actionDueNoLaterThan_date"]).toBe(one.inputs["annualLastValid_date"]);
    expect(list<string>(one, "optionsAtInspection")).toContain("inspect");
  });

  it.each(cases("inop-mel-prohibited"))("$id, 14 CFR 91.213(b)", (one) => {
    const items = list<{ readonly name: string }>(one, "items").map(({ name }) =>
      listMayHold({
        directive: name.includes("AD"),
        ruleRequires: name.includes("part 91"),
        essential: name.includes("essential"),
      }).every(({ holds }) => holds === true),
    );
    expect(items).toEqual(one.expected["mayBeListed"]);
  });
});

describe("papers, 14 CFR 91.203 and 61.3", () => {
  it.each(cases("docs"))("$id", (one) => {
    const aboard = parts(one, "aboard") as Readonly<Record<string, unknown>>;
    const ruled = documentsAboard({
      insideUnitedStates: flag(one, "flightWithinUS"),
      airworthinessCertificate: aboard["airworthinessCertificate"] === true,
      displayed: aboard["airworthinessDisplayed"] === true,
      registration: aboard["registration"] === "certificate" ? "certificate" : "copy-of-application",
      manualOrLimits: aboard["flightManualOrOperatingLimitations"] === true,
      cabinFuelTank: flag(one, "cabinFuelTank"),
      tankForm: false,
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("pilot-documents"))("$id", (one) => {
    const ruled = pilotPapers({
      certificate: flag(one, "pilotCertificate"),
      photoIdentification: flag(one, "photoIdentification"),
      medical: flag(one, "medicalOrBasicMedEvidence"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("preflight"))("$id", (one) => {
    const flight = {
      flightRules: text(one, "flightRules") as FlightRules, // VFR or IFR
      local: flag(one, "inVicinityOfAirport"),
    };
    if (one.expected["required"] !== undefined) {
      expect(preflightInformation(flight)).toEqual(one.expected["required"]);
      return;
    }
    const missing = preflightLacks(flight, list<string>(one, "have"));
    expect({ complete: missing.length === 0, missing }).toEqual(one.expected);
  });

  it("an instrument flight round the field still asks for all of it", () => {
    expect(preflightInformation({ flightRules: "IFR", local: true })).toHaveLength(6);
    expect(preflightInformation({})).toHaveLength(6);
  });
});

describe("lights, 14 CFR 91.209 and 91.205(b)(11)", () => {
  it.each(cases("lights"))("$id", (one) => {
    const ruled = lights({
      sunIsDown: flag(one, "betweenSunsetAndSunrise"),
      positionLightsOn: flag(one, "positionLightsOn"),
      anticollisionInstalled: flag(one, "anticollisionInstalled"),
      anticollisionOn: flag(one, "anticollisionOn"),
      putOutForSafety: flag(one, "pilotTurnedOffForSafety"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("anticollision-failed"))("$id", (one) => {
    const ruled = anticollisionFailed({
      awayFromBase: maybeFlag(one, "failedAwayFromBase"),
      toRepair: maybeFlag(one, "destinationHasRepair"),
    });
    expect({ legal: ruled.allowed, limit: FAILED_LIGHT_LIMIT }).toEqual(one.expected);
    expect(anticollisionFailed({ awayFromBase: true, toRepair: false }).allowed).toBe(false);
  });
});

describe("14 CFR part 91, subpart F", () => {
  it.each(cases("subpart-f"))("$id", (one) => {
    const applies = subpartFApplies({
      engine: text(one, "engine") as "piston" | "turboprop", // the two of the file
      engines_count: numberOf(one, "engines_count"),
      maxTakeOff_kg: toSI(numberOf(one, "mtow_lb"), "lb"),
    });
    expect(applies).toBe(one.expected["subpartFApplies"]);
  });

  it("begins above 12,500 lb, or with two jet engines, and is not known from half of it", () => {
    const of = (lb: number, engine: "turboprop" | "turbojet", engines_count: number) =>
      subpartFApplies({ engine, engines_count, maxTakeOff_kg: toSI(lb, "lb") });
    expect(of(12_500, "turboprop", 2)).toBe(false);
    expect(of(12_501, "turboprop", 2)).toBe(true);
    expect(of(8_000, "turbojet", 2)).toBe(true);
    expect(of(8_000, "turbojet", 1)).toBe(false);
    expect(subpartFApplies({ engine: "turbojet" })).toBeUndefined();
  });

  it.each(cases("frost-on-wing"))("$id", (one) => {
    const ruled = takeOffWithFrost({
      subpartF: flag(one, "subpartFApplies"),
      frostOnWing: text(one, "contamination").includes("frost"),
      manualAsksForCleanWing: flag(one, "afmRequiresCleanAircraft"),
    });
    expect(legal(ruled)).toEqual({ legal: one.expected["legal"], failing: one.expected["failing"] });
  });

  it.each(cases("icing"))("$id", (one) => {
    const answers = list<boolean>(one, "newerReportsShowNoIcing").map(
      (laterReportsClear) =>
        flightIntoIcing({
          ice: "forecast",
          protection: flag(one, "functioningIceProtection"),
          laterReportsClear,
        }).allowed,
    );
    expect(answers).toEqual(one.expected["legal"]);
    expect(flightIntoIcing({ ice: "known", protection: false, laterReportsClear: true }).allowed).toBe(false);
  });

  it.each(cases("overwater"))("$id", (one) => {
    const need = overWater(
      toSI(numberOf(one, "cruise_kt"), "kt"),
      toSI(numberOf(one, "maxDistanceFromShore_nmi"), "NM"),
    );
    expect(need.raftsBeyond_m / 1852).toBeCloseTo(numberOf(one, "raftThreshold_nmi", "expected"), 9);
    expect(need.vests).toBe(one.expected["lifePreserversRequired"]);
    expect(need.rafts).toBe(one.expected["raftsRequired"]);
  });
});

describe("Part-NCO and Part-ML", () => {
  it.each(cases("nco-overwater"))("$id", (one) => {
    const found = list<number>(one, "normalCruise_kt").map(
      (cruise_kt) => overWaterDecision_m(toSI(cruise_kt, "kt")) / 1852,
    );
    const expected = one.expected["threshold_nmi"] as readonly number[]; // as the file has it
    expect(found).toHaveLength(expected.length);
    for (const [i, each] of expected.entries()) expect(found[i]).toBeCloseTo(each, 9);
  });
  it.each(cases("nco-documents"))("$id", (one) => {
    const same = flag(one, "takeOffAndLandSameAerodrome");
    expect(list<string>(one, "documents").map((paper) => mayStayOnGround(paper, same))).toEqual(
      one.expected["mayStayOnGround"],
    );
    expect(mayStayOnGround("registration", false)).toBe(false);
  });
  it.each(cases("nco-mel"))("$id", (one) => {
    const master_d = numberOf(one, "mmelRectificationInterval_d");
    const acceptable = (notified: boolean) =>
      list<number>(one, "melRectificationInterval_d").map((own_d) =>
        listEntryAcceptable(master_d, own_d, notified),
      );
    expect(acceptable(flag(one, "notifiedToAuthority"))).toEqual(one.expected["acceptable"]);
    expect(acceptable(false)).toEqual([false, false, false]);
  });
  it.each(cases("easa-deferred"))("$id: held on a ledger in relief/relief.test.ts", (one) => {
    expect(one.expected["original_date"]).toBe(one.inputs["defectFound_date"]);
  });
});

// three cases that no question to a pilot on the ground can hold stand in reference/README.md, with why
it("takes up every case of the file", () => {
  expect(CASES.filter(({ id }) => !taken.has(id)).map(({ id }) => id)).toEqual([]);
});
