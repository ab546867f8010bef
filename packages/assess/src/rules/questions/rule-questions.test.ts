import { toSI } from "@witnessmark/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rulePacks } from "../rule-packs.ts";
import { type DecodedCase, decodedCases, numberOf, optionalNumber } from "../testing/decoded-cases.ts";
import type { Ask, RuleAnswer, Said } from "./question.ts";
import { ruleQuestions } from "./rule-questions.ts";

const ALL = [...ruleQuestions.values()];

function answer(id: string, said: Said): RuleAnswer {
  const question = ruleQuestions.get(id);
  if (question === undefined) throw new Error(`rule-questions.test: expected a question ${id}`);
  const unknown = Object.keys(said).filter((name) => !question.asks.some((ask) => ask.name === name));
  if (unknown.length > 0) throw new Error(`rule-questions.test: ${id} does not ask ${unknown.join(", ")}`);
  return question.answer(said);
}

const failing = ({ steps }: RuleAnswer): readonly string[] => [
  ...new Set(steps.flatMap(({ rule, holds }) => (holds === false ? [rule] : []))),
];

const said = (ask: Ask): fc.Arbitrary<boolean | number | string> => {
  switch (ask.kind) {
    case "yes-no":
      return fc.boolean();
    case "choice":
      return fc.constantFrom(...ask.options.map(({ value }) => value));
    case "date":
      return fc.constantFrom("2025-01-31", "2025-06-01", "2026-01-30", "2026-02-28", "2026-03-01");
    case "figure":
      return fc.double({ min: ask.range[0], max: ask.range[1], noNaN: true });
    default:
      return ask satisfies never;
  }
};

describe.each(ALL)("$id", ({ id, title, asks, pack, answer: ask }) => {
  /** Everything said, and the same with some of it not known. */
  const whole = fc.record(Object.fromEntries(asks.map((each) => [each.name, said(each)])));
  const partly = fc.tuple(whole, fc.subarray(asks.map(({ name }) => name))).map(([full, names]) => ({
    full,
    part: Object.fromEntries(names.map((name) => [name, full[name]])),
  }));

  it("permits nothing while nothing is known, and says so", () => {
    const { holds, says, steps } = ask({});
    expect(holds).not.toBe(true);
    expect(says).toMatch(/^Not known yet: .*Not known is no permission\./);
    expect(steps.some((step) => step.holds === "unknown")).toBe(true);
  });

  it("stays as it is when more is said, once it is settled", () => {
    fc.assert(
      fc.property(partly, ({ full, part }) => {
        const early = ask(part).holds;
        if (early !== "unknown") expect(ask(full).holds).toBe(early);
      }),
    );
  });

  it("is settled when all is said, in a plain line, with its text named", () => {
    fc.assert(
      fc.property(whole, (full) => {
        const { holds, says, citations } = ask(full);
        expect(holds).not.toBe("unknown");
        expect(says).toMatch(/^[A-Z].*\.$/);
        expect(says).not.toMatch(/undefined|NaN/);
        expect(citations.length).toBeGreaterThan(0);
      }),
    );
  });

  it("can come out either way", () => {
    const yes = Object.fromEntries(
      asks.flatMap(({ name, kind }) => (kind === "yes-no" ? [[name, true]] : [])),
    );
    const tried = fc.sample(whole, { numRuns: 1_000, seed: 4 });
    const found = new Set(
      [...tried, ...tried.map((full) => ({ ...full, ...yes }))].map((full) => ask(full).holds),
    );
    expect(found).toEqual(new Set([true, false]));
  });

  it("takes what does not belong for not known", () => {
    const strange = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -1e12, "2026-02-30", "", "perhaps");
    fc.assert(
      fc.property(fc.record(Object.fromEntries(asks.map(({ name }) => [name, strange]))), (given) => {
        expect(ask(given)).toEqual(ask({}));
      }),
    );
  });

  it("is of a pack that there is, under names that read", () => {
    expect(rulePacks.has(pack)).toBe(true);
    expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(title).toMatch(/\?$/);
    expect(new Set(asks.map(({ words }) => words)).size).toBe(asks.length);
  });
});

// Published cases, each with its source in the file, asked as a person is asked.
const CASES = decodedCases("airworthiness-relief-rules.json", 64);
const cases = (start: string): readonly DecodedCase[] => {
  const found = CASES.filter(({ id }) => id === start || id.startsWith(`${start}-`));
  if (found.length === 0) throw new Error(`rule-questions.test: expected cases ${start}`);
  return found;
};
const flag = ({ inputs }: DecodedCase, name: string): boolean => inputs[name] === true;
const text = ({ inputs }: DecodedCase, name: string): string => String(inputs[name]);
const legal = (ruled: RuleAnswer) => ({ legal: ruled.holds === true, failing: failing(ruled) });

// ML.A.403 and M.A.403, the published cases defer-part-ml-pilot, defer-part-m-turboprop-no-mel, defer-safety-hazard
it("in Europe the pilot puts off under Part-ML, certifying staff above it, and nobody what endangers", () => {
  const said = { required: false, inList: false, recorded: true, endangers: false };
  const holds = (more: Said) => answer("nco-put-off", { ...said, ...more }).holds;
  expect(holds({ partML: true, who: "pilot" })).toBe(true);
  expect(holds({ partML: false, who: "pilot" })).toBe(false);
  expect(holds({ partML: false, who: "certifying-staff" })).toBe(true);
  expect(holds({ partML: true, who: "pilot", endangers: true })).toBe(false);
  expect(holds({ partML: true, who: "pilot", required: true })).toBe(false);
});

describe("the published cases come out of the questions as they do of the rules", () => {
  it.each([...cases("elt-inop"), ...cases("elt-ferry"), ...cases("elt-single")])("$id", (one) => {
    const farthest_NM = optionalNumber(one, "maxDistanceFromDeparture_nmi");
    const operation = text(one, "operation");
    const ruled = answer("locator-does-not-work", {
      works: flag(one, "eltOperable"),
      operation: operation.startsWith("ferry")
        ? "ferry-for-repair"
        : operation === "training"
          ? "training"
          : "private",
      onlyRequiredCrew: !flag(one, "personsOtherThanRequiredCrew"),
      repairableHere: flag(one, "repairableAtDeparture"),
      seats_count: numberOf(one, "seats_count"),
      farthestFromDeparture_m: farthest_NM === undefined ? undefined : toSI(farthest_NM, "NM"),
    });
    const exception = one.expected["exception"];
    expect(legal(ruled)).toEqual({ legal: one.expected["legal"], failing: one.expected["failing"] });
    if (exception !== null) expect(ruled.says).toContain(`The exception is ${String(exception)}.`);
  });

  it.each(cases("elt-removed"))("$id", (one) => {
    const ruled = answer("locator-removed", {
      removedOn: text(one, "eltRemoved_date"),
      entered: flag(one, "recordEntry"),
      placard: flag(one, "placardEltNotInstalled"),
      on: text(one, "flight_date"),
    });
    expect(legal(ruled)).toEqual({ legal: one.expected["legal"], failing: one.expected["failing"] });
    expect(ruled.says).toContain(`The last day is ${String(one.expected["lastValid_date"])}.`);
  });

  it.each(cases("elt-battery"))("$id", (one) => {
    const said_ = {
      lifeFrom: `${text(one, "usefulLifeStart_month")}-01`,
      life_months: numberOf(one, "usefulLife_months"),
      use_s: numberOf(one, "cumulativeUse_min") * 60,
    };
    const month = String(one.expected["replaceBy_month"]);
    expect(answer("locator-battery", { ...said_, on: `${month}-28` })).toMatchObject({
      holds: true,
      says: `The battery may stay in. Its last month is ${month}.`,
    });
    expect(answer("locator-battery", { ...said_, on: "2026-03-01" }).holds).toBe(false);
  });

  it.each(cases("elt-cumulative"))("$id", (one) => {
    const ruled = answer("locator-battery", { use_s: numberOf(one, "cumulativeUse_min", "expected") * 60 });
    expect(failing(ruled).includes("91.207(c)(1)")).toBe(one.expected["replaceRequired"]);
  });

  it.each(cases("transponder-class"))("$id", (one) => {
    const ruled = answer("transponder", {
      works: false,
      airspace: text(one, "airspace"),
      nearListedAirspace: false,
      altitude_m: toSI(numberOf(one, "altitude_msl_ft"), "ft"),
      terrain_m: toSI(numberOf(one, "terrain_msl_ft"), "ft"),
    });
    expect(ruled.holds).toBe(one.expected["transponderRequired"] !== true);
  });

  it.each(cases("deviation"))("$id", (one) => {
    const before_ms =
      Date.parse(`${text(one, "operation_utc")}Z`) - Date.parse(`${text(one, "request_utc")}Z`);
    const ruled = answer("transponder-leave", {
      state: text(one, "state") === "installed-inoperative" ? "does-not-work" : "not-installed",
      before_s: before_ms / 1_000,
    });
    expect(ruled.holds).toBe(one.expected["timely"]);
  });

  it.each(cases("after"))("$id", (one) => {
    const ruled = answer("after-maintenance", {
      released: flag(one, "approvedForReturnToService"),
      recorded: flag(one, "recordEntryMade"),
      mayFlyOtherwise: flag(one, "flightCharacteristicsMayHaveChanged"),
      passengers: flag(one, "passengersAboard"),
      flownAndLogged: flag(one, "operationalCheckFlownAndLogged"),
      groundTestsConclusive: flag(one, "groundTestsConclusive"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("pm"))("$id", (one) => {
    const task = text(one, "task");
    const offered = ruleQuestions.get("preventive-maintenance")?.asks.find(({ name }) => name === "work");
    const isOffered =
      offered?.kind === "choice" && offered.options.some(({ value }: { value: string }) => value === task);
    const ruled = answer("preventive-maintenance", {
      work: isOffered ? task : "other",
      certificate: text(one, "certificate"),
      ownsOrOperates: flag(one, "ownedOrOperatedByPilot"),
      usedUnder: text(one, "usedUnder"),
    });
    expect(ruled.holds).toBe(one.expected["allowed"]);
    const itIs = one.expected["itIs"];
    if (itIs !== undefined) expect(ruled.says).toContain(`It is ${String(itIs)}.`);
  });

  it.each(cases("docs"))("$id", (one) => {
    // the shape is the file's own
    const aboard = one.inputs["aboard"] as Readonly<Record<string, unknown>>;
    const ruled = answer("papers-aboard", {
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
    const ruled = answer("pilot-papers", {
      certificate: flag(one, "pilotCertificate"),
      photoIdentification: flag(one, "photoIdentification"),
      medical: flag(one, "medicalOrBasicMedEvidence"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("lights"))("$id", (one) => {
    const ruled = answer("lights", {
      sunIsDown: flag(one, "betweenSunsetAndSunrise"),
      positionLightsOn: flag(one, "positionLightsOn"),
      anticollisionInstalled: flag(one, "anticollisionInstalled"),
      anticollisionOn: flag(one, "anticollisionOn"),
      putOutForSafety: flag(one, "pilotTurnedOffForSafety"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each([...cases("record-43-9"), ...cases("record-43-11")])("$id", (one) => {
    // the shape is the file's own
    const entry = one.inputs["entry"] as Readonly<Record<string, unknown>>;
    const stands = Object.fromEntries(Object.entries(entry).map(([part, what]) => [part, what !== null]));
    const isWork = one.id.startsWith("record-43-9");
    const ruled = isWork
      ? answer("work-entry", { ...stands, doneByOther: flag(one, "workDoneByOther"), workerName: false })
      : answer("inspection-entry", stands);
    expect(ruled.holds).toBe(one.expected["complete"]);
    expect(ruled.steps.filter(({ holds }) => holds === false)).toHaveLength(
      (one.expected["missing"] as readonly unknown[]).length, // a list in the file
    );
  });

  it.each(cases("overwater"))("$id", (one) => {
    const ruled = answer("over-water", {
      cruise_mps: toSI(numberOf(one, "cruise_kt"), "kt"),
      farthest_m: toSI(numberOf(one, "maxDistanceFromShore_nmi"), "NM"),
      vests: false,
      rafts: false,
    });
    expect(failing(ruled)).toEqual([
      ...(one.expected["lifePreserversRequired"] === true ? ["91.509(a)"] : []),
      ...(one.expected["raftsRequired"] === true ? ["91.509(b)"] : []),
    ]);
  });

  it.each(cases("nco-documents"))("$id", (one) => {
    // lists in the file
    const [papers, stay] = [one.inputs["documents"], one.expected["mayStayOnGround"]] as readonly string[][];
    const found = papers?.map((paper) => answer("nco-papers", { paper, sameAerodrome: true }).holds);
    expect(found).toEqual(stay);
  });
});
